import geomagnetism from 'geomagnetism';
import type { Leg } from '../../src/leg/leg.ts';
import type { Reading } from '../../src/track/reading.ts';
import type { Chance } from './track-chance.ts';

/** What differs from the plain truth model: for the mismatch and the fault tables. */
export interface Air {
  readonly scallopingDeg: number;
  readonly vorBiasDeg: number;
  readonly headingHoldDeg: number;
  readonly headingErrorDeg: number;
  readonly airspeedErrorKt: number;
  readonly windDriftKtPerRootH: number;
  readonly leastWindKt: number;
  readonly greatestWindKt: number;
}

/** The truth model of the plain bench. */
export const PLAIN_AIR: Air = {
  scallopingDeg: 0.5,
  vorBiasDeg: 1.5,
  headingHoldDeg: 1.5,
  headingErrorDeg: 2,
  airspeedErrorKt: 3,
  windDriftKtPerRootH: 6,
  leastWindKt: 10,
  greatestWindKt: 40,
};

/** The true state of one simulated flight. Plane about the station, north up, NM, knots, degrees. */
export interface Truth {
  readonly air: Air;
  readonly leg: Leg;
  readonly isTo: boolean;
  readonly courseDeg: number;
  readonly heightNm: number;
  readonly coneNm: number;
  readonly latitudeDeg: number;
  readonly variationDeg: number;
  readonly airspeedKt: number;
  readonly airspeedErrorKt: number;
  /** Heading flown less heading shown; it grows by so much a second until then (a direction indicator that fails). */
  headingErrorDeg: number;
  indicatorDriftDegPerS: number;
  indicatorDriftUntilS: number;
  timeS: number;
  x: number;
  y: number;
  windX: number;
  windY: number;
  biasDeg: number;
  wanderDeg: number;
  gustKt: number;
  /** Heading that the pilot means to hold, as shown (magnetic), while turning: where the turn is. */
  holdDeg: number;
  targetDeg: number;
  turnAtS: number;
}

const RAD = Math.PI / 180;

/** An angle in -180 to 180. */
export function half(angleDeg: number): number {
  return angleDeg - 360 * Math.round(angleDeg / 360);
}

/** How a flight begins. */
export interface Start {
  readonly direction: 'to' | 'from';
  readonly kind: 'near' | 'icpt';
  readonly hasDme: boolean;
}

/** A flight at its beginning. */
export function begin(start: Start, air: Air, chance: Chance): Truth {
  const courseDeg = chance.uniform(0, 360);
  const declination = chance.uniform(-12, 12);
  const altitudeFt = chance.uniform(2000, 6000);
  const latitudeDeg = 46.5;
  const longitudeDeg = -21.25;
  const variationDeg = geomagnetism
    .model(new Date('2026-11-25'))
    .point([latitudeDeg, longitudeDeg, altitudeFt * 0.0003048]).decl;
  const isTo = start.direction === 'to';
  const range = isTo ? chance.uniform(20, 30) : chance.uniform(8, 15);
  const side = chance.uniform(-1, 1) < 0 ? -1 : 1;
  const icptDeg = isTo ? chance.uniform(8, 20) : chance.uniform(10, 25);
  const offDeg = side * (start.kind === 'near' ? chance.uniform(0, 3) : icptDeg);
  const biasDeg = chance.normal(air.vorBiasDeg);
  const bearing = (courseDeg + declination + (isTo ? 180 : 0) + offDeg - biasDeg) * RAD;
  const windFrom = chance.uniform(0, 360) * RAD;
  const windKt = chance.uniform(air.leastWindKt, air.greatestWindKt);
  const heightNm = altitudeFt / 6076.1155;
  const lineMag = Math.round(courseDeg + declination - variationDeg);
  return {
    air,
    leg: {
      station: {
        ident: 'QEV',
        latitudeDeg,
        longitudeDeg,
        elevationFt: 0,
        declinationDegEast: declination,
        hasDme: start.hasDme,
      },
      direction: start.direction,
      courseDeg,
      altitudeFt,
    },
    isTo,
    courseDeg: courseDeg + declination,
    heightNm,
    coneNm: heightNm * Math.tan(50 * RAD),
    latitudeDeg,
    variationDeg,
    airspeedKt: chance.uniform(85, 120),
    airspeedErrorKt: chance.normal(air.airspeedErrorKt),
    headingErrorDeg: chance.normal(air.headingErrorDeg),
    indicatorDriftDegPerS: 0,
    indicatorDriftUntilS: 0,
    timeS: 0,
    x: range * Math.sin(bearing),
    y: range * Math.cos(bearing),
    windX: -windKt * Math.sin(windFrom),
    windY: -windKt * Math.cos(windFrom),
    biasDeg,
    wanderDeg: chance.normal(air.headingHoldDeg),
    gustKt: chance.normal(1),
    holdDeg: lineMag,
    targetDeg: lineMag,
    turnAtS: 0,
  };
}

