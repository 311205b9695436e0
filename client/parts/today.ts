/** The day of a moment where this device is, `2026-11-25`. */
export function todayIso(atMs: number): string {
  const day = new Date(atMs);
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
}
