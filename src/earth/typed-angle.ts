import { accept, refuse, type Result } from '../base/result.ts';

const SIDES = {
  latitude: { plus: 'N', minus: 'S', most: 90, example: '46.5 N, 46 30.0 N or 46 30 00 N' },
  longitude: { plus: 'E', minus: 'W', most: 180, example: '21.25 W, 21 15.0 W or 21 15 00 W' },
  declination: { plus: 'E', minus: 'W', most: 180, example: '7 W or 2.5 E' },
} as const;

/**
 * Reads an angle as a pilot types it: decimal degrees, degrees and minutes, or degrees, minutes and
 * seconds, with its letter (N, S, E, W, before or after) or its sign. Degrees, north and east positive.
 *
 * Refuses with what would have been accepted. A number without letter or sign other than 0 is refused
 * too: a west written as an east puts the station an ocean away.
 */
export function readAngle(text: string, side: keyof typeof SIDES): Result<number, string> {
  const { plus, minus, most, example } = SIDES[side];
  const expected = `Write it like ${example}.`;
  const clean = text.trim().toUpperCase().replace(/−/g, '-').replace(/,/g, '.');
  const size = sizeOf(clean);
  if (size === null) return refuse(expected);
  if (size > most) return refuse(`At most ${most} degrees.`);
  if (size === 0) return accept(0);
  const sign = signOf(clean, plus, minus);
  return sign === null ? refuse(`${plus} or ${minus}? ${expected}`) : accept(size * sign);
}

/** Degrees, minutes and seconds put together; null where they are not written as such. */
function sizeOf(clean: string): number | null {
  const numbers = clean.match(/\d+(\.\d+)?/g)?.map(Number) ?? [];
  if (numbers.length === 0 || numbers.length > 3) return null;
  if (/[^\d.\s\-+°'’′"”″A-Z]/.test(clean)) return null;
  const [degrees = 0, minutes = 0, seconds = 0] = numbers;
  const isWhole = numbers.slice(0, -1).every((each) => Number.isInteger(each));
  return isWhole && minutes < 60 && seconds < 60 ? degrees + minutes / 60 + seconds / 3600 : null;
}

function signOf(clean: string, plus: string, minus: string): 1 | -1 | null {
  const letters = clean.replace(/[^A-Z]/g, '');
  if (letters === plus) return 1;
  if (letters === minus) return -1;
  if (letters !== '') return null;
  if (clean.startsWith('-')) return -1;
  return clean.startsWith('+') ? 1 : null;
}

/** A number as typed: a comma counts as the decimal sign, thousands may stand apart. NaN: none. */
export function readNumber(text: string): number {
  const clean = text
    .trim()
    .replace(/−/g, '-')
    .replace(/^(-?\d{1,3}),(\d{3})$/, '$1$2')
    .replace(',', '.');
  return /^[-+]?(\d+\.?\d*|\.\d+)$/.test(clean) ? Number(clean) : Number.NaN;
}
