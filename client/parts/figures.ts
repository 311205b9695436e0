import { turnDeg, wrap360 } from '../../src/base/angle.ts';

/** A direction in three figures; north is 360. */
export function threeFigures(bearingDeg: number): string {
  const whole = wrap360(Math.round(bearingDeg));
  return String(whole === 0 ? 360 : whole).padStart(3, '0');
}

/** Minutes and seconds, `1:15`; an hour and more `1:02:05`. */
export function minutesSeconds(durationS: number): string {
  const whole = Math.max(0, Math.round(durationS));
  const seconds = String(whole % 60).padStart(2, '0');
  const minutes = Math.floor(whole / 60);
  if (minutes < 60) return `${minutes}:${seconds}`;
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}:${seconds}`;
}

/** A distance with one decimal, `11.1`. */
export function oneDecimal(value: number): string {
  return value.toFixed(1);
}

/** Half dots as a reader writes them: `1½`, `½`, `2`. */
function halves(dots: number): string {
  const half = Math.round(Math.abs(dots) * 2) / 2;
  const whole = Math.floor(half);
  if (half === whole) return String(whole);
  return whole === 0 ? '½' : `${whole}½`;
}

/** Where the needle stands, in words. */
export function needleWords(dots: number | null | undefined, dotsFullScale: number): string {
  if (dots === null || dots === undefined) return 'not read';
  if (Math.abs(dots) < 0.25) return 'centred';
  const side = dots < 0 ? 'left' : 'right';
  if (Math.abs(dots) >= dotsFullScale) return `full scale ${side}`;
  return `${halves(dots)} ${Math.abs(dots) <= 1 ? 'dot' : 'dots'} ${side}`;
}

/** The wind as it is said: from, three figures, and knots. */
export function windFigures(fromDegMag: number, speedKt: number): string {
  return `${threeFigures(fromDegMag)}/${String(Math.round(speedKt)).padStart(2, '0')}`;
}

/** The turn from one heading to another, whole degrees. */
export function turnBetween(
  fromDeg: number,
  toDeg: number,
): { readonly turn: 'left' | 'right' | 'none'; readonly turnDeg: number } {
  const signed = Math.round(turnDeg(fromDeg, toDeg));
  if (signed === 0) return { turn: 'none', turnDeg: 0 };
  return { turn: signed < 0 ? 'left' : 'right', turnDeg: Math.abs(signed) };
}

/** An altitude with its thousands apart: `4,500 ft`. */
export function feet(altitudeFt: number): string {
  return `${Math.round(altitudeFt).toLocaleString('en')} ft`;
}

/** A frequency as it stands on the receiver, `113.35`. */
export function megahertz(frequencyMhz: number): string {
  return frequencyMhz.toFixed(2);
}

/** A moment as the time of day, `14:32:10`, UTC. */
export function timeOfDay(atMs: number): string {
  return new Date(atMs).toISOString().slice(11, 19);
}

/** How long ago, in words: `just now`, `4 min ago`, `2 h ago`. */
export function ago(atMs: number, nowMs: number): string {
  const minutes = Math.floor((nowMs - atMs) / 60_000);
  if (minutes < 1) return 'just now';
  return minutes < 60 ? `${minutes} min ago` : `${Math.floor(minutes / 60)} h ago`;
}
