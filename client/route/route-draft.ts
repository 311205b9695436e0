import type { LevelRule } from '../../src/leg/route/cruising-level.ts';
import type { ReserveName } from '../../src/leg/route/fuel-reserve.ts';
import type { LibraryStation } from '../../src/station/library/library-station.ts';

/** A flight being planned: texts as typed, and the stations that it goes by. Kept as it is. */
export interface RouteDraft {
  readonly id: string;
  readonly name: string;
  readonly date: string;
  /** Take-off, `14:30` UTC; empty: not known. */
  readonly departure: string;
  readonly start: string;
  readonly destination: string;
  /** Which of several stations of that ident is meant; empty: not asked yet. */
  readonly startStationId: string;
  readonly destinationStationId: string;
  readonly via: readonly LibraryStation[];
  readonly altitude: string;
  /** The lowest safe one, as the pilot works it out from the chart; empty: not given. */
  readonly safeAltitude: string;
  readonly windFrom: string;
  readonly windSpeed: string;
  /** Winds of single legs as typed, `280/22`, by station and direction; the wind above holds for the others. */
  readonly legWinds: Readonly<Record<string, string>>;
  readonly fuelPerHour: string;
  readonly fuelUnit: string;
  readonly reserve: ReserveName;
  readonly levels: LevelRule;
}

/** A flight of which nothing is known but the day. */
export function emptyRoute(id: string, dateIso: string): RouteDraft {
  return {
    id,
    name: '',
    date: dateIso,
    departure: '',
    start: '',
    destination: '',
    startStationId: '',
    destinationStationId: '',
    via: [],
    altitude: '',
    safeAltitude: '',
    windFrom: '',
    windSpeed: '',
    legWinds: {},
    fuelPerHour: '',
    fuelUnit: 'L',
    reserve: 'eu-day',
    levels: 'icao',
  };
}

/** What a flight is called in a list. */
export function routeTitle({ name, start, destination }: RouteDraft): string {
  if (name.trim() !== '') return name.trim();
  const ends = [start, destination].map((each) => each.trim()).filter((each) => each !== '');
  return ends.length === 2 ? ends.join(' to ') : 'Flight without a name';
}

/** The stations in another order: one moved up or down by one place. */
export function moved<Item>(list: readonly Item[], at: number, by: -1 | 1): readonly Item[] {
  const to = at + by;
  const item = list[at];
  const other = list[to];
  if (item === undefined || other === undefined) return list;
  return list.map((each, index) => (index === at ? other : index === to ? item : each));
}
