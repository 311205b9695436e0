import type { DmeArc, Leg } from '../../src/leg/leg.ts';
import type { Reading } from '../../src/track/reading.ts';
import { FLAT_STATION } from './tracked-flight.ts';

const RAD = Math.PI / 180;
const HEIGHT_NM = 4500 / 6076.1155;

/** An aircraft on its way to an arc, over a flat earth on which all norths are one. */
export interface ArcFlightPlan {
  readonly arc: DmeArc;
  readonly direction: 'to' | 'from';
  readonly courseDeg: number;
  readonly startNm: number;
  readonly airspeedKt: number;
  readonly windFromDeg: number;
  readonly windKt: number;
  readonly everyS: number;
  /** Null: nothing is in error and the advice is flown to the degree. */
  readonly seed: number | null;
}

/** The leg of such a flight, at 4,500 ft above the station. */
export function arcLegOf({ arc, direction, courseDeg }: ArcFlightPlan): Leg {
  return { station: FLAT_STATION, direction, courseDeg, altitudeFt: 4500, arc };
}

/** An angle in -180 to 180. */
export function half(angleDeg: number): number {
  return angleDeg - 360 * Math.round(angleDeg / 360);
}

function whole(angleDeg: number): number {
  return ((Math.round(angleDeg) % 360) + 360) % 360;
}

/** Normal chance of a standard deviation; null as the seed: always 0. */
type Chance = (sd: number) => number;

/** Repeatable: a linear congruential generator (Numerical Recipes, 3rd ed., section 7.1.4) and Box-Muller. */
function chanceFrom(seed: number | null): Chance {
  if (seed === null) return () => 0;
  let state = (seed * 2_654_435_761 + 12_345) >>> 0;
  const uniform = (): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return (state + 0.5) / 4_294_967_296;
  };
  for (let warm = 0; warm < 10; warm += 1) uniform();
  return (sd) => sd * Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** The true state of such a flight: plane about the station, north up, NM, knots, degrees. */
export interface ArcTruth {
  readonly plan: ArcFlightPlan;
  readonly sense: 1 | -1;
  readonly chance: Chance;
  readonly biasDeg: number;
  readonly headingErrorDeg: number;
  readonly airspeedKt: number;
  atS: number;
  x: number;
  y: number;
  windX: number;
  windY: number;
  /** Heading held, the one it is turned to, and when that turn begins. */
  holdDeg: number;
  targetDeg: number;
  turnAtS: number;
  wanderDeg: number;
  obsDeg: number;
  /** Flown about the station in the turn of the arc, degrees. */
  sweptDeg: number;
}

/** A flight at its beginning: on the radial, on its course. */
export function beginArc(plan: ArcFlightPlan): ArcTruth {
  const chance = chanceFrom(plan.seed);
  const biasDeg = chance(1.5);
  const joinDeg = plan.courseDeg + (plan.direction === 'to' ? 180 : 0);
  const bearing = (joinDeg - biasDeg + chance(1)) * RAD;
  return {
    plan,
    sense: plan.arc.turn === 'clockwise' ? 1 : -1,
    chance,
    biasDeg,
    headingErrorDeg: chance(2),
    airspeedKt: plan.airspeedKt + chance(3),
    atS: 0,
    x: plan.startNm * Math.sin(bearing),
    y: plan.startNm * Math.cos(bearing),
    windX: -plan.windKt * Math.sin(plan.windFromDeg * RAD),
    windY: -plan.windKt * Math.cos(plan.windFromDeg * RAD),
    holdDeg: plan.courseDeg,
    targetDeg: plan.courseDeg,
    turnAtS: 0,
    wanderDeg: chance(1.5),
    obsDeg: plan.courseDeg,
    sweptDeg: 0,
  };
}

/** The radial on which the station seems to put the aircraft, degrees. */
export function radialSeen(truth: ArcTruth): number {
  return Math.atan2(truth.x, truth.y) / RAD + truth.biasDeg;
}

/** DME shown without error, less that of the arc, NM. */
export function offArcNm({ x, y, plan }: ArcTruth): number {
  return Math.hypot(x, y, HEIGHT_NM) - plan.arc.dmeNm;
}

/** Angle between the nose and the station, 0 to 180. */
export function besideDeg({ x, y, holdDeg }: ArcTruth): number {
  return Math.abs(half(Math.atan2(-x, -y) / RAD - holdDeg));
}

/** The pilot is told a heading; the turn begins after about 5 s. */
export function tell(truth: ArcTruth, headingDeg: number): void {
  truth.targetDeg = headingDeg;
  truth.turnAtS = truth.atS + Math.max(1, 5 + truth.chance(2));
}

/** One second of flight. */
export function flySecond(truth: ArcTruth): void {
  const { chance, sense } = truth;
  if (truth.atS >= truth.turnAtS) {
    const turn = half(truth.targetDeg - truth.holdDeg);
    truth.holdDeg += Math.sign(turn) * Math.min(3, Math.abs(turn));
  }
  const keep = Math.exp(-1 / 20);
  truth.wanderDeg = truth.wanderDeg * keep + Math.sqrt(1 - keep * keep) * chance(1.5);
  truth.windX += chance(0.1);
  truth.windY += chance(0.1);
  const before = radialSeen(truth);
  const heading = (truth.holdDeg + truth.wanderDeg + truth.headingErrorDeg) * RAD;
  truth.x += (truth.airspeedKt * Math.sin(heading) + truth.windX) / 3600;
  truth.y += (truth.airspeedKt * Math.cos(heading) + truth.windY) / 3600;
  truth.sweptDeg += sense * half(radialSeen(truth) - before);
  truth.atS += 1;
}

/** What the pilot reads; `isRadialAsked`: turns the OBS first until the needle is centred with FROM. */
export function readPanel(truth: ArcTruth, isRadialAsked: boolean): Reading {
  const { chance, plan } = truth;
  const isExact = plan.seed === null;
  const seen = radialSeen(truth) + chance(0.5);
  if (isRadialAsked) truth.obsDeg = whole(seen);
  const off = half(seen - truth.obsDeg);
  const slant = Math.hypot(truth.x, truth.y, HEIGHT_NM) + chance(0.15);
  const read = {
    atMs: truth.atS * 1000,
    headingDeg: whole(truth.holdDeg + truth.wanderDeg),
    courseSetDeg: whole(truth.obsDeg),
    dmeNm: isExact ? slant : Math.round(slant * 10) / 10,
  };
  if (Math.abs(Math.abs(off) - 90) < 10) return { ...read, flag: 'off' };
  const isFrom = Math.abs(off) < 90;
  const needleDeg = isFrom ? -off : half(off - 180);
  const dots = isExact ? needleDeg / 2 : Math.round(needleDeg) / 2;
  return {
    ...read,
    needleDots: Math.max(-5, Math.min(5, dots)),
    flag: isFrom ? 'from' : 'to',
  };
}
