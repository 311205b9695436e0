import { MS_PER_S } from '../base/units.ts';
import { NOT_MOVED } from './air-path.ts';
import type { AirPath } from './air-path.ts';
import type { Belief } from './belief.ts';
import type { Estimate } from './estimate-record.ts';
import { planFlown } from './inbound-plan.ts';
import { pathSince } from './over-station.ts';
import { placeOf } from './place.ts';
import { predict } from './predict.ts';
import type { Reading } from './reading.ts';
import { planeFromMagneticDeg } from './scene.ts';
import { flown, turnedBy } from './told-path.ts';

/** What happened between the last reading that told something about the place and a new one. */
export interface Interval {
  readonly durationS: number;
  /** Heading held at its end, magnetic; null while none was ever read or told. */
  readonly headingDeg: number | null;
  /** Any belief at its beginning, carried on to its end by what was flown. */
  readonly carryOn: (belief: Belief) => Belief;
  /** The path through the air in it, in magnetic directions. */
  readonly path: AirPath;
  /** The same, turned into the plane where a belief has the aircraft. */
  readonly pathFrom: (belief: Belief) => AirPath;
}

/** The interval from what an estimate (`asBeforeStation`) last knew to a new reading. */
export function intervalTo(before: Estimate, reading: Reading): Interval {
  const readDeg = reading.headingDeg ?? null;
  if (before.headingDeg === null || before.atMs === null) {
    return {
      durationS: 0,
      headingDeg: readDeg,
      carryOn: (belief) => belief,
      path: NOT_MOVED,
      pathFrom: () => NOT_MOVED,
    };
  }
  const sinceLastS = Math.max(0, (reading.atMs - before.atMs) / MS_PER_S);
  const plan = planFlown(before, readDeg, sinceLastS);
  const last = flown(before.headingDeg, plan, readDeg, sinceLastS);
  const path = pathSince(before.overStation, last.path);
  const { scene } = before;
  const pathFrom = (belief: Belief): AirPath =>
    turnedBy(path, planeFromMagneticDeg(scene, placeOf(belief.mean)));
  return {
    durationS: path.durationS,
    headingDeg: last.headingDeg,
    path,
    carryOn: (belief) => predict(belief, pathFrom(belief), scene.trueAirspeedKt),
    pathFrom,
  };
}
