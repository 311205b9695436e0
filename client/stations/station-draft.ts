import { accept, refuse, type FieldProblem, type Result } from '../../src/base/result.ts';
import { readAngle, readNumber } from '../../src/earth/typed-angle.ts';
import { stationByHand, type EnteredStation } from '../../src/station/library/given-station.ts';
import type { LibraryStation } from '../../src/station/library/library-station.ts';
import type { ServiceClass } from '../../src/station/library/service-volume.ts';

/** A station as typed: texts, until they are read. */
export interface StationDraft {
  readonly ident: string;
  readonly name: string;
  readonly frequency: string;
  readonly latitude: string;
  readonly longitude: string;
  readonly elevation: string;
  /** Empty: filled from the magnetic model, and marked. */
  readonly declination: string;
  readonly dme: 'yes' | 'no';
  readonly serviceClass: ServiceClass | '';
}

const EMPTY: StationDraft = {
  ident: '',
  name: '',
  frequency: '',
  latitude: '',
  longitude: '',
  elevation: '',
  declination: '',
  dme: 'yes',
  serviceClass: '',
};

/** What stands in the form for a station; empty for a new one. */
export function draftOfStation(station: LibraryStation | null): StationDraft {
  if (station === null) return EMPTY;
  const { latitudeDeg, longitudeDeg, declinationDegEast, declinationFrom } = station;
  return {
    ident: station.ident,
    name: station.name ?? '',
    frequency: station.frequencyMhz.toFixed(2),
    latitude: lettered(latitudeDeg, 'N', 'S', 6),
    longitude: lettered(longitudeDeg, 'E', 'W', 6),
    elevation: station.isElevationKnown ? String(station.elevationFt) : '',
    declination: declinationFrom === 'model' ? '' : lettered(declinationDegEast, 'E', 'W', 3),
    dme: station.hasDme ? 'yes' : 'no',
    serviceClass: station.serviceClass ?? '',
  };
}

/** Whole and decimal degrees with a letter, as few figures as tell it: `21.25 W`. */
export function lettered(angleDeg: number, plus: string, minus: string, places: number): string {
  return `${Number(Math.abs(angleDeg).toFixed(places))} ${angleDeg < 0 ? minus : plus}`;
}

/**
 * Reads a station as typed; refuses with every field that cannot be read.
 *
 * `before`: the station being corrected; what the form does not show is kept. `year`: decimal, for a declination
 * that is left out.
 */
export function readStation(
  draft: StationDraft,
  id: string,
  before: LibraryStation | null,
  year: number,
): Result<LibraryStation> {
  const latitude = readAngle(draft.latitude, 'latitude');
  const longitude = readAngle(draft.longitude, 'longitude');
  const declination =
    draft.declination.trim() === '' ? null : readAngle(draft.declination, 'declination');
  const typed: readonly (readonly [string, Result<number, string> | null])[] = [
    ['latitudeDeg', latitude],
    ['longitudeDeg', longitude],
    ['declinationDegEast', declination],
  ];
  const angleProblems = typed.flatMap(([field, read]): FieldProblem[] =>
    read === null || read.ok ? [] : [{ field, expected: read.problem, got: '' }],
  );
  const station = stationByHand(
    id,
    {
      ident: draft.ident.trim(),
      latitudeDeg: latitude.ok ? latitude.value : 0,
      longitudeDeg: longitude.ok ? longitude.value : 0,
      elevationFt: readNumber(draft.elevation),
      hasDme: draft.dme === 'yes',
      frequencyMhz: readNumber(draft.frequency),
      ...(declination?.ok === true ? { declinationDegEast: declination.value } : {}),
      ...beyondFigures(draft, before),
    },
    year,
  );
  if (!station.ok || angleProblems.length > 0)
    return refuse([...angleProblems, ...(station.ok ? [] : station.problem)]);
  return accept(station.value);
}

/** What may be left out, and what the form does not show. */
function beyondFigures(
  { name, dme, serviceClass }: StationDraft,
  before: LibraryStation | null,
): Partial<EnteredStation> {
  const antenna = dme === 'yes' ? before?.dme : undefined;
  return {
    ...(name.trim() === '' ? {} : { name: name.trim() }),
    ...(serviceClass === '' ? {} : { serviceClass }),
    ...(before?.country === undefined ? {} : { country: before.country }),
    ...(antenna === undefined ? {} : { dme: antenna }),
  };
}
