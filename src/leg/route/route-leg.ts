import type { LatLon } from '../../earth/geodesic.ts';
import type { ServiceClass } from '../../station/library/service-volume.ts';
import type { Station } from '../../station/station.ts';
import type { Wind } from '../../wind/wind.ts';

/** One leg of a route on the map: straight to a station, or straight away from it. */
export interface RouteLeg {
  readonly station: Station;
  readonly direction: 'to' | 'from';
  /** Where a `to` leg begins; left out: where the leg before it ends. A `from` leg begins at its station. */
  readonly start?: LatLon;
  /** Where a `from` leg ends; left out: where the leg after it begins. A `to` leg ends over its station. */
  readonly end?: LatLon;
  /** On this leg; left out: the wind of the whole route. */
  readonly wind?: Wind;
  /** What the station was built to serve; left out: not known. */
  readonly serviceClass?: ServiceClass;
}

/** Where a leg begins and ends, both known. */
export interface PlacedLeg {
  readonly station: Station;
  readonly direction: 'to' | 'from';
  readonly start: LatLon;
  readonly end: LatLon;
  readonly wind?: Wind;
  readonly serviceClass?: ServiceClass;
}

/** The aircraft as far as a plan needs to know it. */
export interface PlanAircraft {
  readonly trueAirspeedKt: number;
  readonly fuelPerHour: number;
  /** What the fuel is counted in, as the pilot writes it. */
  readonly fuelUnit: string;
}
