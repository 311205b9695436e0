import type { Aircraft, DmeArc, Leg } from '../../src/leg/leg.ts';
import { addReading, startEstimate } from '../../src/track/estimate.ts';
import type { Estimate } from '../../src/track/estimate.ts';
import { guide } from '../../src/track/guide.ts';
import type { Guidance } from '../../src/track/guidance.ts';
import type { Reading } from '../../src/track/reading.ts';
import { flatLeg, FLAT_STATION } from './tracked-flight.ts';

const RAD = Math.PI / 180;
const FT_IN_NM = 6076.1155;

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

/** What came of it. */
export interface ArcFlightResult {
  /** DME shown less the arc's, without reading error, each second from the end of the turn to the radial. */
  readonly offNm: readonly number[];
  /** How often a heading was told that differs by 3 degrees or more from the one held. */
  readonly changes: number;
  readonly minutesOnArc: number;
  /** True minus foretold time to the radial, seconds, at each answer on the arc. */
  readonly timeMissS: readonly number[];
  readonly answers: readonly { readonly atS: number; readonly guidance: Guidance }[];
  readonly estimates: readonly Estimate[];
  /** Relative bearing of the middle of the arc, 0 to 180, each second on the arc. */
  readonly besideDeg: readonly number[];
}

/** Repeatable chance: a linear congruential generator (Numerical Recipes, 3rd ed., section 7.1.4) and Box-Muller. */
function chanceFrom(seed: number | null): (sd: number) => number {
  if (seed === null) return () => 0;
  let state = (seed * 2_654_435_761 + 12_345) >>> 0;
  const uniform = (): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return (state + 0.5) / 4_294_967_296;
  };
  for (let warm = 0; warm < 10; warm += 1) uniform();
  return (sd) => sd * Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

function half(angleDeg: number): number {
  return angleDeg - 360 * Math.round(angleDeg / 360);
}

function whole(angleDeg: number): number {
  return ((Math.round(angleDeg) % 360) + 360) % 360;
}

