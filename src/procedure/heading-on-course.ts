import { magneticDeg, trueDeg } from '../base/bearing.ts';
import type { MagneticDeg } from '../base/bearing.ts';
import type { Aircraft } from '../leg/leg.ts';
import type { DatedLeg } from '../leg/leg-frame.ts';
import type { WindSeen } from '../track/guidance.ts';
import { headingForCourse } from '../wind/triangle.ts';
import type { Wind } from '../wind/wind.ts';

/**
 * The heading that keeps the aircraft on the leg's course, magnetic by the variation at the station.
 *
 * Without a wind it is the course itself. Null where the wind is too strong for the airspeed.
 * The variation some way from the station differs by a few tenths of a degree, which nobody can fly.
 */
export function headingOnCourseDeg(
  leg: DatedLeg,
  aircraft: Aircraft,
  wind?: Wind,
): MagneticDeg | null {
  const heading = headingForCourse({
    courseDegTrue: leg.courseDegTrue,
    trueAirspeedKt: aircraft.trueAirspeedKt,
    wind: wind ?? { fromDegTrue: 0, speedKt: 0 },
  });
  if (!heading.ok) return null;
  return magneticDeg(heading.value.headingDegTrue - leg.variationDegEast);
}

/** A wind as it was seen in the readings (magnetic) as a wind in true degrees. */
export function windFromSeen(seen: WindSeen, leg: DatedLeg): Wind {
  return { fromDegTrue: trueDeg(seen.fromDegMag + leg.variationDegEast), speedKt: seen.speedKt };
}
