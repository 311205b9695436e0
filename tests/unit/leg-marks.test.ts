import { describe, expect, it } from 'vitest';
import { trueDeg } from '../../src/base/bearing.ts';
import { placeAt } from '../../src/earth/geodesic.ts';
import { legMarks } from '../../src/leg/route/leg-marks.ts';
import { ocean, stationAt } from './station-sets.ts';

const station = stationAt('QEV', ocean);
const start = placeAt(ocean, trueDeg(270), 17);
const heightFt = 6_076.12;
const marks = legMarks(
  { station, direction: 'to', start, end: ocean },
  { altitudeFt: heightFt, groundSpeedKt: 90 },
);

describe('what is met along a leg', () => {
  it('is the start, each whole five on the DME, the flag off at the cone, and the end', () => {
    expect(marks.map(({ kind }) => kind).join(' ')).toBe('start dme dme dme flag-off end');
    expect(marks.map(({ dmeNm }) => Math.round(10 * (dmeNm ?? 0)) / 10)).toEqual([
      17, 15, 10, 5, 1.6, 1,
    ]);
  });

  it('puts the whole fives where the slant range, not the ground distance, is whole (Pythagoras)', () => {
    const five = marks.find(({ dmeNm }) => dmeNm === 5);
    expect(17 - (five?.flownNm ?? 0)).toBeCloseTo(Math.sqrt(24), 2);
  });

  it('counts the time from the start over the ground', () => {
    expect(marks.at(-1)?.timeS).toBeCloseTo((17 / 90) * 3600, 6);
  });

  it('runs the other way outbound, with the flag coming on', () => {
    const out = legMarks(
      { station, direction: 'from', start: ocean, end: start },
      { altitudeFt: heightFt, groundSpeedKt: 90 },
    );
    expect(out.map(({ kind }) => kind).join(' ')).toBe('start flag-on dme dme dme end');
  });

  it('has no DME figures at a station without one', () => {
    const mute = legMarks(
      { station: { ...station, hasDme: false }, direction: 'to', start, end: ocean },
      { altitudeFt: heightFt, groundSpeedKt: 90 },
    );
    expect(mute.map(({ kind }) => kind).join(' ')).toBe('start flag-off end');
    expect(mute.every(({ dmeNm }) => dmeNm === null)).toBe(true);
  });

  it('finds the whole fives of a DME that stands beside the line', () => {
    const dme = { ...placeAt(ocean, trueDeg(0), 3), elevationFt: 0 };
    const beside = legMarks(
      { station: { ...station, dme }, direction: 'to', start, end: ocean },
      { altitudeFt: 1_000, groundSpeedKt: 90 },
    );
    expect(beside.filter(({ kind }) => kind === 'dme').map(({ dmeNm }) => dmeNm)).toEqual([
      15, 10, 5,
    ]);
  });
});
