import { directionDeg, turnDeg, wrap360 } from '../base/angle.ts';
import type { ArcAir } from './arc-air.ts';
import { arcAirOf, groundNmPerS, headingAlongDeg, speedAlongKt, timeAlongArcS } from './arc-air.ts';
import { arcCost, effectiveS } from './arc-cost.ts';
import type { ArcStart } from './arc-cost.ts';
import { joinAhead } from './arc-join.ts';
import type { ArcJoin } from './arc-join.ts';
import { leadRadialsDeg } from './arc-lead.ts';
import { arcAngleDeg, arcPlaceOf } from './arc-place.ts';
import type { ArcPlace } from './arc-place.ts';
import type { ArcScene } from './arc-scene.ts';
import type { StateMean } from './belief.ts';
import { choosePlan, wholeHeadingDeg } from './choose-plan.ts';
import type { Situation } from './choose-plan.ts';
import type { ToldPlan } from './estimate-record.ts';
import { placeOf } from './place.ts';
import type { Candidate } from './plan-cost.ts';
import type { Scene } from './scene.ts';

/** Headings are told in steps of this. */
const STEP_DEG = 5;
/** When a second heading may begin, seconds after the reading. */
const SECOND_AT_S = [20, 30, 45, 60, 80, 100] as const;
const SECOND_BEFORE_READING_S = 10;
/** The last chord lasts at least this long before the arc is left, or it is not begun, seconds. */
const LAST_CHORD_S = 15;
/** A turn onto the arc that comes within this after the next reading is told already, seconds. */
const TURN_TOLD_AHEAD_S = 40;
/** The most that the heading is turned towards the arc: degrees for each mile off it, and its limits. */
const CORRECTION_DEG_PER_NM = 40;
const LEAST_CORRECTION_DEG = 10;
const GREATEST_CORRECTION_DEG = 45;
/** A chord of the arc that is flown on one heading, degrees about its middle. */
const CHORD_DEG = 10;

/**
 * The headings to fly until the next reading on a leg that is an arc.
 *
 * Before the turn: along the radial as on any leg, then the heading out of the turn. On the arc: a chord, the
 * next chord after it, chosen by one cost. They turn towards the arc by at most 20 degrees for each half mile off
 * it. *Source:* FAA-H-8083-15B, Instrument Flying Handbook, p. 9-18 (10 to 20 degrees for half a mile); US Navy
 * P-871, p. 60 has 5 inside and 10 outside: less than what comes out here.
 *
 * `mean`: what is believed; that of the `situation` is what a radial is flown from.
 */
export function planOnArc(
  mean: StateMean,
  situation: Situation,
  scene: Scene,
  arc: ArcScene,
): ToldPlan {
  const { presentHeadingDeg, horizonS } = situation;
  const join = joinAhead(mean, scene, arc, presentHeadingDeg);
  if (join) return joinPlan(mean, situation, scene, arc, join);
  const { eastNm, northNm } = placeOf(mean);
  const air = arcAirOf(mean, scene);
  const place = arcPlaceOf(mean, arc);
  const { alongDeg } = place;
  const start: ArcStart = {
    eastNm: eastNm - arc.eastNm,
    northNm: northNm - arc.northNm,
    headingDeg: wholeHeadingDeg(presentHeadingDeg ?? headingAlongDeg(air, alongDeg)),
    radiusNm: arc.radiusNm,
    air,
  };
  const { headingDeg, second } = cheapest(start, arc, horizonS, untilLeftS(air, place, arc));
  return {
    headingDeg,
    holdS: second?.atS ?? null,
    thenHeadingDeg: second?.headingDeg ?? headingDeg,
  };
}

/** Time until the turn off the arc begins, seconds; 0 once it has. */
function untilLeftS(air: ArcAir, place: ArcPlace, arc: ArcScene): number {
  const groundSpeedKt = speedAlongKt(air, place.alongDeg);
  const leadDeg = leadRadialsDeg({ groundSpeedKt, dmeNm: arc.dmeNm, onto: null });
  return timeAlongArcS(air, place, arc, place.toGoDeg - leadDeg);
}

/** Along the radial, and the turn onto the arc where it comes before or soon after the next reading. */
function joinPlan(
  mean: StateMean,
  situation: Situation,
  scene: Scene,
  arc: ArcScene,
  join: ArcJoin,
): ToldPlan {
  const { horizonS } = situation;
  const outDeg = wholeHeadingDeg(join.headingDeg);
  if (join.toTellS <= 0) return turnPlan(mean, scene, arc, outDeg, horizonS);
  const onRadial = choosePlan({ ...situation, holdsLine: false }, scene);
  if (join.toTellS > horizonS + TURN_TOLD_AHEAD_S) return onRadial;
  return {
    headingDeg: onRadial.headingDeg,
    holdS: Math.max(1, Math.round(join.toTellS)),
    thenHeadingDeg: outDeg,
  };
}

