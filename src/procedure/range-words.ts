import {
  digits,
  spokenAngle,
  spokenDuration,
  spokenMiles,
  spokenSpeed,
} from '../speech/numbers.ts';
import { rangeByBearingChange } from '../track/bearing-change.ts';
import type { AnswerContext, WhyContext } from './answer-context.ts';
import { headingWords, offCourseWords } from './phrases.ts';
import type { RangeFinding } from './range-finding.ts';

const S_PER_MIN = 60;

type Offered = RangeFinding & { kind: 'offered' };

/** The check is offered in the answer after which it would begin; on this leg it is not said again unasked. */
export function offerWords({ finding }: AnswerContext): string | null {
  return finding?.kind === 'offered' && finding.isNew ? rangeOffer(finding) : null;
}

/** How the range would be found, for the pilot to take or to leave. */
export function rangeOffer(offered: Offered): string {
  return `To find the range, if you want it: ${turnAbeam(offered)}, hold it, and read the radial each minute.`;
}

function turnAbeam({ turn, headingDeg }: Offered): string {
  return `turn ${turn}, ${headingWords(headingDeg)}`;
}

/** What is said of the distance while the check is flown, and when it ends; null: neither. */
export function findingWords({ finding, manner }: AnswerContext): string | null {
  if (finding?.kind === 'flying') {
    const ask = 'Centre the needle with FROM and read the O B S each minute.';
    return finding.flownS === 0
      ? `Station abeam. ${ask}`
      : `The radial has moved ${spokenAngle(finding.changeDeg)}. Read it again in one minute.`;
  }
  if (finding?.kind !== 'ended') return null;
  const { rangeNm, sdNm } = finding;
  if (rangeNm === null || sdNm === null) {
    return 'The radial hardly moves: the station is far. I cannot tell the distance yet.';
  }
  return `Range found: ${spokenMiles(rangeNm)}, give or take ${bandWords(sdNm, manner)}.`;
}

/** A band needs no tenths from a mile on. */
function bandWords(sdNm: number, manner: AnswerContext['manner']): string {
  return sdNm < 1 ? offCourseWords(sdNm, manner) : digits(Math.round(sdNm));
}

/** Why the check is offered, flown, or believed; null where there is none. */
export function findingReason({ finding, aircraft }: WhyContext): string | null {
  if (!finding) return null;
  if (finding.kind === 'offered') {
    return `Nothing shows the range: ${turnAbeam(finding)}, and the radial moves the faster the nearer the station is.`;
  }
  const abeam = 'With the station abeam the radial moves the faster the nearer it is.';
  const { changeDeg, flownS } = finding;
  const rule = rangeByBearingChange(flownS / S_PER_MIN, changeDeg, aircraft.trueAirspeedKt);
  if (finding.kind === 'flying' || rule === null) return abeam;
  const moved = `The radial moved ${spokenAngle(changeDeg)} in ${spokenDuration(flownS)}`;
  const miles = spokenMiles(rule.distanceNm);
  return `${moved}: at ${spokenSpeed(aircraft.trueAirspeedKt)} that is ${miles} in still air, and the wind is allowed for.`;
}
