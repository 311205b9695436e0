import { asinDeg, turnDeg, wrap360 } from '../base/angle.ts';
import { alongLine, lineSpeedKt } from './along-line.ts';
import type { AlongLine } from './along-line.ts';
import type { StateMean } from './belief.ts';
import type { ToldPlan } from './estimate-record.ts';
import { planCost } from './plan-cost.ts';
import type { Candidate } from './plan-cost.ts';
import type { Scene } from './scene.ts';

/** Headings are told in steps of this, as indicators are marked; finer steps far out gained nothing in simulation. */
const STEP_DEG = 5;
/**
 * Inbound within this range in whole degrees: there half a step, held for a minute, is a dot. In simulation the needle
 * stays 2 % nearer, the station is missed by a tenth less, and fewer headings are needed.
 */
const FINE_WITHIN_NM = 8;
const FINE_STEP_DEG = 1;
/** No intercept is steeper than this. Common practice, no source. */
const STEEPEST_DEG = 60;
/** When a second heading may begin, seconds after the reading. Tuned by simulation. */
const SECOND_AT_S = [20, 30, 45, 60, 80, 100] as const;
/** A second heading needs at least this long before the next reading. Tuned by simulation. */
const SECOND_BEFORE_READING_S = 10;
/** Near the station: this long before it, or within this many cone radii. Tuned by simulation (miss at the station). */
const LAST_STRETCH_S = 30;
const NEAR_CONE_RADII = 1.2;
/** Near the station the heading stays unless it is off by more than this: three quarters of a step. Tuned likewise. */
const NEAR_STATION_SLACK_DEG = 3.75;

/**
 * The greatest angle to the wind-corrected heading at which the line is intercepted: twice the angle off, but
 * within limits that grow with the distance from the station.
 *
 * *Source:* FAA-H-8083-15B, Instrument Flying Handbook, page 9-14 (double the angle off, 20 to 90 degrees); the
 * limits by distance are common practice, no source.
 */
function greatestAngleDeg({ rangeNm, crossTrackNm }: AlongLine): number {
  const offDeg = asinDeg(crossTrackNm / rangeNm);
  const doubledDeg = Math.min(STEEPEST_DEG, 2 * Math.abs(offDeg));
  if (rangeNm < 6) return Math.max(20, doubledDeg);
  return Math.max(Math.abs(crossTrackNm) > 1 ? 60 : 30, doubledDeg);
}

/** A heading in whole degrees, 0 to 359. */
export function wholeHeadingDeg(headingDeg: number): number {
  return wrap360(Math.round(headingDeg));
}

function steppedHeadingDeg(headingDeg: number, stepDeg: number): number {
  return wrap360(stepDeg * Math.round(headingDeg / stepDeg));
}

/** The step in which headings are told here. */
function stepDegAt({ rangeNm, pastStationNm }: AlongLine): number {
  return pastStationNm < 0 && rangeNm < FINE_WITHIN_NM ? FINE_STEP_DEG : STEP_DEG;
}

/** Whether the needle is no longer worth following: close to the station, or over it. */
export function isNearStation(motion: AlongLine, scene: Scene): boolean {
  const coneNm = NEAR_CONE_RADII * scene.coneRadiusNm;
  if (!scene.isTo) return motion.rangeNm < coneNm;
  const lastNm = (lineSpeedKt(motion) * LAST_STRETCH_S) / 3600;
  return motion.rangeNm < Math.max(lastNm, coneNm);
}

/** The heading that keeps the line, in steps, unless the present one is close enough. */
export function holdLine(motion: AlongLine, presentHeadingDeg: number): ToldPlan {
  const off = Math.abs(turnDeg(presentHeadingDeg, motion.lineHeadingDeg));
  const headingDeg =
    off > NEAR_STATION_SLACK_DEG
      ? steppedHeadingDeg(motion.lineHeadingDeg, STEP_DEG)
      : wholeHeadingDeg(presentHeadingDeg);
  return { headingDeg, holdS: null, thenHeadingDeg: headingDeg };
}

/** What the headings are chosen for. */
export interface Situation {
  readonly mean: StateMean;
  /** Heading held now, magnetic; null: not known, then the line's own. */
  readonly presentHeadingDeg: number | null;
  /** How long until the next reading. */
  readonly horizonS: number;
  /** Over the station, and once it is passed: only the line's heading is held. */
  readonly holdsLine: boolean;
}

/**
 * The headings to fly until the next reading, chosen by one cost from: staying on the present heading, any
 * heading in steps of 5 degrees (1 inbound within 8 NM) up to 60 from the wind-corrected one, each with or without a
 * turn onto the line at some later time.
 *
 * Intercept, lead turn, dead band and holding time all come out of that cost. Close to the station and past it
 * (`holdsLine`) the wind-corrected heading is held instead.
 */
export function choosePlan(situation: Situation, scene: Scene): ToldPlan {
  const { mean, presentHeadingDeg, horizonS, holdsLine } = situation;
  const motion = alongLine(mean, scene);
  const presentDeg = wholeHeadingDeg(presentHeadingDeg ?? motion.lineHeadingDeg);
  if (holdsLine || isNearStation(motion, scene)) return holdLine(motion, presentDeg);
  const { headingDeg, second } = cheapest(motion, presentDeg, horizonS);
  return {
    headingDeg,
    holdS: second?.atS ?? null,
    thenHeadingDeg: second?.headingDeg ?? headingDeg,
  };
}

/** The way on that costs least. */
function cheapest(motion: AlongLine, presentDeg: number, horizonS: number): Candidate {
  const stepDeg = stepDegAt(motion);
  const onLineDeg = steppedHeadingDeg(motion.lineHeadingDeg, stepDeg);
  const greatestDeg = greatestAngleDeg(motion) + STEP_DEG / 2;
  const headings = [presentDeg];
  for (let off = -STEEPEST_DEG; off <= STEEPEST_DEG; off += stepDeg) {
    headings.push(wrap360(onLineDeg + off));
  }
  let best: Candidate = { headingDeg: onLineDeg, second: null };
  let leastCost = Infinity;
  for (const headingDeg of headings) {
    if (Math.abs(turnDeg(motion.lineHeadingDeg, headingDeg)) > greatestDeg) continue;
    for (const candidate of waysOn(headingDeg, onLineDeg, horizonS)) {
      const cost = planCost(motion, presentDeg, candidate, horizonS);
      if (cost < leastCost) {
        leastCost = cost;
        best = candidate;
      }
    }
  }
  return best;
}

/** A heading alone, and with each later turn onto the line. */
function waysOn(headingDeg: number, onLineDeg: number, horizonS: number): Candidate[] {
  const ways: Candidate[] = [{ headingDeg, second: null }];
  if (headingDeg === onLineDeg) return ways;
  for (const atS of SECOND_AT_S) {
    if (atS < horizonS - SECOND_BEFORE_READING_S) {
      ways.push({ headingDeg, second: { atS, headingDeg: onLineDeg } });
    }
  }
  return ways;
}