/** The turn now, and the next chord once half of one has been flown. */
function turnPlan(
  mean: StateMean,
  scene: Scene,
  arc: ArcScene,
  outDeg: number,
  horizonS: number,
): ToldPlan {
  const air = arcAirOf(mean, scene);
  const { east, north } = groundNmPerS(air, outDeg);
  const halfChordNm = arc.radiusNm * Math.tan((CHORD_DEG / 2) * (Math.PI / 180));
  const holdS = Math.round(effectiveS(90) + halfChordNm / Math.hypot(east, north));
  const isNextNeeded = holdS < horizonS + TURN_TOLD_AHEAD_S;
  if (!isNextNeeded) return { headingDeg: outDeg, holdS: null, thenHeadingDeg: outDeg };
  const alongDeg = directionDeg(east, north) + CHORD_DEG * arc.sense;
  const thenHeadingDeg = wholeHeadingDeg(headingAlongDeg(air, alongDeg));
  return { headingDeg: outDeg, holdS, thenHeadingDeg };
}

function stepped(headingDeg: number): number {
  return wrap360(STEP_DEG * Math.round(headingDeg / STEP_DEG));
}

/** Heading of the chord about the arc that begins at a place and lasts so long, degrees magnetic. */
function chordDeg(air: ArcAir, arc: ArcScene, fromBearingDeg: number, lastsS: number): number {
  const alongDeg = fromBearingDeg + 90 * arc.sense;
  const { east, north } = groundNmPerS(air, headingAlongDeg(air, alongDeg));
  const sweptDeg = arcAngleDeg(Math.hypot(east, north) * lastsS, arc.radiusNm);
  return headingAlongDeg(air, alongDeg + (arc.sense * Math.min(90, sweptDeg)) / 2);
}

/** The way along the arc that costs least; `leftS`: until it is left, after which no heading is told for it. */
function cheapest(start: ArcStart, arc: ArcScene, horizonS: number, leftS: number): Candidate {
  const bearingDeg = directionDeg(start.eastNm, start.northNm);
  const outsideNm = Math.hypot(start.eastNm, start.northNm) - arc.radiusNm;
  const middleDeg = chordDeg(start.air, arc, bearingDeg, horizonS);
  const limitDeg = Math.min(
    GREATEST_CORRECTION_DEG,
    Math.max(LEAST_CORRECTION_DEG, CORRECTION_DEG_PER_NM * Math.abs(outsideNm)),
  );
  const headings = [start.headingDeg];
  for (let off = -GREATEST_CORRECTION_DEG; off <= GREATEST_CORRECTION_DEG; off += STEP_DEG) {
    headings.push(wrap360(stepped(middleDeg) + off));
  }
  let best: Candidate = { headingDeg: stepped(middleDeg), second: null };
  let leastCost = Infinity;
  for (const headingDeg of headings) {
    if (Math.abs(turnDeg(middleDeg, headingDeg)) > limitDeg) continue;
    for (const way of waysOn(start, arc, headingDeg, horizonS)) {
      if (way.second && way.second.atS > leftS - LAST_CHORD_S) continue;
      const cost = arcCost(start, way, horizonS);
      if (cost < leastCost) {
        leastCost = cost;
        best = way;
      }
    }
  }
  return best;
}

/** A heading alone, and with each later chord. */
function waysOn(
  start: ArcStart,
  arc: ArcScene,
  headingDeg: number,
  horizonS: number,
): readonly Candidate[] {
  const ways: Candidate[] = [{ headingDeg, second: null }];
  const { east, north } = groundNmPerS(start.air, headingDeg);
  for (const atS of SECOND_AT_S) {
    if (atS >= horizonS - SECOND_BEFORE_READING_S) break;
    const bearingDeg = directionDeg(start.eastNm + east * atS, start.northNm + north * atS);
    const nextDeg = stepped(chordDeg(start.air, arc, bearingDeg, horizonS - atS));
    for (const off of [-STEP_DEG, 0, STEP_DEG]) {
      const secondDeg = wrap360(nextDeg + off);
      if (secondDeg !== headingDeg)
        ways.push({ headingDeg, second: { atS, headingDeg: secondDeg } });
    }
  }
  return ways;
}
