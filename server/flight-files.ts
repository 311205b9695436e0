import { stringify } from 'csv-stringify/sync';
import type { FlightEvent } from '../src/flight/event.ts';
import { flownRows, type FlownRow } from '../src/flight/files/flown-rows.ts';
import { addEvents, emptyFold } from '../src/flight/fold.ts';
import { gpxText } from '../src/flight/files/gpx.ts';
import { routePoints } from '../src/flight/files/route-points.ts';

const COLUMNS: readonly (readonly [string, (row: FlownRow) => unknown])[] = [
  ['at_utc', ({ atMs }) => new Date(atMs).toISOString()],
  ['kind', ({ kind }) => kind],
  ['taken_back', ({ isTakenBack }) => (isTakenBack ? 'yes' : '')],
  ['leg', ({ leg }) => leg],
  ['ident', ({ ident }) => ident],
  ['heading_deg', ({ headingDeg }) => headingDeg],
  ['course_set_deg', ({ courseSetDeg }) => courseSetDeg],
  ['needle_dots', ({ needleDots }) => needleDots],
  ['flag', ({ flag }) => flag],
  ['dme_nm', ({ dmeNm }) => dmeNm],
  ['believed_latitude_deg', ({ place }) => place?.latitudeDeg.toFixed(5)],
  ['believed_longitude_deg', ({ place }) => place?.longitudeDeg.toFixed(5)],
  ['heading_told_deg', ({ headingToldDeg }) => headingToldDeg],
  ['to_go_nm', ({ toGoNm }) => toGoNm?.toFixed(1)],
  ['text', ({ text }) => text],
];

/** A flight as CSV (RFC 4180), one row an event. A text that a spreadsheet would take for a formula is quoted off. */
export function flightCsv(events: readonly FlightEvent[]): string {
  const rows = flownRows(addEvents(emptyFold(), events)).map((row) =>
    COLUMNS.map(([, of]) => of(row) ?? ''),
  );
  return stringify([COLUMNS.map(([name]) => name), ...rows], {
    record_delimiter: 'windows',
    escape_formulas: true,
    cast: { number: (value) => ({ value: String(value), escape_formulas: false }) },
  });
}

/** A flight as GPX 1.1: its stations, the planned route, and a track of where the readings put the aircraft. */
export function flightGpx(name: string, events: readonly FlightEvent[]): string {
  const fold = addEvents(emptyFold(), events);
  const route = routePoints(fold.state.plan?.legs ?? []);
  return gpxText({
    name,
    places: route
      .filter(({ isStation }) => isStation)
      .filter((point, at, all) => all.findIndex((each) => each.name === point.name) === at),
    route,
    track: flownRows(fold).flatMap(({ atMs, place }) =>
      place ? [{ timeIso: new Date(atMs).toISOString(), place }] : [],
    ),
  });
}
