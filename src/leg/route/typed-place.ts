import { accept, refuse, type Result } from '../../base/result.ts';
import type { LatLon } from '../../earth/geodesic.ts';
import { readAngle } from '../../earth/typed-angle.ts';

const EXAMPLES = '46 30.5 N 21 15.2 W, 46.508 N 21.253 W, 463030N 0211512W or 46.508, -21.253';

/** Latitude and longitude as one text: the letters after their figures, or before them. */
const LETTERS_AFTER = /^([^NSEW]+[NS])[\s,;/]*([^NSEW]+[EW])$/;
const LETTERS_BEFORE = /^([NS][^NSEW]+?)[\s,;/]*([EW][^NSEW]+)$/;
/** Run together as in flight plans: 4630N02115W, 463030N0211512W. *Source:* ICAO Doc 4444, appendix 2, item 15. */
const RUN_TOGETHER = /^(\d{4}|\d{6})([NS])[\s,;/]*(\d{5}|\d{7})([EW])$/;
const DECIMALS = /^([-+]?\d{1,2}(?:\.\d+)?)(?:\s*[,;]\s*|\s+)([-+]?\d{1,3}(?:\.\d+)?)$/;

/**
 * Reads a place as a pilot types it: degrees, degrees and minutes, or degrees, minutes and seconds, with letters
 * before or after, run together as in a flight plan, or two signed decimal numbers (latitude first, north and
 * east positive).
 *
 * Refuses, with what would have been accepted, whatever can be read in two ways.
 */
export function readPlace(text: string): Result<LatLon, string> {
  const clean = text.trim().toUpperCase().replace(/−/g, '-').replace(/\s+/g, ' ');
  const decimals = DECIMALS.exec(clean);
  // Two bare whole numbers could as well be degrees and minutes of one angle.
  if (decimals && /[-+.,;]/.test(clean)) return placeOf(signed(decimals[1]), signed(decimals[2]));
  const joined = RUN_TOGETHER.exec(clean);
  const halves = joined
    ? [`${apart(joined[1])} ${joined[2] ?? ''}`, `${apart(joined[3])} ${joined[4] ?? ''}`]
    : (LETTERS_AFTER.exec(clean) ?? LETTERS_BEFORE.exec(clean))?.slice(1);
  const [latitude, longitude] = halves ?? [];
  if (latitude === undefined || longitude === undefined)
    return refuse(`A place is written like ${EXAMPLES}.`);
  return placeOf(latitude, longitude);
}

function placeOf(latitude: string, longitude: string): Result<LatLon, string> {
  const latitudeDeg = readAngle(withoutComma(latitude), 'latitude');
  if (!latitudeDeg.ok) return refuse(`Latitude: ${latitudeDeg.problem}`);
  const longitudeDeg = readAngle(withoutComma(longitude), 'longitude');
  if (!longitudeDeg.ok) return refuse(`Longitude: ${longitudeDeg.problem}`);
  return accept({ latitudeDeg: latitudeDeg.value, longitudeDeg: longitudeDeg.value });
}

/** A comma at the end only parts the halves. */
function withoutComma(half: string): string {
  return half.replace(/[\s,;/]+$/, '').trim();
}

/** Without a sign a decimal number is north or east: the sign is what two such numbers are read by. */
function signed(decimal: string | undefined): string {
  const text = decimal ?? '';
  return /^[-+]/.test(text) ? text : `+${text}`;
}

/** 0211512 as `021 15 12`: the last two figures are minutes or, of six and seven, seconds. */
function apart(figures: string | undefined): string {
  const text = figures ?? '';
  const degreeFigures = text.length % 2 === 0 ? 2 : 3;
  const rest = text.slice(degreeFigures).match(/../g) ?? [];
  return [text.slice(0, degreeFigures), ...rest].join(' ');
}
