import { asinDeg, sinDeg } from '../base/angle.ts';
import { stationDeg, type StationDeg } from '../base/bearing.ts';
import type { FlagShown } from './flag.ts';

/** The scale of a course deviation indicator. */
export interface NeedleScale {
  /** Off-course degrees for one dot. */
  readonly degreesPerDot: number;
  /** Dots from the centre to full deflection. */
  readonly dotsFullScale: number;
}

/**
 * Where the needle stands for an aircraft on a radial with a course set, in dots.
 *
 * Negative is left: the course is to the left when facing the way of the set course, whatever the flag and
 * whatever the heading. Clipped to full deflection. Not looked at here: the cone and the flag.
 * *Source:* FAA-H-8083-15B, Instrument Flying Handbook, ch. 9, "VOR Indicator" and "Function of the VOR".
 */
export function needleDotsOn(
  radial: StationDeg,
  courseSet: StationDeg,
  scale: NeedleScale,
): number {
  const dots = needleDegOn(radial, courseSet) / scale.degreesPerDot;
  return Math.min(scale.dotsFullScale, Math.max(-scale.dotsFullScale, dots));
}

/**
 * The same in degrees and not clipped: the angle at the station between the aircraft's radial and the
 * nearer one of the two radials of the set course, -90 to 90; negative: the needle stands left.
 */
export function needleDegOn(radial: StationDeg, courseSet: StationDeg): number {
  // The sine folds FROM and TO into one formula: the indicator, too, compares phases, not sides.
  return 0 - asinDeg(sinDeg(radial - courseSet));
}

/** What was read off the indicator. */
export interface NeedleRead {
  readonly courseSet: StationDeg;
  /** Negative: left of centre. */
  readonly needleDots: number;
  readonly flag: FlagShown;
}

/**
 * The radial that needle and flag put the aircraft on: the inverse of `needleDotsOn` and `flagOn`.
 *
 * Null where they do not name one: with the flag off, and at full deflection, which is only a least value.
 * *Source:* as for `needleDotsOn`.
 */
export function radialShown(read: NeedleRead, scale: NeedleScale): StationDeg | null {
  const { courseSet, needleDots, flag } = read;
  if (flag === 'off' || Math.abs(needleDots) >= scale.dotsFullScale) return null;
  const offDeg = needleDots * scale.degreesPerDot;
  return stationDeg(flag === 'from' ? courseSet - offDeg : courseSet + 180 + offDeg);
}
