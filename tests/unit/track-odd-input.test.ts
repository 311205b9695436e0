import { describe, expect, it } from 'vitest';
import type { Leg } from '../../src/leg/leg.ts';
import type { Advice } from '../../src/procedure/advice.ts';
import { advise } from '../../src/procedure/advise.ts';
import type { Flag, Reading } from '../../src/track/reading.ts';
import { AIRCRAFT, DATE_ISO, INBOUND } from './ocean-legs.ts';

/** Seconds, needle, flag, DME, course set; null: not read. */
type Row = readonly [number, number | null, Flag, number | null, number?];

function reading([atS, needleDots, flag, dmeNm, courseSetDeg]: Row): Reading {
  return {
    atMs: atS * 1000,
    headingDeg: 112,
    courseSetDeg: courseSetDeg ?? 112,
    flag,
    ...(needleDots === null ? {} : { needleDots }),
    ...(dmeNm === null ? {} : { dmeNm }),
  };
}

function answer(readings: readonly Reading[], leg: Leg = INBOUND): Advice {
  const result = advise({ leg, aircraft: AIRCRAFT, dateIso: DATE_ISO, readings });
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.value;
}

const after = (rows: readonly Row[], leg?: Leg): Advice => answer(rows.map(reading), leg);
const kinds = ({ alerts }: Advice): readonly string[] => alerts.map(({ kind }) => kind);

// Inbound at 95 kt in still air: 1.6 NM a minute.
const GOOD: readonly Row[] = [
  [0, 0, 'to', 25],
  [60, 0, 'to', 23.4],
  [120, 0, 'to', 21.8],
  [180, 0, 'to', 20.2],
];
const SLIPS: readonly Row[] = [
  [240, 4, 'to', 71],
  [300, -4, 'to', 33],
];

describe('a picture that is lost', () => {
  it('is said after two readings that fit nothing, with the reading that brings it back', () => {
    const lost = after([...GOOD, ...SLIPS]);
    expect(lost.phase).toBe('lost');
    expect(lost.say).toMatch(
      /I have lost the picture\. Hold heading .* Centre the needle with FROM and read the O B S\.$/,
    );
    expect(lost.estimate.wind).toBeNull();
  });

  it('comes back with that reading, which is believed at once; the warning stays for a while', () => {
    const centred: Row = [310, 0, 'from', 17, 292];
    const back = after([...GOOD, ...SLIPS, centred]);
    expect(back.phase).toBe('track');
    expect(back.say).not.toContain('does not fit');
    expect(kinds(back)).toEqual(['wrong-station']);
    const on = [1, 2, 3, 4].map((minute): Row => [310 + 60 * minute, 0, 'to', 17 - 1.6 * minute]);
    const later = after([...GOOD, ...SLIPS, centred, ...on]);
    expect(kinds(later)).toEqual([]);
    expect(later.howFar.toGoNm).toBeCloseTo(10.6, 0);
  });

  it('is also one whose radial nothing has told, though the distance is known', () => {
    const wide = after([
      [0, null, 'off', 20],
      [60, null, 'to', 18.5],
    ]);
    expect(wide.phase).toBe('lost');
    expect(wide.say).toContain('I have lost the picture.');
    expect(wide.say).toContain('Read the needle.');
  });
});

describe('an altitude other than that of the leg', () => {
  const high: Leg = { ...INBOUND, altitudeFt: 9500 };
  const close: readonly Row[] = [
    [0, 0, 'to', 8],
    [60, 0, 'to', 6.5],
    [120, 0, 'to', 5],
  ];

  it('makes no difference worth a word beyond five miles: 5,000 ft are 0.1 NM at 8', () => {
    const planned = after(close);
    expect(kinds(planned)).toEqual([]);
    const flown = after(close, high).howFar.toGoNm ?? NaN;
    expect(Math.abs((planned.howFar.toGoNm ?? NaN) - flown)).toBeLessThan(0.25);
  });

  it('is asked about when the DME shows less than the height', () => {
    const low = after([
      [0, 0, 'to', 6],
      [60, 0, 'to', 4.4],
      [120, 0, 'to', 2.8],
      [180, 0, 'to', 1.2],
      [215, 0, 'to', 0.3],
    ]);
    expect(low.say).toContain('It is less than your height above the D M E: check the altitude');
  });

  it('once put right for the leg is right for every reading, also those before', () => {
    const last: Row = [240, 0, 'to', 2.3];
    // 9,090 ft above the antenna are 1.50 NM: the square root of 2.3^2 - 1.5^2 is 1.75.
    expect(after([...close, last], high).howFar.toGoNm).toBeCloseTo(1.75, 0);
  });
});

describe('readings in odd order and at odd times', () => {
  const rows = GOOD.map(reading);

  it('an hour apart start again, and say so', () => {
    const late = after([...GOOD, [3800, 0.5, 'to', 30]]);
    expect(late.say).toContain('No reading for one hour: I start again from this one.');
    expect(late.howFar.toGoNm).toBeCloseTo(30, 0);
    expect(kinds(late)).toEqual([]);
  });

  it('given twice are answered as if given once', () => {
    expect(answer([...rows, ...rows.slice(-1)])).toEqual(answer(rows));
  });

  it('out of order are answered as if in order', () => {
    expect(answer([...rows].reverse())).toEqual(answer(rows));
  });

  it('with headings through north are one heading to hold, not a turn about', () => {
    const north: Leg = { ...INBOUND, courseDeg: 4 };
    const through = GOOD.map((row, index) => ({
      ...reading(row),
      courseSetDeg: 4,
      headingDeg: index % 2 === 0 ? 359 : 2,
    }));
    const { whichWay, alerts } = answer(through, north);
    expect(whichWay.turnDeg).toBeLessThan(25);
    expect(alerts).toEqual([]);
  });

  it('with another OBS setting in between are each read with their own', () => {
    const turned = after([...GOOD, [240, 1.5, 'to', 18.6, 109]]);
    expect(kinds(turned)).toEqual([]);
    expect(Math.abs(turned.estimate.crossTrackNm ?? NaN)).toBeLessThan(0.3);
    expect(turned.say).toContain('Set course one one two again.');
  });

  it('with a flag against the place are asked for again, and not used', () => {
    const against = after([...GOOD, [240, 0, 'from', 18.6]]);
    expect(kinds(against)).toContain('reverse-sensing');
    expect(against.say).toContain('read the flag and the course on the O B S again');
  });
});
