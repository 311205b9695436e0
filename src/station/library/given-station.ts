import { accept, refuse, type Result } from '../../base/result.ts';
import { modelVariationDegEast } from '../../earth/variation.ts';
import { checkStation } from '../check-station.ts';
import type { LibraryStation } from './library-station.ts';
import type { ServiceClass } from './service-volume.ts';
import type { Station } from '../station.ts';

/** A station as a pilot enters it by hand. */
export type EnteredStation = Omit<Station, 'declinationDegEast' | 'frequencyMhz'> & {
  readonly frequencyMhz: number;
  /** Left out: today's variation stands in, and is marked. */
  readonly declinationDegEast?: number;
  readonly serviceClass?: ServiceClass;
  readonly country?: string;
};

/**
 * A station entered by hand, as it is kept; refused with every field that cannot be.
 *
 * `year`: decimal, within the years of the magnetic model, for a declination that was left out.
 */
export function stationByHand(
  id: string,
  entered: EnteredStation,
  year: number,
): Result<LibraryStation> {
  const { serviceClass, country, ...rest } = entered;
  const isPlaced = Math.abs(rest.latitudeDeg) <= 90 && Math.abs(rest.longitudeDeg) <= 180;
  // What is wrong with the height is said of the height, not of a declination that nobody gave.
  const heightFt = Number.isFinite(rest.elevationFt) ? rest.elevationFt : 0;
  const modelled = isPlaced ? modelVariationDegEast(rest, year, heightFt) : 0;
  const station = { ...rest, declinationDegEast: rest.declinationDegEast ?? modelled };
  const checked = checkStation(station, '');
  if (!checked.ok)
    return refuse(checked.problem.map((each) => ({ ...each, field: each.field.slice(1) })));
  return accept({
    ...checked.value,
    frequencyMhz: rest.frequencyMhz,
    id,
    ...(serviceClass === undefined ? {} : { serviceClass }),
    ...(country === undefined ? {} : { country: country.toUpperCase() }),
    declinationFrom: rest.declinationDegEast === undefined ? 'model' : 'published',
    isElevationKnown: true,
    isByHand: true,
  });
}
