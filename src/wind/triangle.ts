import { asinDeg, cosDeg, directionDeg, sinDeg, turnDeg } from '../base/angle.ts';
import { trueDeg, type TrueDeg } from '../base/bearing.ts';
import { accept, refuse, type Result } from '../base/result.ts';
import type { Wind } from './wind.ts';

/** A course to be made good through a wind. */
export interface CourseInWind {
  readonly courseDegTrue: TrueDeg;
  readonly trueAirspeedKt: number;
  readonly wind: Wind;
}

/** What makes the course good. */
export interface HeadingNeeded {
  readonly headingDegTrue: TrueDeg;
  /** Heading minus course, degrees: positive is to the right. */
  readonly windCorrectionDeg: number;
  readonly groundSpeedKt: number;
}

/**
 * The heading that makes a course good through a wind, and the groundspeed along it.
 *
 * Refuses (field `wind.speedKt`) a wind that cannot be flown against: across the course stronger than the
 * airspeed, or so strong from ahead that nothing is left over the ground.
 * *Source:* Ed Williams, Aviation Formulary 1.46, "Wind triangles": WCA = asin(W sin(wd - TC) / TAS),
 * GS = TAS cos(WCA) - W cos(wd - TC).
 */
export function headingForCourse(asked: CourseInWind): Result<HeadingNeeded> {
  const { courseDegTrue, trueAirspeedKt, wind } = asked;
  const crossKt = wind.speedKt * sinDeg(wind.fromDegTrue - courseDegTrue);
  const headKt = wind.speedKt * cosDeg(wind.fromDegTrue - courseDegTrue);
  const windCorrectionDeg = asinDeg(crossKt / trueAirspeedKt);
  const groundSpeedKt = trueAirspeedKt * cosDeg(windCorrectionDeg) - headKt;
  if (!(Math.abs(crossKt) < trueAirspeedKt) || !(groundSpeedKt > 0)) {
    return refuse([tooStrong(asked)]);
  }
  return accept({
    headingDegTrue: trueDeg(courseDegTrue + windCorrectionDeg),
    windCorrectionDeg,
    groundSpeedKt,
  });
}

function tooStrong({ trueAirspeedKt, wind }: CourseInWind) {
  return {
    field: 'wind.speedKt',
    expected: `a wind in which this course can be flown at ${trueAirspeedKt} kt`,
    got: `${wind.speedKt} kt from ${wind.fromDegTrue} true`,
  };
}

/** A heading held in a wind. */
export interface HeadingInWind {
  readonly headingDegTrue: TrueDeg;
  readonly trueAirspeedKt: number;
  readonly wind: Wind;
}

/** Where the wind takes the aircraft. */
export interface TrackMade {
  readonly trackDegTrue: TrueDeg;
  /** Track minus heading, degrees: positive is blown to the right. */
  readonly driftDeg: number;
  readonly groundSpeedKt: number;
}

/**
 * The track and groundspeed that a heading gives in a wind: the air vector plus the wind vector.
 *
 * Where the wind stops the aircraft dead there is no track: the heading stands for it, with 0 kt.
 * *Source:* FAA-H-8083-25C, Pilot's Handbook of Aeronautical Knowledge, ch. 16, "Wind triangle".
 */
export function trackForHeading(held: HeadingInWind): TrackMade {
  const { headingDegTrue, trueAirspeedKt, wind } = held;
  const eastKt = trueAirspeedKt * sinDeg(headingDegTrue) - wind.speedKt * sinDeg(wind.fromDegTrue);
  const northKt = trueAirspeedKt * cosDeg(headingDegTrue) - wind.speedKt * cosDeg(wind.fromDegTrue);
  const groundSpeedKt = Math.hypot(eastKt, northKt);
  const trackDegTrue = groundSpeedKt > 0 ? trueDeg(directionDeg(eastKt, northKt)) : headingDegTrue;
  return { trackDegTrue, driftDeg: turnDeg(headingDegTrue, trackDegTrue), groundSpeedKt };
}

/** A heading and airspeed, and the track and groundspeed that they gave. */
export interface TrackAndHeading {
  readonly headingDegTrue: TrueDeg;
  readonly trueAirspeedKt: number;
  readonly trackDegTrue: TrueDeg;
  readonly groundSpeedKt: number;
}

/**
 * The wind that explains a track and groundspeed: the air vector minus the ground vector.
 *
 * No wind comes out as 0 kt from 000. *Source:* as for `trackForHeading`.
 */
export function windFromTrackAndHeading(flown: TrackAndHeading): Wind {
  const { headingDegTrue, trueAirspeedKt, trackDegTrue, groundSpeedKt } = flown;
  const eastKt = trueAirspeedKt * sinDeg(headingDegTrue) - groundSpeedKt * sinDeg(trackDegTrue);
  const northKt = trueAirspeedKt * cosDeg(headingDegTrue) - groundSpeedKt * cosDeg(trackDegTrue);
  return { fromDegTrue: directionDeg(eastKt, northKt), speedKt: Math.hypot(eastKt, northKt) };
}
