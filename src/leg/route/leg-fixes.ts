import { geodesicTo, placeAt, type LatLon } from '../../earth/geodesic.ts';
import { stationsNear, type StationIndex } from '../../station/library/find-stations.ts';
import type { LibraryStation } from '../../station/library/library-station.ts';
import { receptionNm } from '../../station/library/reception.ts';
import { lineOfSightNm } from '../../station/line-of-sight.ts';
import { bestCrossing, isSquare, type CrossingRadial } from './crossing-radial.ts';
import type { PlacedLeg } from './route-leg.ts';
import { isAnotherOnFrequency } from './shared-frequency.ts';

/** A place on a leg where the pilot wants to know how far along it the aircraft is. */
export interface Checkpoint {
  readonly kind: 'on-the-way' | 'halfway' | 'change-over' | 'destination';
  readonly place: LatLon;
  /** From the start of the leg. */
  readonly flownNm: number;
  /** Ground distance to the leg's own station. */
  readonly rangeNm: number;
}

/** A checkpoint with the radial that tells it; null where no station crosses well. */
export interface LegFix extends Checkpoint {
  readonly crossing: CrossingRadial<LibraryStation> | null;
}

/** Without DME a checkpoint about every so often, NM: six minutes at 100 kt. */
const EACH_NM = 10;
/** With DME halfway is a checkpoint on legs from here on, NM. */
const LONG_NM = 20;
/** Stations farther off tell the place badly, NM: 60 times the error of a radial is 1.6. */
const AROUND_NM = 60;
/** A station so near to the leg's own is the same one or gives the same line, NM. */
const SAME_PLACE_NM = 1;

/**
 * The checkpoints of each leg, each with the station off to the side whose radial tells it best, of those received
 * there at the altitude (above mean sea level) and alone on their frequency as far as the horizon.
 *
 * Without DME: about every 10 NM, at the change-over and at the destination, even where nothing crosses well (then
 * `crossing` is null), and with a flat crossing (30 to 60 degrees) where there is no better one. With DME the distance
 * is known, and a second station is a check that does not hang on the first: halfway on legs of 20 NM and more and at
 * the change-over, only where it crosses at 60 to 120 degrees. Over a station the passage tells the place.
 */
export function legFixes(
  legs: readonly PlacedLeg[],
  index: StationIndex,
  altitudeFt: number,
): readonly (readonly LegFix[])[] {
  return legs.map((leg, at) => {
    const fixes = checkpointsOf(leg, legs[at + 1]).map((checkpoint) => ({
      ...checkpoint,
      crossing: crossingAt(checkpoint, leg, index, altitudeFt),
    }));
    return leg.station.hasDme
      ? fixes.filter(({ crossing }) => crossing !== null && isSquare(crossing))
      : fixes;
  });
}

function checkpointsOf(leg: PlacedLeg, next: PlacedLeg | undefined): readonly Checkpoint[] {
  const { hasDme } = leg.station;
  const line = geodesicTo(leg.start, leg.end);
  const at = (kind: Checkpoint['kind'], flownNm: number): Checkpoint => ({
    kind,
    place: placeAt(leg.start, line.azimuthDeg, flownNm),
    flownNm,
    rangeNm: leg.direction === 'to' ? line.distanceNm - flownNm : flownNm,
  });
  const isChangeOver = leg.direction === 'from' && next?.direction === 'to';
  const isDestination = leg.direction === 'from' && next === undefined && !hasDme;
  return [
    ...(hasDme
      ? line.distanceNm >= LONG_NM
        ? [at('halfway', line.distanceNm / 2)]
        : []
      : partsOf(line.distanceNm).map((nm) => at('on-the-way', nm))),
    ...(isChangeOver ? [at('change-over', line.distanceNm)] : []),
    ...(isDestination ? [at('destination', line.distanceNm)] : []),
  ];
}

/** Where a leg without DME is checked on the way: at least once. */
function partsOf(lengthNm: number): readonly number[] {
  const count = Math.max(1, Math.round(lengthNm / EACH_NM) - 1);
  return Array.from({ length: count }, (_, at) => (lengthNm * (at + 1)) / (count + 1));
}

function crossingAt(
  { place, rangeNm }: Checkpoint,
  { station, direction, start, end }: PlacedLeg,
  index: StationIndex,
  altitudeFt: number,
): CrossingRadial<LibraryStation> | null {
  // The track there, seen from the far end of the leg: at an end itself no direction could be told from it.
  const trackDegTrue =
    direction === 'to'
      ? geodesicTo(place, end).azimuthDeg
      : geodesicTo(start, place).azimuthThereDeg;
  const seconds = stationsNear(index, place, AROUND_NM)
    .filter((near) => near.distanceNm <= receptionNm(near.station, altitudeFt))
    .map((near) => near.station)
    .filter((second) => geodesicTo(second, station).distanceNm > SAME_PLACE_NM)
    .filter((second) => isAloneOnFrequency(second, place, index, altitudeFt));
  return bestCrossing({ place, trackDegTrue, rangeNm, altitudeFt }, seconds);
}

/** Whether no other station on its frequency may be heard at a place: as far as the horizon, which is farther than any promise. */
function isAloneOnFrequency(
  second: LibraryStation,
  place: LatLon,
  { stations }: StationIndex,
  altitudeFt: number,
): boolean {
  return !stations.some(
    (other) =>
      isAnotherOnFrequency(second, other) &&
      geodesicTo(other, place).distanceNm < lineOfSightNm(altitudeFt, other.elevationFt),
  );
}
