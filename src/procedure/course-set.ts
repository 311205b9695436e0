import { turnDeg } from '../base/angle.ts';
import type { Leg } from '../leg/leg.ts';

/**
 * Whether a course set on the OBS is another one than the leg's: by more than a degree, since nobody sets it
 * finer. Such a setting is for one reading (a test of the needle, or a radial looked for) and is set back.
 */
export function isOtherCourse(courseSetDeg: number, leg: Leg): boolean {
  return Math.abs(turnDeg(courseSetDeg, leg.courseDeg)) > 1;
}
