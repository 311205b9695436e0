import { datedLeg } from '../../src/leg/leg-frame.ts';
import type { DatedLeg } from '../../src/leg/leg-frame.ts';
import { addReading, startEstimate } from '../../src/track/estimate.ts';
import type { Estimate } from '../../src/track/estimate.ts';
import { guide } from '../../src/track/guide.ts';
import { choosePlan } from '../../src/track/choose-plan.ts';
import { sceneOf } from '../../src/track/scene.ts';
import type { Question } from '../../src/track/guidance.ts';
import type { Reading } from '../../src/track/reading.ts';
import type { Wind } from '../../src/wind/wind.ts';
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
  /** Whether the last answer asked for the needle to be centred with FROM. */
  readonly wantsCentred: () => boolean;
  /** Whether it asked for the panel to be read again. */
  readonly wantsRepeat: () => boolean;
  /** The estimate behind the last answer, where there is one. */
  readonly estimate: () => Estimate | null;
}

/** The leg of a flight, dated. */
function legOf(truth: Truth): DatedLeg {
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
  let question: Question | null = null;
  return {
    answer: (reading) => {
      estimate = addReading(estimate, reading);
      const { whichWay, nextQuestion } = guide(estimate, leg);
      question = nextQuestion;
      const { headingDeg, holdS, thenHeadingDeg } = whichWay;
      return { headingDeg, holdS, thenHeadingDeg };
    },
    wantsCentred: () => question === 'centre-needle-from',
    wantsRepeat: () => question === 'repeat-reading',
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
    wantsCentred: () => false,
    wantsRepeat: () => false,
    estimate: () => null,
  };
}
