import type { Aircraft } from '../../src/leg/leg.ts';
import { addReading, startEstimate } from '../../src/track/estimate.ts';
import type { Estimate } from '../../src/track/estimate.ts';
import { guide } from '../../src/track/guide.ts';
import type { Guidance } from '../../src/track/guidance.ts';
import {
  arcLegOf,
  beginArc,
  besideDeg,
  flySecond,
  half,
  offArcNm,
  radialSeen,
  readPanel,
  tell,
} from './arc-air.ts';
import type { ArcFlightPlan, ArcTruth } from './arc-air.ts';
import { flatLeg } from './tracked-flight.ts';

export type { ArcFlightPlan } from './arc-air.ts';

/** What came of it. */
export interface ArcFlightResult {
  /** DME shown less the arc's, without reading error, each second from the end of the turn to the radial. */
  readonly offNm: readonly number[];
  /** How often a heading was told on the arc that differs by 3 degrees or more from the one held. */
  readonly changes: number;
  readonly minutesOnArc: number;
  /** True minus foretold time to the radial, seconds, at each answer on the arc. */
  readonly timeMissS: readonly number[];
  readonly answers: readonly { readonly atS: number; readonly guidance: Guidance }[];
  readonly estimates: readonly Estimate[];
  /** Angle between the nose and the station, 0 to 180, each second on the arc. */
  readonly besideDeg: readonly number[];
}

/** A change smaller than this is not flown, degrees. */
const LEAST_TURN_DEG = 3;
const LONGEST_S = 5400;

/** The pilot who does what is said: the first heading now, the second one when it is due. */
interface Pilot {
  pending: { readonly atS: number; readonly headingDeg: number } | null;
  changes: number;
}

function flyTo(truth: ArcTruth, pilot: Pilot, headingDeg: number, isOnArc: boolean): void {
  const isChange = Math.abs(half(headingDeg - truth.targetDeg)) >= LEAST_TURN_DEG;
  if (isChange && isOnArc) pilot.changes += 1;
  if (isChange) tell(truth, headingDeg);
}

function hear(truth: ArcTruth, pilot: Pilot, { whichWay }: Guidance, isOnArc: boolean): void {
  flyTo(truth, pilot, whichWay.headingDeg, isOnArc);
  const { headingDeg, thenHeadingDeg, holdS } = whichWay;
  pilot.pending =
    thenHeadingDeg === headingDeg ? null : { atS: truth.atS + holdS, headingDeg: thenHeadingDeg };
}

function secondHeading(truth: ArcTruth, pilot: Pilot, isOnArc: boolean): void {
  const { pending } = pilot;
  if (pending === null || truth.atS < pending.atS) return;
  pilot.pending = null;
  flyTo(truth, pilot, pending.headingDeg, isOnArc);
}

/** Within a mile of the arc, and turned off the radial and on the new heading, or some way round. */
function isOnTheArc(truth: ArcTruth): boolean {
  const { holdDeg, targetDeg, plan, sweptDeg } = truth;
  const turned = Math.abs(half(holdDeg - plan.courseDeg));
  const isTurned = sweptDeg > 8 || (turned > 60 && Math.abs(half(targetDeg - holdDeg)) < 5);
  return isTurned && Math.abs(offArcNm(truth)) < 1;
}

function isAtRadial(truth: ArcTruth): boolean {
  const { plan, sense } = truth;
  const joinDeg = plan.courseDeg + (plan.direction === 'to' ? 180 : 0);
  const sweepDeg = (((sense * (plan.arc.toRadialDeg - joinDeg)) % 360) + 360) % 360;
  const toGoDeg = sense * half(plan.arc.toRadialDeg - radialSeen(truth));
  return truth.sweptDeg > sweepDeg / 2 && toGoDeg <= 0;
}

/** Flies an arc on the advice, from the joining radial to the radial where it ends (or 90 minutes). */
export function flyArc(plan: ArcFlightPlan): ArcFlightResult {
  const truth = beginArc(plan);
  const leg = flatLeg(arcLegOf(plan));
  const aircraft: Aircraft = {
    trueAirspeedKt: plan.airspeedKt,
    degreesPerDot: 2,
    dotsFullScale: 5,
  };
  let known = startEstimate(leg, aircraft);
  const pilot: Pilot = { pending: null, changes: 0 };
  const offNm: number[] = [];
  const beside: number[] = [];
  const answers: { atS: number; guidance: Guidance }[] = [];
  const estimates: Estimate[] = [];
  let isOnArc = false;
  while (truth.atS < LONGEST_S && !(isOnArc && isAtRadial(truth))) {
    if (truth.atS % plan.everyS === 0) {
      const asked = answers.at(-1)?.guidance.nextQuestion;
      known = addReading(known, readPanel(truth, asked === 'centre-needle-from'));
      const guidance = guide(known, leg);
      answers.push({ atS: truth.atS, guidance });
      estimates.push(known);
      hear(truth, pilot, guidance, isOnArc);
    }
    secondHeading(truth, pilot, isOnArc);
    flySecond(truth);
    isOnArc ||= isOnTheArc(truth);
    if (!isOnArc) continue;
    offNm.push(offArcNm(truth));
    beside.push(besideDeg(truth));
  }
  return {
    offNm,
    changes: pilot.changes,
    minutesOnArc: offNm.length / 60,
    timeMissS: timeMisses(answers, truth.atS),
    answers,
    estimates,
    besideDeg: beside,
  };
}

function timeMisses(answers: ArcFlightResult['answers'], endS: number): readonly number[] {
  return answers.flatMap(({ atS, guidance }) => {
    const { toGoS } = guidance.howFar;
    return guidance.arc?.isJoining === false && toGoS !== null ? [endS - atS - toGoS] : [];
  });
}

/** Root of the mean square. */
export function rms(values: readonly number[]): number {
  return Math.sqrt(values.reduce((sum, each) => sum + each * each, 0) / Math.max(1, values.length));
}