/** Flies an arc on the advice, from the joining radial to the radial where it ends (or 90 minutes). */
export function flyArc(plan: ArcFlightPlan): ArcFlightResult {
  const chance = chanceFrom(plan.seed);
  const leg: Leg = {
    station: FLAT_STATION,
    direction: plan.direction,
    courseDeg: plan.courseDeg,
    altitudeFt: 4500,
    arc: plan.arc,
  };
  const aircraft: Aircraft = {
    trueAirspeedKt: plan.airspeedKt,
    degreesPerDot: 2,
    dotsFullScale: 5,
  };
  const dated = flatLeg(leg);
  const heightNm = 4500 / FT_IN_NM;
  const sense = plan.arc.turn === 'clockwise' ? 1 : -1;
  const biasDeg = chance(1.5);
  const headingErrorDeg = chance(2);
  const airspeed = plan.airspeedKt + chance(3);
  const joinDeg = plan.direction === 'to' ? plan.courseDeg + 180 : plan.courseDeg;
  const startBearing = (joinDeg - biasDeg + chance(1)) * RAD;
  let x = plan.startNm * Math.sin(startBearing);
  let y = plan.startNm * Math.cos(startBearing);
  let windX = -plan.windKt * Math.sin(plan.windFromDeg * RAD);
  let windY = -plan.windKt * Math.cos(plan.windFromDeg * RAD);
  let hold = plan.courseDeg;
  let target = hold;
  let turnAtS = 0;
  let pending: { atS: number; headingDeg: number } | null = null;
  let wander = chance(1.5);
  let obs = plan.courseDeg;
  let known = startEstimate(dated, aircraft);
  let latest: Guidance | null = null;
  let onArc = false;
  let changes = 0;
  const offNm: number[] = [];
  const besideDeg: number[] = [];
  const answers: { atS: number; guidance: Guidance }[] = [];
  const estimates: Estimate[] = [];
  const radialSeen = (): number => Math.atan2(x, y) / RAD + biasDeg;
  const toGoDeg = (): number => sense * half(plan.arc.toRadialDeg - radialSeen());
  const sweepDeg = (((sense * (plan.arc.toRadialDeg - joinDeg)) % 360) + 360) % 360;
  let sweptDeg = 0;
  let lastRadial = radialSeen();
  let atS = 0;
  for (; atS < 5400; atS += 1) {
    if (atS % plan.everyS === 0) {
      const seen = radialSeen() + chance(0.5);
      if (latest?.nextQuestion === 'centre-needle-from') obs = whole(seen);
      const isFrom = Math.cos((seen - obs) * RAD) > 0;
      const needle = isFrom ? -half(seen - obs) : half(seen - obs - 180);
      const isAbeam = Math.abs(Math.abs(half(seen - obs)) - 90) < 10;
      const dots = Math.max(-5, Math.min(5, Math.round(needle) / 2));
      const slant = Math.hypot(x, y, heightNm) + chance(0.15);
      const reading: Reading = {
        atMs: atS * 1000,
        headingDeg: whole(hold + wander),
        courseSetDeg: ((obs % 360) + 360) % 360,
        flag: isAbeam ? 'off' : isFrom ? 'from' : 'to',
        ...(isAbeam
          ? {}
          : { needleDots: plan.seed === null ? Math.max(-5, Math.min(5, needle / 2)) : dots }),
        dmeNm: plan.seed === null ? slant : Math.round(slant * 10) / 10,
      };
      known = addReading(known, reading);
      latest = guide(known, dated);
      answers.push({ atS, guidance: latest });
      estimates.push(known);
      const way = latest.whichWay;
      const tell = (headingDeg: number): void => {
        if (Math.abs(half(headingDeg - target)) >= 3 && onArc) changes += 1;
        target = headingDeg;
        turnAtS = atS + Math.max(1, 5 + chance(2));
      };
      if (way.turnDeg >= 3 || Math.abs(half(way.headingDeg - target)) >= 3) tell(way.headingDeg);
      pending =
        way.thenHeadingDeg === way.headingDeg
          ? null
          : { atS: atS + way.holdS, headingDeg: way.thenHeadingDeg };
    }
    if (pending && atS >= pending.atS) {
      if (Math.abs(half(pending.headingDeg - target)) >= 3 && onArc) changes += 1;
      target = pending.headingDeg;
      turnAtS = atS + Math.max(1, 5 + chance(2));
      pending = null;
    }
    if (atS >= turnAtS) {
      const turn = half(target - hold);
      hold += Math.sign(turn) * Math.min(3, Math.abs(turn));
    }
    const keep = Math.exp(-1 / 20);
    wander = wander * keep + Math.sqrt(1 - keep * keep) * chance(1.5);
    windX += chance(0.1);
    windY += chance(0.1);
    const heading = (hold + wander + headingErrorDeg) * RAD;
    x += (airspeed * Math.sin(heading) + windX) / 3600;
    y += (airspeed * Math.cos(heading) + windY) / 3600;
    const now = radialSeen();
    sweptDeg += sense * half(now - lastRadial);
    lastRadial = now;
    const turned = Math.abs(half(hold - plan.courseDeg));
    if (turned > 60 && Math.abs(half(target - hold)) < 5) onArc = true;
    if (sweptDeg > 8) onArc = true;
    if (onArc) {
      offNm.push(Math.hypot(x, y, heightNm) - plan.arc.dmeNm);
      const toMiddle = Math.atan2(-x, -y) / RAD;
      besideDeg.push(Math.abs(half(toMiddle - hold)));
    }
    if (onArc && sweptDeg > sweepDeg / 2 && toGoDeg() <= 0) break;
  }
  const timeMissS = answers.flatMap(({ atS: told, guidance }) => {
    const { toGoS } = guidance.howFar;
    return guidance.arc?.isJoining === false && toGoS !== null ? [atS - told - toGoS] : [];
  });
  return {
    offNm,
    changes,
    minutesOnArc: offNm.length / 60,
    timeMissS,
    answers,
    estimates,
    besideDeg,
  };
}

/** Root of the mean square. */
export function rms(values: readonly number[]): number {
  return Math.sqrt(values.reduce((sum, each) => sum + each * each, 0) / Math.max(1, values.length));
}
