import { DEG_PER_RAD, RAD_PER_DEG, cosDeg, sinDeg, wrap360 } from '../base/angle.ts';
import { trueDeg } from '../base/bearing.ts';
import { geodesicTo, placeAt } from '../earth/geodesic.ts';
import type { DatedLeg } from '../leg/leg-frame.ts';
import type { Station } from '../station/station.ts';
import { BEARING, LN_RANGE, STATE_SIZE, VOR_BIAS, WIND_EAST, WIND_NORTH } from './belief.ts';
import type { Belief } from './belief.ts';
import type { Estimate, LegStart } from './estimate-record.ts';
import { diagonal, transform } from './matrix.ts';
import { clampLnRange } from './motion.ts';
import { VOR_BIAS_SD_DEG } from './tuning.ts';

/** How much of a station's bias stays when another of its radials is flown. */
const BIAS_KEPT_ON_TURN = 0.5;

/** The belief with only part of the VOR bias kept, as on another radial or another station. */
function withBiasKept(belief: Belief, kept: number): Belief {
  const covariance = transform(diagonal([1, 1, 1, 1, kept, 1, 1]), belief.covariance);
  const at = VOR_BIAS * STATE_SIZE + VOR_BIAS;
  covariance[at] = (covariance[at] ?? 0) + VOR_BIAS_SD_DEG ** 2 * (1 - kept ** 2);
  return { mean: { ...belief.mean, vorBiasDeg: belief.mean.vorBiasDeg * kept }, covariance };
}

/**
 * The same belief as seen from another station: the place through geodesics, wind and spread turned by the
 * convergence of the two stations' norths.
 */
function seenFrom(belief: Belief, from: Station, to: Station): Belief {
  const bearing = trueDeg(belief.mean.bearingRad * DEG_PER_RAD);
  const oldRangeNm = Math.exp(belief.mean.lnRange);
  const place = placeAt(from, bearing, oldRangeNm);
  const fromOld = geodesicTo(from, place);
  const fromNew = geodesicTo(to, place);
  // Direction of the same line at the aircraft in both planes: how far north has turned between them.
  const turnedDeg =
    fromOld.azimuthThereDeg - fromOld.azimuthDeg - (fromNew.azimuthThereDeg - fromNew.azimuthDeg);
  const sin = sinDeg(turnedDeg);
  const cos = cosDeg(turnedDeg);
  const { windEastKt, windNorthKt } = belief.mean;
  const rangeNm = Math.max(0.05, fromNew.distanceNm);
  const ratio = oldRangeNm / rangeNm;
  // Old and new bearing at the aircraft, both in the new plane: turns the small errors of place over.
  const swingRad = (fromOld.azimuthThereDeg - fromNew.azimuthThereDeg) * RAD_PER_DEG;
  const a = [...diagonal([1, 1, cos, cos, 1, 1, 1])];
  a[LN_RANGE * STATE_SIZE + LN_RANGE] = ratio * Math.cos(swingRad);
  a[LN_RANGE * STATE_SIZE + BEARING] = -ratio * Math.sin(swingRad);
  a[BEARING * STATE_SIZE + LN_RANGE] = ratio * Math.sin(swingRad);
  a[BEARING * STATE_SIZE + BEARING] = ratio * Math.cos(swingRad);
  a[WIND_EAST * STATE_SIZE + WIND_NORTH] = sin;
  a[WIND_NORTH * STATE_SIZE + WIND_EAST] = -sin;
  return {
    mean: {
      ...belief.mean,
      lnRange: clampLnRange(Math.log(rangeNm)),
      bearingRad: wrap360(fromNew.azimuthDeg) * RAD_PER_DEG,
      windEastKt: cos * windEastKt + sin * windNorthKt,
      windNorthKt: cos * windNorthKt - sin * windEastKt,
    },
    covariance: transform(a, belief.covariance),
  };
}

/** Whether two stations are one: their antennas stand at the same place. */
export function isSameStation(one: Station, other: Station): boolean {
  return one.latitudeDeg === other.latitudeDeg && one.longitudeDeg === other.longitudeDeg;
}

/**
 * What one leg's estimate leaves to the next: place, wind, airspeed and heading errors.
 *
 * Of the station's bias half is kept on another radial of the same station, nothing on another station.
 */
export function carriedStart(carried: Estimate, leg: DatedLeg): LegStart {
  const { isPlaced, atMs, headingDeg } = carried;
  const from = carried.leg.leg.station;
  const to = leg.leg.station;
  const isSame = isSameStation(from, to);
  const seen = isSame || !isPlaced ? carried.belief : seenFrom(carried.belief, from, to);
  const belief = withBiasKept(seen, isSame ? BIAS_KEPT_ON_TURN : 0);
  const overStation =
    isSame && carried.overStation
      ? {
          ...carried.overStation,
          belief: withBiasKept(carried.overStation.belief, BIAS_KEPT_ON_TURN),
        }
      : null;
  return { belief, isPlaced, atMs, headingDeg, overStation };
}
