import { describe, expect, it } from 'vitest';
import { trueDeg } from '../../src/base/bearing.ts';
import { placeAt } from '../../src/earth/geodesic.ts';
import { estimate } from '../../src/track/estimate.ts';
import { foresee } from '../../src/track/foresee.ts';
import type { Reading } from '../../src/track/reading.ts';
import { AIRCRAFT, INBOUND, QEV, XUN, dated } from './ocean-legs.ts';
import { after, answerTo, minuteRows } from './panel-rows.ts';
import type { Row } from './panel-rows.ts';

const IN = dated(INBOUND);

const FROZEN: readonly Row[] = [
  [112, 0, 'to', 11.2],
  [112, 0, 'to', 11.2],
  [112, 0, 'to', 11.2],
];

describe('a DME that stands still', () => {
  it.each([2, 3])('is asked about after %s readings and makes no wind', (count) => {
    const { seen, howFar, kinds } = after(IN, FROZEN.slice(0, count));
    expect(kinds).toContain('dme-not-moving');
    expect(seen.wind).toBeNull();
    expect(seen.driftDeg).toBeNull();
    expect(howFar.groundSpeedKt).toBeNull();
    expect(howFar.toGoS).toBeNull();
  });

  it('gives no distance to go either, now or later', () => {
    const { known, howFar } = after(IN, FROZEN);
    expect(howFar.toGoNm).toBeNull();
    expect(foresee(known, IN, 200_000).howFar.toGoNm).toBeNull();
  });
});

describe('a DME that runs away from the needle', () => {
  it('leaves the distance open after the second such reading', () => {
    const { howFar, seen, kinds } = after(IN, [
      [112, 0, 'to', 11.2],
      [112, 0, 'to', 12.8],
      [112, 0, 'to', 14.4],
    ]);
    expect(kinds).toContain('dme-disagrees');
    expect(howFar.toGoNm).toBeNull();
    expect(howFar.sdNm).toBeNull();
    expect(seen.wind).toBeNull();
  });
});

describe('a wind learnt from one interval', () => {
  it('is not told when it is more than half the airspeed', () => {
    // 0.4 NM in a minute at 95 kt through the air: some 70 kt on the nose, or a slip.
    const { seen, howFar } = after(IN, [
      [112, 0, 'to', 11.2],
      [112, 0, 'to', 10.8],
    ]);
    expect(seen.wind).toBeNull();
    expect(howFar.groundSpeedKt).toBeNull();
  });

  it('is told when it was forecast', () => {
    const wind = { fromDegTrue: 105, speedKt: 50 };
    const { seen } = after(IN, [[112, 0, 'to', 11.2]], { wind });
    expect(seen.wind?.speedKt).toBeCloseTo(50, 0);
  });
});

describe('a reading that does not fit', () => {
  it('makes no wind, drift or time until it is settled', () => {
    const steady: Row[] = [11.2, 9.6, 8, 6.4].map((dmeNm) => [112, 0, 'to', dmeNm]);
    expect(after(IN, steady).howFar.toGoS).not.toBeNull();
    const { howFar, seen } = after(IN, [...steady, [112, -4.5, 'to', 4.8]]);
    expect(howFar.toGoS).toBeNull();
    expect(seen.wind).toBeNull();
  });
});

describe('a needle that may be stuck', () => {
  // Headings well to either side of the course, and centred all the same: an indicator that rests.
  const resting: Row[] = [
    [112, 0, 'to', 20.2],
    [82, 0, 'to', 18.8],
    [142, 0, 'to', 17.4],
    [82, 0, 'to', 16],
    [142, 0, 'to', 14.6],
    [82, 0, 'to', 13.2],
    [142, 0, 'to', 11.8],
    [82, 0, 'to', 10.4],
    [142, 0, 'to', 9],
    [82, 0, 'to', 7.6],
  ];

  it('makes no wind or drift, but leaves the speed and the time that the DME shows', () => {
    const { howFar, seen, kinds } = after(IN, resting);
    expect(kinds).toContain('needle-not-moving');
    expect(seen.wind).toBeNull();
    expect(seen.driftDeg).toBeNull();
    // 1.4 NM of slant range a minute.
    expect(howFar.groundSpeedKt).toBeGreaterThan(75);
    expect(howFar.groundSpeedKt).toBeLessThan(95);
    expect(howFar.toGoS).not.toBeNull();
  });
});

describe('a wind as strong as the airspeed', () => {
  const slow = { ...AIRCRAFT, trueAirspeedKt: 60 };

  it.each([
    ['on the nose', 105],
    ['across', 15],
  ])('%s is told as too strong, without a speed or a time', (_, fromDegTrue) => {
    const given = { wind: { fromDegTrue, speedKt: 80 }, aircraft: slow };
    const { isWindTooStrong, howFar } = after(IN, [[112, 0, 'to', 11.2]], given);
    expect(isWindTooStrong).toBe(true);
    expect(howFar.groundSpeedKt).toBeNull();
    expect(howFar.toGoS).toBeNull();
  });

  it('is not said of a wind that leaves a course to hold', () => {
    const given = { wind: { fromDegTrue: 15, speedKt: 40 }, aircraft: slow };
    const { isWindTooStrong, howFar } = after(IN, [[112, 0, 'to', 11.2]], given);
    expect(isWindTooStrong).toBe(false);
    expect(howFar.groundSpeedKt).toBeGreaterThan(30);
  });
});

describe('a DME below the height over its antenna', () => {
  it('is read again: 0.3 NM cannot be shown from 4,090 ft, 0.67 NM, above', () => {
    const { kinds, asks } = after(IN, [[112, 0, 'to', 0.3]]);
    expect(kinds).toContain('readings-disagree');
    expect(asks).toContain('0.3');
    expect(after(IN, [[112, 0, 'to', 0.7]]).kinds).toEqual([]);
  });

  it('is the DME itself within the 0.2 NM that it may be off (ICAO Annex 10 vol. I, 3.5.3.1.3)', () => {
    expect(after(IN, [[112, 0, 'to', 0.5]]).kinds).toEqual([]);
  });
});

describe('a cross-bearing', () => {
  const abeam = placeAt(placeAt(QEV, trueDeg(285), 11), trueDeg(0), 40);
  const cross = (offDeg: number, atMs: number): Reading => ({
    atMs,
    courseSetDeg: 180 - XUN.declinationDegEast + offDeg,
    needleDots: 0,
    flag: 'from',
    station: { ...XUN, ...abeam },
  });

  it('far from what is expected is read again', () => {
    const known = estimate(
      [
        ...minuteRows(IN, [
          [112, 0, 'to', 11.2],
          [112, 0, 'to', 9.6],
        ]),
        cross(23, 70_000),
      ],
      IN,
      AIRCRAFT,
    );
    const { kinds, asks } = answerTo(known, IN);
    expect(kinds).toEqual(['readings-disagree']);
    expect(asks).toContain('cross-bearing');
  });

  it('that fits is taken in without a word, and ends the doubt about one before', () => {
    const start = minuteRows(IN, [[112, 0, 'to', 11.2]]);
    const known = estimate([...start, cross(23, 5_000), cross(0, 10_000)], IN, AIRCRAFT);
    expect(answerTo(known, IN).kinds).toEqual([]);
  });

  it('alone tells no place: the radial of the leg is asked for', () => {
    const known = estimate([cross(0, 0)], IN, AIRCRAFT);
    expect(answerTo(known, IN).nextQuestion).toBe('centre-needle-from');
  });
});
