import { magneticField } from 'magvar';
import { DEG_PER_RAD } from '../base/angle.ts';
import { accept, refuse, type Result } from '../base/result.ts';
import { METRES_PER_FT } from '../base/units.ts';
import { decimalYear } from './calendar-date.ts';
import type { LatLon } from './geodesic.ts';

const VALID_FROM_YEAR = 2025;
const VALID_UNTIL_YEAR = 2030;
const M_PER_KM = 1000;

/**
 * Magnetic variation at a place on a day, degrees, east positive, -180 < x <= 180.
 *
 * `altitudeFt` above mean sea level, taken for the height above the ellipsoid: the two differ by up to
 * 100 m, which is below 0.01 degrees of variation. Within the model's own error, about 0.3 degrees where
 * the compass works well and more towards the magnetic poles, where it does not. Refuses dates outside
 * 2025-01-01 to 2029-12-31 (field `dateIso`), for which the model was not made, and places off the globe.
 * *Source:* World Magnetic Model 2025, NOAA/NCEI and British Geological Survey, through the package magvar.
 */
export function variationDegEast(place: LatLon, dateIso: string, altitudeFt = 0): Result<number> {
  const year = yearOfModel(dateIso);
  if (!year.ok) return year;
  if (!(Math.abs(place.latitudeDeg) <= 90)) {
    return refuse([
      { field: 'latitudeDeg', expected: 'a latitude, -90 to 90', got: String(place.latitudeDeg) },
    ]);
  }
  if (!(Math.abs(place.longitudeDeg) <= 360)) {
    return refuse([
      {
        field: 'longitudeDeg',
        expected: 'a longitude, -180 to 180',
        got: String(place.longitudeDeg),
      },
    ]);
  }
  return accept(modelVariationDegEast(place, year.value, altitudeFt));
}

/** The day as decimal year when the model is valid for it. */
function yearOfModel(dateIso: string): Result<number> {
  const year = decimalYear(dateIso);
  if (!year.ok || (year.value >= VALID_FROM_YEAR && year.value < VALID_UNTIL_YEAR)) return year;
  const expected = '2025-01-01 to 2029-12-31, the years of the magnetic model WMM2025';
  return refuse([{ field: 'dateIso', expected, got: dateIso }]);
}

/**
 * The same for a decimal year, unchecked: for many places on one day that has been checked.
 *
 * The model is always given the year: left out, the package would read the clock. The angle is taken from
 * the field's parts, because the package rounds its own to 0.01 degrees, too coarse for a gradient.
 */
export function modelVariationDegEast(place: LatLon, year: number, altitudeFt: number): number {
  const altitudeKm = (altitudeFt * METRES_PER_FT) / M_PER_KM;
  const field = magneticField(place.latitudeDeg, place.longitudeDeg, altitudeKm, year);
  return Math.atan2(field.y, field.x) * DEG_PER_RAD;
}
