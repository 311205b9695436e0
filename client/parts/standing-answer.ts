import type { Advice } from '../../src/procedure/advice.ts';
import { hasSecondHeading } from '../../src/procedure/phrases.ts';
import type { FlightState } from '../../src/flight/state.ts';

/** A reading this long overdue makes the answer an old one; common practice, no source. */
const STALE_S = 120;
/** Nearer than this to the end of the last leg the flight is over, NM; common practice, no source. */
const THERE_NM = 0.2;

/** What has become of an answer some time after it was given. */
export interface StandingAnswer {
  /** The first heading has been held for as long as was said: the second one counts. */
  readonly isSecond: boolean;
  readonly headingDeg: number;
  /** Seconds for which the heading is still to be held; null: until the next reading. */
  readonly holdLeftS: number | null;
  readonly holdShare: number;
  /** Negative once it is overdue. */
  readonly nextReadingInS: number;
  /** So long without the reading that was due that the heading may be wrong by now. */
  readonly isStale: boolean;
}

/** What an answer has become so many seconds after it was given. */
export function standingAnswer(advice: Advice, ageS: number): StandingAnswer {
  const way = advice.whichWay;
  const hasSecond = hasSecondHeading(way);
  const isSecond = hasSecond && ageS >= way.holdS;
  const nextReadingInS = advice.nextReadingInS - ageS;
  const isStale = nextReadingInS < -STALE_S;
  return {
    isSecond,
    headingDeg: isSecond ? way.thenHeadingDeg : way.headingDeg,
    holdLeftS: hasSecond && !isSecond && !isStale ? way.holdS - ageS : null,
    holdShare: way.holdS > 0 ? Math.min(1, ageS / way.holdS) : 1,
    nextReadingInS,
    isStale,
  };
}

/** Whether a reading has shown the end of the last leg: nothing is left to fly by it. */
export function isAtEnd({ plan, legIndex, advice }: FlightState): boolean {
  if (plan === null || advice === null || legIndex < plan.legs.length - 1) return false;
  const { toGoNm } = advice.howFar;
  const isEnding = advice.phase === 'arriving' || advice.phase === 'passage';
  return isEnding && toGoNm !== null && toGoNm < THERE_NM;
}
