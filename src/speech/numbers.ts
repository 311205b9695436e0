import { wrap360 } from '../base/angle.ts';
import { assert } from '../base/assert.ts';

/** How the pilot was taught to say the decimal sign: "decimal" (ICAO, UK) or "point" (US). */
export interface Manner {
  readonly decimalWord: 'decimal' | 'point';
}

/** "decimal", as in ICAO Annex 10 volume II and CAP 413; the AIM accepts it too. */
export const ICAO_MANNER: Manner = { decimalWord: 'decimal' };

const FIGURE_WORDS = [
  'zero',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'niner',
] as const;

const S_PER_MIN = 60;
const MIN_PER_H = 60;

/** The word for one figure, 0 to 9: the plain English words, but "niner" for nine. */
function figureWord(figure: number): string {
  return FIGURE_WORDS[figure] ?? '';
}

/** Each character of a row of figures as its word; anything else is left out. */
export function figuresSpoken(figures: string): string {
  return Array.from(figures)
    .filter((each) => each >= '0' && each <= '9')
    .map((each) => figureWord(Number(each)))
    .join(' ');
}

/**
 * A whole number, figure by figure: 125 -> "one two five".
 *
 * `n` is rounded; a negative one begins with "minus". `width` fills up with leading zeros
 * (5 in three figures: "zero zero five"). A number that is not finite is the caller's mistake.
 *
 * "tree", "fower" and "fife" are how the words sound on the radio, not how a voice should be told to
 * say them, so the words are plain; only "niner" is a word of its own (nein is German for no).
 * *Source:* AIM 4-2-7; CAP 413 chapter 2 table 2; ICAO Annex 10 volume II, 5.2.1.4.
 */
export function digits(n: number, width = 1): string {
  assert(Number.isFinite(n), `a number to be spoken is finite, not ${n}`);
  const whole = Math.round(n);
  const figures = figuresSpoken(Math.abs(whole).toFixed(0).padStart(width, '0'));
  return whole < 0 ? `minus ${figures}` : figures;
}

/**
 * A bearing, course, radial or heading in three figures: 5 -> "zero zero five".
 *
 * Degrees, any angle, rounded to a whole degree; north is "three six zero", never "zero zero zero".
 * *Source:* AIM 4-2-10 ("three six zero" for a magnetic bearing of 360).
 */
export function spokenBearing(bearingDeg: number): string {
  const rounded = Math.round(wrap360(bearingDeg)) % 360;
  return digits(rounded === 0 ? 360 : rounded, 3);
}

/** A turn or an angle: 15 -> "one five degrees"; rounded to a whole degree, its sign left out. */
export function spokenAngle(angleDeg: number): string {
  const rounded = Math.round(Math.abs(angleDeg));
  return `${digits(rounded)} ${rounded === 1 ? 'degree' : 'degrees'}`;
}

/** A number with its decimals, figure by figure; decimals beyond `places` are rounded away. */
function decimals(value: number, places: number, manner: Manner): string {
  assert(Number.isFinite(value), `a number to be spoken is finite, not ${value}`);
  const [whole = '', tail = ''] = Math.abs(value).toFixed(places).split('.');
  const sign = value < 0 && Number(`${whole}.${tail}`) > 0 ? 'minus ' : '';
  return `${sign}${figuresSpoken(whole)} ${manner.decimalWord} ${figuresSpoken(tail)}`;
}

/**
 * A distance as a DME shows it, to a tenth: 11.2 -> "one one decimal two"; 14 -> "one four decimal zero".
 *
 * NM; the unit is not spoken. The tenth always is, because the pilot compares it with the indicator.
 * *Source:* CAP 413 chapter 2 table 3 and AIM 4-2-8 for the decimal; figure by figure as in both.
 */
export function spokenDistance(distanceNm: number, manner: Manner = ICAO_MANNER): string {
  return decimals(distanceNm, 1, manner);
}

/** A distance in whole miles for a call-out: 14.2 -> "one four miles"; "one mile". */
export function spokenMiles(distanceNm: number): string {
  const rounded = Math.round(distanceNm);
  return `${digits(rounded)} ${rounded === 1 ? 'mile' : 'miles'}`;
}

