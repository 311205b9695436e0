import { FT_PER_NM } from '../base/units.ts';
import type { Aircraft } from '../leg/leg.ts';
import type { DatedLeg } from '../leg/leg-frame.ts';
import { convergenceDegAt, variationNear } from '../leg/local-norths.ts';
import type { LocalNorths } from '../leg/local-norths.ts';
import { coneRadiusNm } from '../station/cone.ts';
import { arcSceneOf } from './arc-scene.ts';
import type { ArcScene } from './arc-scene.ts';
import type { Place } from './place.ts';

/** The DME's antenna in the plane about the station, NM, and the aircraft's height above it. */
export interface DmeScene {
  readonly eastNm: number;
  readonly northNm: number;
  readonly heightNm: number;
}

/**
 * One leg and aircraft as the filter sees them: plain numbers in a plane about the station, x east and
 * y north (NM), true north at the station (azimuthal equidistant: bearings and ranges from the station
 * are exact).
 */
export interface Scene {
  readonly isTo: boolean;
  /** Course to fly, true at the station, and by the station's declination. */
  readonly courseDegTrue: number;
  readonly courseDeg: number;
  readonly declinationDegEast: number;
  readonly norths: LocalNorths;
  /** Null on a leg without DME. */
  readonly dme: DmeScene | null;
  readonly heightNm: number;
  readonly coneRadiusNm: number;
  /** Ground range at which the leg ends; 0: over the station; null: no end known. */
  readonly endGroundNm: number | null;
  readonly trueAirspeedKt: number;
  readonly degreesPerDot: number;
  readonly dotsFullScale: number;
  /** Left out where the leg is a radial. */
  readonly arc?: ArcScene;
}

/** The scene of a leg flown by an aircraft. */
export function sceneOf(leg: DatedLeg, aircraft: Aircraft): Scene {
  const { dmeAntenna } = leg;
  const arc = arcSceneOf(leg);
  return {
    isTo: leg.leg.direction === 'to',
    courseDegTrue: leg.courseDegTrue,
    courseDeg: leg.leg.courseDeg,
    declinationDegEast: leg.leg.station.declinationDegEast,
    norths: leg,
    dme: dmeAntenna && {
      eastNm: dmeAntenna.eastNm,
      northNm: dmeAntenna.northNm,
      heightNm: dmeAntenna.heightFt / FT_PER_NM,
    },
    heightNm: Math.max(0, leg.heightAboveVorFt) / FT_PER_NM,
    coneRadiusNm: coneRadiusNm(leg.heightAboveVorFt),
    endGroundNm: leg.endGroundNm,
    trueAirspeedKt: aircraft.trueAirspeedKt,
    degreesPerDot: aircraft.degreesPerDot,
    dotsFullScale: aircraft.dotsFullScale,
    ...(arc ? { arc } : {}),
  };
}

/**
 * What to add to a magnetic heading at a place to get its direction in the plane, degrees: the local
 * variation, and how far the meridian there has turned away from the station's.
 */
export function planeFromMagneticDeg(scene: Scene, place: Place): number {
  return (
    variationNear(scene.norths, place.eastNm, place.northNm) +
    convergenceDegAt(scene.norths, place.eastNm, place.northNm)
  );
}
