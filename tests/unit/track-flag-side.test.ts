import { describe, expect, it } from 'vitest';
import { intervalTo } from '../../src/track/carry-on.ts';
import { addReading, startEstimate } from '../../src/track/estimate.ts';
import type { Estimate } from '../../src/track/estimate.ts';
import type { Belief } from '../../src/track/belief.ts';
import { withFlagTaken } from '../../src/track/flag-side.ts';
import { diagonal, element } from '../../src/track/matrix.ts';
import { lnRangeSd } from '../../src/track/place.ts';
import { cutByRange, joined } from '../../src/track/range-pieces.ts';
import { chanceFrom } from '../bench/track-chance.ts';
import { AIRCRAFT } from './ocean-legs.ts';
import { FLAT_STATION, NORTHBOUND, flatLeg } from './tracked-flight.ts';

const RAD = Math.PI / 180;
const RANGE_SD_LN = 0.5;
const WIND_SD_KT = 10;
const BEARING_SD_DEG = 1.5;

/** South of the station by so much, on a leg to it due north, without DME. */
function believedAt(rangeNm: number, isWindTied = false): Belief {
  const covariance = [
    ...diagonal([
      RANGE_SD_LN ** 2,
      (BEARING_SD_DEG * RAD) ** 2,
      WIND_SD_KT ** 2,
      WIND_SD_KT ** 2,
      1,
      4,
      1,
    ]),
  ];
  if (isWindTied) covariance[3] = covariance[21] = 0.6 * RANGE_SD_LN * WIND_SD_KT;
  return {
    mean: {
      lnRange: Math.log(rangeNm),
      bearingRad: Math.PI,
      windEastKt: 0,
      windNorthKt: 0,
      vorBiasDeg: 0,
      airspeedErrorKt: 0,
      headingErrorDeg: 0,
    },
    covariance,
  };
}

const LEG = flatLeg({
  ...NORTHBOUND.leg,
  station: { ...FLAT_STATION, hasDme: false },
  altitudeFt: 3000,
});

const reading = (atS: number, flag: 'to' | 'from', needleDots = 0) => ({
  atMs: atS * 1000,
  headingDeg: 0,
  courseSetDeg: LEG.leg.courseDeg,
  flag,
  needleDots,
});

/** Heading north at 0 s with TO just read, and this belief. */
function flying(belief: Belief): Estimate {
  const start = addReading(startEstimate(LEG, AIRCRAFT), reading(0, 'to'));
  return { ...start, belief, plan: null };
}

function flagTaken(belief: Belief, flag: 'to' | 'from', needleDots = 0) {
  const before = flying(belief);
  const next = reading(60, flag, needleDots);
  const taken = withFlagTaken(before, intervalTo(before, next), next);
  if (!taken) throw new Error('the flag told nothing');
  return taken;
}

/** ln of the range after a minute north, drawn from the belief: of those on the side that the flag tells, outside the cone. */
function drawn(rangeNm: number, side: 1 | -1): { readonly mean: number; readonly sd: number } {
  const chance = chanceFrom(20_261);
  const kept: number[] = [];
  const coneNm = (3000 / 6076.1155) * Math.tan(50 * RAD);
  for (let index = 0; index < 60_000; index += 1) {
    // Two in a hundred: the range, and the speed along the line, are quite wrong.
    const isMistaken = chance.uniform(0, 1) < 0.02;
    const range = Math.exp(Math.log(rangeNm) + chance.normal(isMistaken ? 1 : RANGE_SD_LN));
    const bearing = Math.PI + chance.normal(BEARING_SD_DEG * RAD);
    const speed = AIRCRAFT.trueAirspeedKt + chance.normal(isMistaken ? 3 : 2);
    const x = range * Math.sin(bearing) + chance.normal(WIND_SD_KT) / 60;
    const along = chance.normal(isMistaken ? 20 : WIND_SD_KT);
    const y = range * Math.cos(bearing) + (speed + along) / 60;
    const then = Math.hypot(x, y);
    if (side * y > 0 && then > coneNm * Math.exp(chance.normal(0.2))) kept.push(Math.log(then));
  }
  const mean = kept.reduce((sum, each) => sum + each, 0) / kept.length;
  const square = kept.reduce((sum, each) => sum + (each - mean) ** 2, 0) / kept.length;
  return { mean, sd: Math.sqrt(square) };
}

describe('a belief cut by range', () => {
  it('adds up to itself again: mean and spread within 2 %', () => {
    const belief = believedAt(4, true);
    const sum = joined(cutByRange(belief, 0.7));
    expect(cutByRange(belief, 0.7).reduce((all, { weight }) => all + weight, 0)).toBeCloseTo(0.7);
    expect(sum?.mean.lnRange).toBeCloseTo(belief.mean.lnRange, 6);
    for (const [row, column] of [
      [0, 0],
      [0, 3],
      [3, 3],
      [1, 1],
    ] as const) {
      const whole = element(belief.covariance, row, column);
      expect(element(sum?.covariance ?? [], row, column) / whole).toBeCloseTo(1, 1);
    }
  });
});

describe('near a station whose distance is poorly known (held against 60,000 draws from the same belief)', () => {
  it.each([1.2, 2, 3, 5])('TO after a minute from %f NM tells what the draws tell', (rangeNm) => {
    const { prior } = flagTaken(believedAt(rangeNm), 'to');
    const draws = drawn(rangeNm, -1);
    expect(Math.abs(prior.mean.lnRange - draws.mean)).toBeLessThan(0.15);
    expect(lnRangeSd(prior) / draws.sd).toBeGreaterThan(0.85);
    expect(lnRangeSd(prior) / draws.sd).toBeLessThan(1.35);
    expect(Math.cos(prior.mean.bearingRad - Math.PI)).toBeGreaterThan(0.9);
  });

  it.each([0.8, 1.2])('FROM after a minute from %f NM likewise, beyond the station', (rangeNm) => {
    const { prior } = flagTaken(believedAt(rangeNm), 'from');
    const draws = drawn(rangeNm, 1);
    expect(Math.abs(prior.mean.lnRange - draws.mean)).toBeLessThan(0.15);
    expect(lnRangeSd(prior) / draws.sd).toBeGreaterThan(0.8);
    expect(lnRangeSd(prior) / draws.sd).toBeLessThan(1.35);
    expect(Math.cos(prior.mean.bearingRad)).toBeGreaterThan(0.9);
  });

  it('a TO where the station was believed passed leaves a short distance to go, not a long one', () => {
    const { posterior } = flagTaken(believedAt(1), 'to', 0.5);
    expect(Math.exp(posterior.mean.lnRange)).toBeLessThan(2);
    expect(lnRangeSd(posterior)).toBeLessThan(0.8);
  });

  it('far from the station the flag is no news', () => {
    const before = flying(believedAt(20));
    const next = reading(60, 'to');
    expect(withFlagTaken(before, intervalTo(before, next), next)).toBeNull();
  });
});