/** Magnetic into the plane, at the aircraft: variation, less how far the meridian has turned. */
export function toPlaneDeg(truth: Truth): number {
  return truth.variationDeg - (truth.x / 60) * Math.tan(truth.latitudeDeg * RAD);
}

/** The pilot is told a heading; the turn begins after a while. */
export function tell(truth: Truth, headingDeg: number, chance: Chance): void {
  truth.targetDeg = headingDeg;
  truth.turnAtS = truth.timeS + Math.min(12, Math.max(1, 5 + chance.normal(2)));
}

/** One second of flight. */
export function fly(truth: Truth, chance: Chance): void {
  const { air } = truth;
  if (truth.timeS >= truth.turnAtS) {
    const turn = half(truth.targetDeg - truth.holdDeg);
    truth.holdDeg += Math.sign(turn) * Math.min(3, Math.abs(turn));
  }
  const keep = Math.exp(-1 / 20);
  const fresh = Math.sqrt(1 - keep * keep);
  truth.wanderDeg = truth.wanderDeg * keep + fresh * chance.normal(air.headingHoldDeg);
  truth.gustKt = truth.gustKt * keep + fresh * chance.normal(1);
  const step = air.windDriftKtPerRootH / 60;
  truth.windX += chance.normal(step);
  truth.windY += chance.normal(step);
  const biasKeep = Math.exp(-1 / 1800);
  truth.biasDeg =
    truth.biasDeg * biasKeep + Math.sqrt(1 - biasKeep * biasKeep) * chance.normal(air.vorBiasDeg);
  if (truth.timeS < truth.indicatorDriftUntilS) {
    truth.headingErrorDeg += truth.indicatorDriftDegPerS;
  }
  const heading =
    (truth.holdDeg + truth.wanderDeg + truth.headingErrorDeg + toPlaneDeg(truth)) * RAD;
  const speed = truth.airspeedKt + truth.airspeedErrorKt + truth.gustKt;
  truth.x += (speed * Math.sin(heading) + truth.windX) / 3600;
  truth.y += (speed * Math.cos(heading) + truth.windY) / 3600;
  truth.timeS += 1;
}

/** The radial on which the station seems to put the aircraft, in the plane, degrees. */
function seenRadial(truth: Truth): number {
  return Math.atan2(truth.x, truth.y) / RAD + truth.biasDeg;
}

/** Where the needle of the leg stands without noise, degrees, right positive, as the leg is flown. */
export function offDeg(truth: Truth): number {
  const off = half(seenRadial(truth) - truth.courseDeg - (truth.isTo ? 180 : 0));
  return truth.isTo ? off : -off;
}

/** Distance along the course from the station, NM: negative before it. */
export function alongNm(truth: Truth): number {
  const course = (truth.courseDeg - truth.biasDeg) * RAD;
  return truth.x * Math.sin(course) + truth.y * Math.cos(course);
}

/** How the panel is read. */
export interface PanelHabits {
  readonly needleStepDots: number;
  readonly obsOffsetDeg: number;
  readonly readsHeading: boolean;
}

/** What a pilot reads off the panel now. */
export function readPanel(truth: Truth, habits: PanelHabits, chance: Chance): Reading {
  const { leg } = truth;
  const range = Math.hypot(truth.x, truth.y);
  const obs = (((leg.courseDeg + habits.obsOffsetDeg) % 360) + 360) % 360;
  const slant = Math.hypot(range, truth.heightNm) + chance.normal(0.15);
  const heading = Math.round(truth.holdDeg + truth.wanderDeg);
  const base = {
    atMs: truth.timeS * 1000,
    courseSetDeg: obs,
    ...(habits.readsHeading ? { headingDeg: ((heading % 360) + 360) % 360 } : {}),
    ...(leg.station.hasDme ? { dmeNm: Math.max(0, Math.round(slant * 10) / 10) } : {}),
  };
  if (range < truth.coneNm) return { ...base, flag: 'off' };
  const radial =
    seenRadial(truth) - leg.station.declinationDegEast + chance.normal(truth.air.scallopingDeg);
  const from = Math.cos((radial - obs) * RAD) > 0;
  const needle = from ? -half(radial - obs) : half(radial - obs - 180);
  const dots = Math.round(needle / 2 / habits.needleStepDots) * habits.needleStepDots;
  return {
    ...base,
    needleDots: Math.max(-5, Math.min(5, dots)),
    flag: from ? 'from' : 'to',
  };
}

/** The reading with the needle centred with FROM: the OBS then shows the radial. */
export function readCentred(truth: Truth, chance: Chance): Reading {
  const plain = readPanel(
    truth,
    { needleStepDots: 0.5, obsOffsetDeg: 0, readsHeading: true },
    chance,
  );
  const radial =
    seenRadial(truth) -
    truth.leg.station.declinationDegEast +
    chance.normal(truth.air.scallopingDeg);
  const obs = ((Math.round(radial) % 360) + 360) % 360;
  if (plain.flag === 'off') return plain;
  return { ...plain, courseSetDeg: obs, needleDots: 0, flag: 'from' };
}