/**
 * A frequency: 113.35 -> "one one three decimal three five"; 113 -> "one one three decimal zero".
 *
 * MHz, rounded to a kilohertz. Zeros at the end are left off but for one, as frequencies of
 * navigation aids are printed; the six-figure rule for 8.33 kHz voice channels is not meant here.
 * *Source:* AIM 4-2-8 e (122.1); CAP 413; US Navy P-305 page 181 (255.4).
 */
export function spokenFrequency(frequencyMhz: number, manner: Manner = ICAO_MANNER): string {
  const printed = frequencyMhz.toFixed(3);
  const places = printed.endsWith('00') ? 1 : printed.endsWith('0') ? 2 : 3;
  return decimals(frequencyMhz, places, manner);
}

/**
 * An altitude: 4500 -> "four thousand five hundred"; 12500 -> "one two thousand five hundred".
 *
 * Feet, rounded to a foot; the unit is not spoken. One that is not in whole hundreds is given figure
 * by figure (4550 -> "four five five zero").
 * *Source:* AIM 4-2-8, 4-2-9; ICAO Annex 10 volume II, 5.2.1.4.1.
 */
export function spokenAltitude(altitudeFt: number): string {
  const rounded = Math.round(altitudeFt);
  if (rounded === 0 || rounded % 100 !== 0) return digits(rounded);
  const thousands = Math.floor(Math.abs(rounded) / 1000);
  const hundreds = (Math.abs(rounded) % 1000) / 100;
  return [
    rounded < 0 ? 'minus' : '',
    thousands > 0 ? `${digits(thousands)} thousand` : '',
    hundreds > 0 ? `${digits(hundreds)} hundred` : '',
  ]
    .filter((each) => each !== '')
    .join(' ');
}

/**
 * A speed: 95 -> "niner five knots", rounded to a whole knot.
 *
 * *Source:* AIM 4-2-11 ("two five zero knots"); CAP 413 ("one eight knots").
 */
export function spokenSpeed(speedKt: number): string {
  const rounded = Math.round(speedKt);
  return `${digits(rounded)} ${rounded === 1 ? 'knot' : 'knots'}`;
}

/**
 * A wind: from 338 at 15 -> "three three eight degrees one five knots".
 *
 * The direction in three figures, magnetic when it is spoken in flight; the speed in knots.
 * *Source:* ICAO Annex 10 volume II, 5.2.1.4.1 ("two zero zero degrees seven zero knots").
 */
export function spokenWind(fromDegMag: number, speedKt: number): string {
  return `${spokenBearing(fromDegMag)} degrees ${spokenSpeed(speedKt)}`;
}

/**
 * A length of time, rounded as it is spoken: whole seconds below a minute, five seconds below ten
 * minutes, whole minutes from there on. Seconds; show this one where voice and page should agree.
 *
 * Nobody flies or times a leg by hand more finely, and shorter sentences leave more time to look out.
 */
export function roundedDurationS(durationS: number): number {
  const whole = Math.max(0, Math.round(durationS));
  if (whole < S_PER_MIN) return whole;
  const byFive = Math.round(durationS / 5) * 5;
  return byFive < 10 * S_PER_MIN ? byFive : Math.round(durationS / S_PER_MIN) * S_PER_MIN;
}

/**
 * A length of time: 45 -> "four five seconds", 75 -> "one minute one five seconds", 402 -> "six minutes
 * four zero seconds", 1260 -> "two one minutes", 4500 -> "one hour one five minutes".
 *
 * Seconds, rounded by `roundedDurationS`; a negative time counts as none ("zero seconds"). Figure by
 * figure, since fifteen and fifty sound alike in a cabin; the unit is always spoken, so that the
 * figures do not run into those of the next phrase.
 * Common practice, no source: the published rules cover clock times, not lengths of time.
 */
export function spokenDuration(durationS: number): string {
  const rounded = roundedDurationS(durationS);
  const hours = Math.floor(rounded / (S_PER_MIN * MIN_PER_H));
  const minutes = Math.floor(rounded / S_PER_MIN) % MIN_PER_H;
  const seconds = rounded % S_PER_MIN;
  const parts = [counted(hours, 'hour'), counted(minutes, 'minute'), counted(seconds, 'second')];
  const spoken = parts.filter((each) => each !== '').join(' ');
  return spoken === '' ? 'zero seconds' : spoken;
}

function counted(count: number, unit: string): string {
  if (count === 0) return '';
  return `${digits(count)} ${unit}${count === 1 ? '' : 's'}`;
}
