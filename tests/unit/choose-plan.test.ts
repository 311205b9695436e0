import { describe, expect, it } from 'vitest';
import { turnDeg } from '../../src/base/angle.ts';
import { alongLine } from '../../src/track/along-line.ts';
import type { StateMean } from '../../src/track/belief.ts';
import { choosePlan } from '../../src/track/choose-plan.ts';
import { sceneOf } from '../../src/track/scene.ts';
import { AIRCRAFT, INBOUND, OUTBOUND, dated } from './ocean-legs.ts';

const IN = sceneOf(dated(INBOUND), AIRCRAFT);
const OUT = sceneOf(dated(OUTBOUND), AIRCRAFT);
const RAD = Math.PI / 180;

/** In a light wind, `offDeg` off the line of a leg at a range, seen from the station. */
function at(scene: typeof IN, rangeNm: number, offDeg: number): StateMean {
  return {
    lnRange: Math.log(rangeNm),
    bearingRad: (scene.courseDegTrue + (scene.isTo ? 180 : 0) + offDeg) * RAD,
    windEastKt: 4,
    windNorthKt: 5,
    vorBiasDeg: 0,
    airspeedErrorKt: 0,
    headingErrorDeg: 0,
  };
}

function planned(scene: typeof IN, rangeNm: number, offDeg: number) {
  const mean = at(scene, rangeNm, offDeg);
  const { lineHeadingDeg } = alongLine(mean, scene);
  const presentHeadingDeg = Math.round(lineHeadingDeg);
  const plan = choosePlan({ mean, presentHeadingDeg, horizonS: 60, holdsLine: false }, scene);
  return { ...plan, presentHeadingDeg, cutDeg: Math.abs(turnDeg(lineHeadingDeg, plan.headingDeg)) };
}

describe('an intercept (at most 90 degrees: FAA-H-8083-15B, Instrument Flying Handbook, page 9-14)', () => {
  it.each([8, 12, -12, 16])('is cut at about 60 degrees miles off the line: %i degrees', (off) => {
    const { cutDeg } = planned(IN, 22, off);
    expect(cutDeg).toBeGreaterThan(50);
    expect(cutDeg).toBeLessThanOrEqual(62.5);
  });

  it.each([1, 1.5, -2])('is never steeper than 20 degrees close in: %f degrees off', (off) => {
    expect(planned(IN, 4, off).cutDeg).toBeLessThanOrEqual(22.5);
  });
});

describe('a heading that is told', () => {
  const OFFS = [-3, -2.3, -1.6, -1, 1, 1.7, 2.2, 3];
  /** The headings that are not simply the one held. */
  const told = (scene: typeof IN, rangeNm: number): number[] =>
    OFFS.map((off) => planned(scene, rangeNm, off))
      .filter(({ headingDeg, presentHeadingDeg }) => headingDeg !== presentHeadingDeg)
      .flatMap(({ headingDeg, thenHeadingDeg }) => [headingDeg, thenHeadingDeg]);

  it('is a step of five degrees far out, and outbound', () => {
    const all = [...told(IN, 18), ...told(IN, 9), ...told(OUT, 18), ...told(OUT, 5)];
    expect(all.length).toBeGreaterThan(20);
    expect(all.filter((each) => each % 5 !== 0)).toEqual([]);
  });

  it('is a whole degree inbound within 8 NM, where half a step of five is a dot in a minute', () => {
    const all = told(IN, 5);
    expect(all.every(Number.isInteger)).toBe(true);
    expect(all.some((each) => each % 5 !== 0)).toBe(true);
  });
});
