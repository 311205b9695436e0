import { COUNT_WORDS } from './figures.ts';
import type { HeardFlag, HeardReading, HearingScale } from './heard.ts';
import { ICAO_MANNER, spokenBearing, spokenDistance } from './numbers.ts';
import type { Manner } from './numbers.ts';

/** "heading one two five", "course ...", "radial ...": degrees, three figures. */
export function bearingPhrase(name: 'heading' | 'course' | 'radial', bearingDeg: number): string {
  return `${name} ${spokenBearing(bearingDeg)}`;
}

/** "distance seven decimal two": NM, to a tenth. */
export function distancePhrase(distanceNm: number, manner: Manner = ICAO_MANNER): string {
  return `distance ${spokenDistance(distanceNm, manner)}`;
}

/** "flag to", "flag from", "flag off". */
export function flagPhrase(flag: HeardFlag): string {
  return `flag ${flag}`;
}

/** "needle one and a half left", "needle half right", "needle centred": dots, to the nearest half. */
export function needlePhrase(needleDots: number): string {
  const halves = Math.round(Math.abs(needleDots) * 2);
  if (halves === 0) return 'needle centred';
  return `needle ${halfDots(halves)} ${needleDots < 0 ? 'left' : 'right'}`;
}

/** "needle full scale left": by the sign, negative left. */
export function fullScalePhrase(needleDots: number): string {
  return `needle full scale ${needleDots < 0 ? 'left' : 'right'}`;
}

function halfDots(halves: number): string {
  const whole = Math.floor(halves / 2);
  if (whole === 0) return 'half';
  const count = COUNT_WORDS[whole] ?? String(whole);
  return halves % 2 === 0 ? count : `${count} and a half`;
}

/**
 * A reading as it is read back to the pilot, in the vocabulary's own words and fixed order.
 *
 * "heading zero niner seven, needle one and a half left, flag to, distance seven decimal two". Said to
 * `hear`, it gives the same reading back. Rounded as the fields are shown: whole degrees, half dots
 * (full deflection is "full scale"), tenths of a mile. Without any field: an empty text.
 */
export function sayReading(
  reading: HeardReading,
  scale: HearingScale,
  manner: Manner = ICAO_MANNER,
): string {
  const { headingDeg, courseSetDeg, radialDeg, needleDots, flag, dmeNm } = reading;
  const phrases = [
    headingDeg === undefined ? '' : bearingPhrase('heading', headingDeg),
    courseSetDeg === undefined ? '' : bearingPhrase('course', courseSetDeg),
    radialDeg === undefined ? '' : bearingPhrase('radial', radialDeg),
    needleDots === undefined ? '' : needleOrFullScale(needleDots, scale),
    flag === undefined ? '' : flagPhrase(flag),
    dmeNm === undefined ? '' : distancePhrase(dmeNm, manner),
  ];
  return phrases.filter((each) => each !== '').join(', ');
}

function needleOrFullScale(needleDots: number, scale: HearingScale): string {
  return Math.abs(needleDots) >= scale.dotsFullScale
    ? fullScalePhrase(needleDots)
    : needlePhrase(needleDots);
}
