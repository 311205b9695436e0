import geographiclib from 'geographiclib-geodesic';
import { trueDeg, type TrueDeg } from '../base/bearing.ts';
import { METRES_PER_NM } from '../base/units.ts';

const wgs84 = geographiclib.Geodesic.WGS84;

/** A place on the WGS84 ellipsoid: degrees, north and east positive. */
export interface LatLon {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

/** The shortest way from one place to another. */
export interface GeodesicTo {
  readonly distanceNm: number;
  /** Direction in which it leaves, true at the place where it starts. */
  readonly azimuthDeg: TrueDeg;
  /** Direction in which it arrives, true at the place where it ends: differs by the convergence. */
  readonly azimuthThereDeg: TrueDeg;
}

/**
 * The geodesic from one place to another on WGS84.
 *
 * Good to about 15 nanometres anywhere, nearly opposite points included. From a place to itself:
 * 0 NM and the azimuths 000 or 180, which mean nothing there.
 * *Source:* C. F. F. Karney, "Algorithms for geodesics", Journal of Geodesy 87 (2013) 43-55,
 * doi 10.1007/s00190-012-0578-z, through the package geographiclib-geodesic.
 */
export function geodesicTo(from: LatLon, to: LatLon): GeodesicTo {
  const line = wgs84.Inverse(from.latitudeDeg, from.longitudeDeg, to.latitudeDeg, to.longitudeDeg);
  return {
    distanceNm: (line.s12 ?? 0) / METRES_PER_NM,
    azimuthDeg: trueDeg(line.azi1 ?? 0),
    azimuthThereDeg: trueDeg(line.azi2 ?? 0),
  };
}

/**
 * The place at the end of a geodesic that leaves in a given true direction.
 *
 * Longitude comes back in -180 <= x <= 180. A negative distance goes backwards.
 * *Source:* as for `geodesicTo`.
 */
export function placeAt(from: LatLon, azimuthDeg: TrueDeg, distanceNm: number): LatLon {
  const line = wgs84.Direct(
    from.latitudeDeg,
    from.longitudeDeg,
    azimuthDeg,
    distanceNm * METRES_PER_NM,
  );
  return {
    latitudeDeg: line.lat2 ?? from.latitudeDeg,
    longitudeDeg: line.lon2 ?? from.longitudeDeg,
  };
}
