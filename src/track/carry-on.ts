import { MS_PER_S } from '../base/units.ts';
import type { Belief } from './belief.ts';
import type { Estimate } from './estimate-record.ts';
import { placeOf } from './place.ts';
import { predict } from './predict.ts';
import type { Reading } from './reading.ts';
import { planeFromMagneticDeg } from './scene.ts';
import { flown, turnedBy } from './told-path.ts';

/** What happened between the last reading and a new one. */
export interface Interval {
  readonly durationS: number;
  /** Heading held at its end, magnetic; null while none was ever read or told. */
  readonly headingDeg: number | null;
  /** Any belief at its beginning, carried on to its end by what was flown. */
  readonly carryOn: (belief: Belief) => Belief;
}

/** The interval from what an estimate last knew to a new reading. */
export function intervalTo(before: Estimate, reading: Reading): Interval {
  const readDeg = reading.headingDeg ?? null;
  if (before.headingDeg === null || before.atMs === null) {
    return { durationS: 0, headingDeg: readDeg, carryOn: (belief) => belief };
  }
  const durationS = Math.max(0, (reading.atMs - before.atMs) / MS_PER_S);
  const { path, headingDeg } = flown(before.headingDeg, before.plan, readDeg, durationS);
  const { scene } = before;
  return {
    durationS,
    headingDeg,
    carryOn: (belief) => {
      const turned = turnedBy(path, planeFromMagneticDeg(scene, placeOf(belief.mean)));
      return predict(belief, turned, scene.trueAirspeedKt);
    },
  };
}
