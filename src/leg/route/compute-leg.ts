import type { FieldProblem } from '../../base/result.ts';
import { accept, refuse, type Result } from '../../base/result.ts';
import { reciprocalDeg } from '../../base/angle.ts';
import { stationDeg, type MagneticDeg, type StationDeg, type TrueDeg } from '../../base/bearing.ts';
import { S_PER_H } from '../../base/units.ts';
import { geodesicTo } from '../../earth/geodesic.ts';
import { magneticFromTrue } from '../../earth/norths.ts';
import { variationDegEast } from '../../earth/variation.ts';
import { coneRadiusNm } from '../../station/cone.ts';
import { lineOfSightNm } from '../../station/line-of-sight.ts';
import { stationFromTrue } from '../../station/radial.ts';
import { serviceVolumeNm } from '../../station/library/service-volume.ts';
import type { Station } from '../../station/station.ts';
import { headingForCourse } from '../../wind/triangle.ts';
import type { Wind } from '../../wind/wind.ts';
import { dmeNmAt } from './dme-at.ts';
import { legWarnings } from './leg-warnings.ts';
import type { PlacedLeg, PlanAircraft } from './route-leg.ts';

/** What one leg is computed with. */
export interface LegConditions {
  readonly aircraft: PlanAircraft;
  readonly wind: Wind;
  /** Above mean sea level. */
  readonly altitudeFt: number;
  readonly dateIso: string;
}

/** All that is known of a leg before it is flown. */
export interface ComputedLeg {
  /** True track where the leg begins. On a long leg it turns on the way, as meridians converge. */
  readonly trackTrueDeg: TrueDeg;
  /** What is set on the OBS, by the station's own declination. */
  readonly courseDeg: StationDeg;
  /** The radial on which the leg is flown: the course from a station, its reciprocal to one. */
  readonly radialDeg: StationDeg;
  readonly distanceNm: number;
  /** Magnetic, by the variation on the day where the leg begins. */
  readonly headingDeg: MagneticDeg;
  /** Heading minus track: positive to the right. */
  readonly windCorrectionDeg: number;
  readonly groundSpeedKt: number;
  readonly timeS: number;
  readonly fuel: number;
  /** What the DME reads where the leg begins and ends (slant range); null without a DME. */
  readonly dmeAtStartNm: number | null;
  readonly dmeAtEndNm: number | null;
  /** Ground radius of the blind cone over the station at the altitude. */
  readonly coneRadiusNm: number;
  readonly lineOfSightNm: number;
  /** How far the station serves at the altitude; null where its class promises nothing. */
  readonly serviceVolumeNm: number | null;
  /** Where the leg begins, on the day, east positive. */
  readonly variationDegEast: number;
  /** In plain words. */
  readonly warnings: readonly string[];
}

/**
 * Computes one leg: course, heading, time, fuel, what the DME will read, and how far the station can be heard.
 *
 * Track, variation and heading are those where the leg begins; the course is taken at the station, because its
 * radials are. Refuses (field `wind.speedKt`) a wind that the airspeed cannot fly against, a day for which there
 * is no magnetic model (`dateIso`), and an altitude not above the station (`altitudeFt`).
 * *Source:* as named by each function used; time and fuel are distance over groundspeed and hours times flow.
 */
export function computeLeg(leg: PlacedLeg, conditions: LegConditions): Result<ComputedLeg> {
  const { aircraft, altitudeFt, dateIso } = conditions;
  const wind = leg.wind ?? conditions.wind;
  const { station, start, end } = leg;
  const low = altitudeProblems(altitudeFt, station);
  if (low.length > 0) return refuse(low);
  const line = geodesicTo(start, end);
  const variation = variationDegEast(start, dateIso, altitudeFt);
  if (!variation.ok) return variation;
  const there = variationDegEast(end, dateIso, altitudeFt);
  if (!there.ok) return there;
  const { trueAirspeedKt } = aircraft;
  const flown = headingForCourse({ courseDegTrue: line.azimuthDeg, trueAirspeedKt, wind });
  if (!flown.ok) return flown;
  const { headingDegTrue, windCorrectionDeg, groundSpeedKt } = flown.value;
  const isTo = leg.direction === 'to';
  const courseDeg = stationFromTrue(isTo ? line.azimuthThereDeg : line.azimuthDeg, station);
  const timeS = (line.distanceNm / groundSpeedKt) * S_PER_H;
  const heightFt = altitudeFt - station.elevationFt;
  const computed = {
    trackTrueDeg: line.azimuthDeg,
    courseDeg,
    radialDeg: isTo ? stationDeg(reciprocalDeg(courseDeg)) : courseDeg,
    distanceNm: line.distanceNm,
    headingDeg: magneticFromTrue(headingDegTrue, variation.value),
    windCorrectionDeg,
    groundSpeedKt,
    timeS,
    fuel: (timeS / S_PER_H) * aircraft.fuelPerHour,
    dmeAtStartNm: dmeNmAt(start, station, altitudeFt),
    dmeAtEndNm: dmeNmAt(end, station, altitudeFt),
    coneRadiusNm: coneRadiusNm(heightFt),
    lineOfSightNm: lineOfSightNm(altitudeFt, station.elevationFt),
    serviceVolumeNm: serviceVolumeNm(heightFt, leg.serviceClass),
    variationDegEast: variation.value,
  };
  const warnings = legWarnings({
    leg,
    ...computed,
    trueAirspeedKt,
    variationAtEndDegEast: there.value,
    variationAtStationDegEast: isTo ? there.value : variation.value,
    trackAtEndTrueDeg: line.azimuthThereDeg,
    headingAtEndDeg: headingAtEnd(line.azimuthThereDeg, { trueAirspeedKt, wind }, there.value),
  });
  return accept({ ...computed, warnings });
}

/** Magnetic, where the leg ends; null where the wind could not be flown against there. */
function headingAtEnd(
  trackDegTrue: TrueDeg,
  air: { readonly trueAirspeedKt: number; readonly wind: Wind },
  variationDegEast: number,
): MagneticDeg | null {
  const flown = headingForCourse({ courseDegTrue: trackDegTrue, ...air });
  return flown.ok ? magneticFromTrue(flown.value.headingDegTrue, variationDegEast) : null;
}

function altitudeProblems(altitudeFt: number, station: Station): FieldProblem[] {
  if (altitudeFt > station.elevationFt) return [];
  const expected = `an altitude above ${station.ident}, which stands at ${station.elevationFt} ft`;
  return [{ field: 'altitudeFt', expected, got: `${altitudeFt}` }];
}
