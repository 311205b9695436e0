import { accept, refuse, type FieldProblem, type Result } from '../base/result.ts';
import { frequencyProblems } from './frequency.ts';
import { rangeProblems } from '../base/in-range.ts';
import type { AntennaSite, Station } from './station.ts';

const LATITUDE = { least: -90, most: 90, what: 'a latitude in degrees, north positive' };
const LONGITUDE = { least: -180, most: 180, what: 'a longitude in degrees, east positive' };
const ELEVATION = { least: -1_500, most: 20_000, what: 'feet above mean sea level' };
const DECLINATION = { least: -180, most: 180, what: 'a declination in degrees, east positive' };

/**
 * Accepts a station that can be flown by, with its ident in capitals; refuses with every field that cannot be.
 *
 * `field`: where the station stands in the input (`leg.station`). Idents are 1 to 4 letters or figures,
 * because published ones are; whether it is the right station nobody can tell from its ident.
 */
export function checkStation(station: Station, field = 'leg.station'): Result<Station> {
  const problems = [
    ...identProblems(station.ident, `${field}.ident`),
    ...siteProblems(station, field),
    ...rangeProblems(`${field}.declinationDegEast`, station.declinationDegEast, DECLINATION),
    ...(station.frequencyMhz === undefined
      ? []
      : frequencyProblems(station.frequencyMhz, `${field}.frequencyMhz`)),
    ...(station.dme === undefined ? [] : siteProblems(station.dme, `${field}.dme`)),
  ];
  if (problems.length > 0) return refuse(problems);
  return accept({ ...station, ident: station.ident.toUpperCase() });
}

function identProblems(ident: string, field: string): FieldProblem[] {
  if (/^[A-Z0-9]{1,4}$/i.test(ident)) return [];
  return [
    { field, expected: '1 to 4 letters or figures, as keyed in Morse', got: ident || 'nothing' },
  ];
}

function siteProblems(site: AntennaSite, field: string): FieldProblem[] {
  return [
    ...rangeProblems(`${field}.latitudeDeg`, site.latitudeDeg, LATITUDE),
    ...rangeProblems(`${field}.longitudeDeg`, site.longitudeDeg, LONGITUDE),
    ...rangeProblems(`${field}.elevationFt`, site.elevationFt, ELEVATION),
  ];
}
