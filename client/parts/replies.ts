import { hasSecondHeading, milesWords, wayWords } from '../../src/procedure/phrases.ts';
import { spokenAngle, spokenDuration, spokenSpeed, type Manner } from '../../src/speech/numbers.ts';
import type { HowFar, WhichWay } from '../../src/track/guidance.ts';

/**
 * What is answered to "how far to go": distance and time with its band, then the speed over the ground and the drift.
 *
 * `driftDeg`: track minus heading, blown to the right positive; null: cannot tell.
 */
export function howFarReply(
  howFar: HowFar | null,
  manner: Manner,
  driftDeg: number | null = null,
): string {
  if (howFar?.toGoNm == null) return 'I cannot tell the distance yet.';
  const miles = `${inUpperCase(milesWords(howFar.toGoNm, manner))} to go`;
  const { toGoS, sdS, groundSpeedKt } = howFar;
  const time = toGoS === null ? '' : `, ${spokenDuration(toGoS)}${bandWords(sdS)}`;
  const speed = groundSpeedKt === null ? '' : ` Groundspeed ${spokenSpeed(groundSpeedKt)}`;
  return `${miles}${time}.${speed}${speed === '' ? '' : `${driftWords(driftDeg)}.`}`;
}

/** To five seconds. */
function bandWords(sdS: number | null): string {
  if (sdS === null) return '';
  return `, give or take ${spokenDuration(5 * Math.max(1, Math.round(sdS / 5)))}`;
}

function driftWords(driftDeg: number | null): string {
  if (driftDeg === null || Math.abs(driftDeg) < 0.5) return '';
  return `, drift ${spokenAngle(driftDeg)} ${driftDeg < 0 ? 'left' : 'right'}`;
}

/** What is answered to "which way to turn" so long after the reading: no turn that has been made by then. */
export function whichWayReply(way: WhichWay, ageS: number, isHeadingRead: boolean): string {
  if (!hasSecondHeading(way)) return wayWords(way, isHeadingRead);
  const leftS = way.holdS - ageS;
  if (leftS > 0) return wayWords({ ...way, holdS: leftS }, isHeadingRead);
  return wayWords({ ...way, turn: 'none', turnDeg: 0, headingDeg: way.thenHeadingDeg, holdS: 0 });
}

function inUpperCase(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
