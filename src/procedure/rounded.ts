import type { EstimateSeen, Guidance, HowFar, WhichWay } from '../track/guidance.ts';

/** Decimal places that mean something. */
const MILES_PLACES = 2;
const SPEED_PLACES = 1;
const ANGLE_PLACES = 1;
const WHOLE = 0;

/**
 * The guidance as it leaves the tool: as fine as it means something, and never minus zero.
 *
 * Distances to 0.01 NM, speeds to 0.1 kt, drift and wind direction to 0.1 degrees, headings, turns and times
 * whole. Directions stay below 360. The words are made from these numbers, so that voice and page agree.
 */
export function rounded(guidance: Guidance): Guidance {
  return {
    ...guidance,
    howFar: roundedFar(guidance.howFar),
    whichWay: roundedWay(guidance.whichWay),
    seen: roundedSeen(guidance.seen),
    nextReadingInS: to(guidance.nextReadingInS, WHOLE),
  };
}

function roundedFar(far: HowFar): HowFar {
  return {
    ...far,
    toGoNm: orNull(far.toGoNm, MILES_PLACES),
    pastEndNm: orNull(far.pastEndNm, MILES_PLACES),
    toGoS: orNull(far.toGoS, WHOLE),
    groundSpeedKt: orNull(far.groundSpeedKt, SPEED_PLACES),
    sdNm: orNull(far.sdNm, MILES_PLACES),
    sdS: orNull(far.sdS, WHOLE),
    sdKt: orNull(far.sdKt, SPEED_PLACES),
  };
}

function roundedWay(way: WhichWay): WhichWay {
  return {
    ...way,
    turnDeg: to(way.turnDeg, WHOLE),
    headingDeg: direction(way.headingDeg, WHOLE),
    holdS: to(way.holdS, WHOLE),
    thenHeadingDeg: direction(way.thenHeadingDeg, WHOLE),
  };
}

function roundedSeen({ crossTrackNm, crossTrackSdNm, driftDeg, wind }: EstimateSeen): EstimateSeen {
  return {
    crossTrackNm: orNull(crossTrackNm, MILES_PLACES),
    crossTrackSdNm: orNull(crossTrackSdNm, MILES_PLACES),
    driftDeg: orNull(driftDeg, ANGLE_PLACES),
    wind: wind && {
      fromDegMag: direction(wind.fromDegMag, ANGLE_PLACES),
      speedKt: to(wind.speedKt, SPEED_PLACES),
      sdKt: to(wind.sdKt, SPEED_PLACES),
    },
  };
}

function orNull(value: number | null, places: number): number | null {
  return value === null ? null : to(value, places);
}

/** To so many decimal places; zero is never minus zero. */
function to(value: number, places: number): number {
  return Number(value.toFixed(places)) || 0;
}

/** 359.97 rounds up to north, which is zero. */
function direction(deg: number, places: number): number {
  return to(deg, places) % 360;
}
