import { describe, expect, test } from 'vitest';
import {
  digits,
  spokenAltitude,
  spokenBearing,
  spokenDistance,
  spokenFrequency,
  spokenSpeed,
  spokenWind,
} from '../../src/speech/numbers.ts';

const US = { decimalWord: 'point' } as const;
const UK = { decimalWord: 'decimal' } as const;

describe('AIM 4-2-10, directions (FAA Aeronautical Information Manual)', () => {
  test.each([
    [5, 'zero zero five'],
    [50, 'zero five zero'],
    [100, 'one zero zero'],
    [220, 'two two zero'],
    [360, 'three six zero'],
  ])('%i is spoken %s', (bearingDeg, spoken) => {
    expect(spokenBearing(bearingDeg)).toBe(spoken);
  });
});

describe('ICAO Annex 10 volume II, 5.2.1.4.1, headings and winds (reprint)', () => {
  test.each([
    [100, 'one zero zero'],
    [80, 'zero eight zero'],
  ])('heading %i is spoken %s', (headingDeg, spoken) => {
    expect(spokenBearing(headingDeg)).toBe(spoken);
  });

  test('a wind of 200 degrees and 70 knots is spoken with both units', () => {
    expect(spokenWind(200, 70)).toBe('two zero zero degrees seven zero knots');
  });

  test('a wind of 160 degrees and 18 knots is spoken with both units', () => {
    expect(spokenWind(160, 18)).toBe('one six zero degrees one eight knots');
  });

  test('figures of a pressure or a runway are spoken one by one', () => {
    expect(digits(1010)).toBe('one zero one zero');
    expect(digits(27)).toBe('two seven');
  });
});

describe('AIM 4-2-8 e, CAP 413 chapter 2 table 3, US Navy P-305 page 181: decimals', () => {
  test.each([
    [122.1, US, 'one two two point one'],
    [122.1, UK, 'one two two decimal one'],
    [255.4, US, 'two five five point four'],
    [322.1, US, 'three two two point one'],
  ])('%f is spoken by %o as %s', (frequencyMhz, manner, spoken) => {
    expect(spokenFrequency(frequencyMhz, manner)).toBe(spoken);
  });
});

describe('voice channels in six figures (ICAO rule, from memory)', () => {
  test.each([
    [118, 'one one eight decimal zero'],
    [118.005, 'one one eight decimal zero zero five'],
  ])('%f is spoken %s', (frequencyMhz, spoken) => {
    expect(spokenFrequency(frequencyMhz)).toBe(spoken);
  });
});

describe('altitudes: AIM 4-2-8 and 4-2-9, US Navy P-330 page 230 and P-305 page 181', () => {
  test.each([
    [500, 'five hundred'],
    [4500, 'four thousand five hundred'],
    [10_000, 'one zero thousand'],
    [12_000, 'one two thousand'],
    [12_500, 'one two thousand five hundred'],
    [13_500, 'one three thousand five hundred'],
    [13_400, 'one three thousand four hundred'],
    [14_500, 'one four thousand five hundred'],
  ])('%i is spoken %s', (altitudeFt, spoken) => {
    expect(spokenAltitude(altitudeFt)).toBe(spoken);
  });
});

describe('altitudes: ICAO Annex 10 volume II, 5.2.1.4.1 (reprint)', () => {
  test.each([
    [800, 'eight hundred'],
    [3400, 'three thousand four hundred'],
    [12_000, 'one two thousand'],
    [2200, 'two thousand two hundred'],
    [4300, 'four thousand three hundred'],
  ])('%i is spoken %s', (altitudeFt, spoken) => {
    expect(spokenAltitude(altitudeFt)).toBe(spoken);
  });
});

describe('speeds: AIM 4-2-11, CAP 413 chapter 2', () => {
  test.each([
    [250, 'two five zero knots'],
    [190, 'one niner zero knots'],
    [18, 'one eight knots'],
  ])('%i is spoken %s', (speedKt, spoken) => {
    expect(spokenSpeed(speedKt)).toBe(spoken);
  });
});

describe('figures: AIM 4-2-7, US Navy P-305 page 181 (times)', () => {
  test('nine is spoken niner, since nein is no in German', () => {
    expect(digits(9)).toBe('niner');
  });

  test('0920 keeps its leading zero when four figures are asked for', () => {
    expect(digits(920, 4)).toBe('zero niner two zero');
  });

  test('1530 is spoken figure by figure', () => {
    expect(digits(1530)).toBe('one five three zero');
  });
});

describe('distances: figure by figure with the decimal (CAP 413, AIM 4-2-8)', () => {
  test.each([
    [11.2, UK, 'one one decimal two'],
    [11.2, US, 'one one point two'],
    [14, UK, 'one four decimal zero'],
    [0.04, UK, 'zero decimal zero'],
    [0.96, UK, 'one decimal zero'],
    [129.96, UK, 'one three zero decimal zero'],
  ])('%f NM is spoken by %o as %s', (distanceNm, manner, spoken) => {
    expect(spokenDistance(distanceNm, manner)).toBe(spoken);
  });
});
