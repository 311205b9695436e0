import { wrap360 } from '../base/angle.ts';
import {
  digits,
  spokenAngle,
  spokenBearing,
  spokenDistance,
  spokenDuration,
  spokenMiles,
} from '../speech/numbers.ts';
import type { Manner } from '../speech/numbers.ts';
import type { Question, WhichWay, WindSeen } from '../track/guidance.ts';

/** A turn smaller than this is not worth the words: nobody holds a heading to two degrees. */
export const LEAST_TURN_DEG = 3;

/** "heading zero niner seven". Magnetic degrees. */
export function headingWords(headingDeg: number): string {
  return `heading ${spokenBearing(headingDeg)}`;
}

/** Whether the advice asks for a turn that is worth flying. */
export function asksForTurn(way: WhichWay): boolean {
  return way.turn !== 'none' && way.turnDeg >= LEAST_TURN_DEG;
}

/** Whether a second heading follows after a while. */
export function hasSecondHeading(way: WhichWay): boolean {
  return way.holdS > 0 && Math.round(way.thenHeadingDeg) !== Math.round(way.headingDeg);
}

/** A hold beyond this has a reading before its end, which will tell it anew, s. The longest interval asked for is 120. */
const LONG_HOLD_S = 180;

/**
 * "Turn left one five degrees, heading zero niner seven." or "Hold heading one one two.", with how long.
 *
 * A hold of more than three minutes is "until the next reading": nobody keeps six minutes and a second heading in
 * mind. It is called out all the same if no reading comes.
 *
 * `isHeadingRead`: whether the pilot has ever read a heading; until then nobody knows whether there is a turn
 * to make, and it is "Fly heading zero niner seven."
 */
export function wayWords(way: WhichWay, isHeadingRead = true): string {
  const heading = headingWords(way.headingDeg);
  const then = hasSecondHeading(way) ? holdWords(way) : null;
  if (isHeadingRead && asksForTurn(way)) {
    const turn = `Turn ${way.turn} ${spokenAngle(way.turnDeg)}, ${heading}.`;
    return then === null ? turn : `${turn} ${way.holdS > LONG_HOLD_S ? 'Hold it' : 'Hold'} ${then}`;
  }
  const verb = isHeadingRead ? 'Hold' : 'Fly';
  if (then === null) return `${verb} ${heading}.`;
  return way.holdS > LONG_HOLD_S ? `${verb} ${heading} ${then}` : `${verb} ${heading}, ${then}`;
}

function holdWords({ holdS, thenHeadingDeg }: WhichWay): string {
  if (holdS > LONG_HOLD_S) return 'until the next reading.';
  return `${spokenDuration(holdS)}, then ${headingWords(thenHeadingDeg)}.`;
}

/** From here on tenths of a mile are not spoken: they change nothing and cost attention, NM. */
const WHOLE_MILES_FROM_NM = 100;

/**
 * "one one decimal one miles"; below a mile "seven tenths of a mile"; from a hundred on "one five zero
 * miles". NM, rounded to a tenth.
 */
export function milesWords(distanceNm: number, manner: Manner): string {
  const tenths = Math.round(Math.abs(distanceNm) * 10);
  if (tenths < 10) return offCourseWords(distanceNm, manner);
  if (tenths === 10) return 'one mile';
  return tenths >= 10 * WHOLE_MILES_FROM_NM
    ? spokenMiles(distanceNm)
    : `${spokenDistance(distanceNm, manner)} miles`;
}

/**
 * A small distance as a pilot thinks of it: "seven tenths of a mile", "half a mile", "one mile".
 *
 * NM, its sign left out; less than a twentieth counts as "less than a tenth of a mile".
 */
export function offCourseWords(distanceNm: number, manner: Manner): string {
  const tenths = Math.round(Math.abs(distanceNm) * 10);
  if (tenths === 0) return 'less than a tenth of a mile';
  if (tenths === 1) return 'a tenth of a mile';
  if (tenths === 5) return 'half a mile';
  return tenths < 10
    ? `${digits(tenths)} tenths of a mile`
    : milesWords(Math.abs(distanceNm), manner);
}

/** Dots of the needle: "centred", "half a dot left", "one and a half dots left", "two dots right". */
export function dotsWords(needleDots: number): string {
  const halves = Math.round(Math.abs(needleDots) * 2);
  const side = needleDots < 0 ? 'left' : 'right';
  if (halves === 0) return 'centred';
  if (halves === 1) return `half a dot ${side}`;
  const whole = digits(Math.floor(halves / 2));
  if (halves % 2 === 1) return `${whole} and a half dots ${side}`;
  return halves === 2 ? `one dot ${side}` : `${whole} dots ${side}`;
}

/** Direction rounded to ten degrees, as winds are given; north is 360. Degrees, 10 to 360. */
export function windDirectionDeg(fromDeg: number): number {
  return wrap360(Math.round(fromDeg / 10) * 10) || 360;
}

/** Whether the wind is too weak, for how well it is known, to have a direction. */
export function isWindLight(wind: WindSeen): boolean {
  return wind.speedKt < Math.max(3, wind.sdKt);
}

/** "Wind three four zero, one five knots, give or take six." Magnetic. */
export function windWords(wind: WindSeen): string {
  const sd = Math.max(1, Math.round(wind.sdKt));
  if (isWindLight(wind)) return `Wind light, give or take ${digits(sd)} knots.`;
  const speed = digits(wind.speedKt);
  const from = spokenBearing(windDirectionDeg(wind.fromDegMag));
  return `Wind ${from}, ${speed} knots, give or take ${digits(sd)}.`;
}

const POINTS = [
  'north',
  'north-east',
  'east',
  'south-east',
  'south',
  'south-west',
  'west',
  'north-west',
] as const;

/** The nearest of the eight points of the compass: 338 -> "north". Degrees, any angle. */
export function compassPoint(bearingDeg: number): string {
  return POINTS[Math.round(wrap360(bearingDeg) / 45) % 8] ?? 'north';
}

/** What the voice asks for; short, because it is asked again and again. */
export const QUESTION_WORDS: Readonly<Record<Question, string>> = {
  'centre-needle-from': 'Centre the needle with FROM and read the O B S.',
  'read-heading': 'Read the heading.',
  'read-needle': 'Read the needle.',
  'read-dme': 'Read the D M E.',
  'read-flag': 'Read the flag.',
  'turn-obs-three-left': 'Next reading with the O B S three degrees left.',
  'compare-compass': 'Fly level and compare the direction indicator with the compass.',
  'repeat-reading': 'Read needle, flag and distance again.',
};
