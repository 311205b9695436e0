import { datedLeg } from '../../src/leg/leg-frame.ts';
import type { DatedLeg } from '../../src/leg/leg-frame.ts';
import { addReading, startEstimate } from '../../src/track/estimate.ts';
import type { Estimate } from '../../src/track/estimate.ts';
import { guide } from '../../src/track/guide.ts';
import { choosePlan } from '../../src/track/choose-plan.ts';
import { sceneOf } from '../../src/track/scene.ts';
import type { Reading } from '../../src/track/reading.ts';
import type { Wind } from '../../src/wind/wind.ts';
import { half, toPlaneDeg } from './track-air.ts';
import type { Truth } from './track-air.ts';

/** What someone tells the pilot after a reading. */
export interface Told {
  readonly headingDeg: number;
  readonly holdS: number;
  readonly thenHeadingDeg: number;
}

/** Someone who answers readings. */
export interface Adviser {
  readonly answer: (reading: Reading, truth: Truth) => Told;
  /** The estimate behind the last answer, where there is one. */
  readonly estimate: () => Estimate | null;
}

/** The leg of a flight, dated. */
export function legOf(truth: Truth): DatedLeg {
  const leg = datedLeg(truth.leg, '2026-11-25');
  if (!leg.ok) throw new Error(JSON.stringify(leg.problem));
  return leg.value;
}

function aircraftOf(truth: Truth) {
  return { trueAirspeedKt: truth.airspeedKt, degreesPerDot: 2, dotsFullScale: 5 };
}

/** The tool itself. */
export function toolAdviser(truth: Truth, wind?: Wind): Adviser {
  const leg = legOf(truth);
  let estimate = startEstimate(leg, aircraftOf(truth), wind);
  return {
    answer: (reading) => {
      estimate = addReading(estimate, reading);
      const { whichWay } = guide(estimate, leg);
      const { headingDeg, holdS, thenHeadingDeg } = whichWay;
      return { headingDeg, holdS, thenHeadingDeg };
    },
    estimate: () => estimate,
  };
}

/** The tool's search on the true state: what no estimator can better. */
export function oracleAdviser(truth: Truth, intervalS: number): Adviser {
  const scene = sceneOf(legOf(truth), aircraftOf(truth));
  let passed = false;
  return {
    answer: (reading) => {
      passed ||= truth.isTo && reading.flag === 'from' && reading.atMs > 0;
      const mean = {
        lnRange: Math.log(Math.hypot(truth.x, truth.y)),
        bearingRad: Math.atan2(truth.x, truth.y),
        windEastKt: truth.windX,
        windNorthKt: truth.windY,
        vorBiasDeg: truth.biasDeg,
        airspeedErrorKt: truth.airspeedErrorKt,
        headingErrorDeg: truth.headingErrorDeg,
      };
      const situation = {
        mean,
        presentHeadingDeg: ((truth.targetDeg % 360) + 360) % 360,
        horizonS: intervalS,
        holdsLine: passed,
      };
      const plan = choosePlan(situation, scene);
      return {
        headingDeg: plan.headingDeg,
        holdS: plan.holdS ?? 9999,
        thenHeadingDeg: plan.thenHeadingDeg,
      };
    },
    estimate: () => null,
  };
}

/**
 * Handbook bracketing: intercept at twice the angle off (at least 20 degrees, at most 45); on the needle's
 * return take out half; a needle that leaves again by the threshold gets a correction into it, 20 degrees at
 * first, each time half of the last, not below 5. *Source:* FAA-H-8083-15B, Instrument Flying Handbook,
 * page 9-14, with the threshold as its one free choice.
 */
export function bracketingAdviser(truth: Truth, thresholdDots: number): Adviser {
  const courseMag = truth.courseDeg - toPlaneDeg(truth);
  const wrap = (deg: number): number => ((Math.round(deg) % 360) + 360) % 360;
  let base = courseMag;
  let correction = 20;
  let bracket = 0;
  let isFirst = true;
  const say = (deg: number): Told => ({
    headingDeg: wrap(deg),
    holdS: 9999,
    thenHeadingDeg: wrap(deg),
  });
  return {
    answer: (reading) => {
      const onCourseSet = Math.abs(half(reading.courseSetDeg - truth.leg.courseDeg)) < 1;
      const dots = onCourseSet ? (reading.needleDots ?? 0) : offFromCentred(reading, truth);
      if (reading.flag === 'off') return say(base);
      const side = Math.sign(dots);
      if (isFirst && Math.abs(dots) > 1) {
        isFirst = false;
        bracket = side;
        const angle = Math.min(45, Math.max(20, 4 * Math.abs(dots)));
        return say(base + side * angle);
      }
      isFirst = false;
      if (bracket !== 0) {
        const isBack = dots === 0 || side === -bracket;
        if (!isBack)
          return say(base + bracket * Math.max(correction, Math.abs(dots) >= 4 ? 30 : 0));
        base += (bracket * correction) / 2;
        correction = Math.max(5, correction / 2);
        bracket = 0;
        if (Math.abs(dots) < thresholdDots) return say(base);
      }
      if (Math.abs(dots) >= thresholdDots) {
        bracket = side;
        return say(base + bracket * correction);
      }
      return say(base);
    },
    estimate: () => null,
  };
}

function offFromCentred(reading: Reading, truth: Truth): number {
  const off = half(reading.courseSetDeg - truth.leg.courseDeg - (truth.isTo ? 180 : 0));
  return Math.max(-5, Math.min(5, (truth.isTo ? off : -off) / 2));
}
