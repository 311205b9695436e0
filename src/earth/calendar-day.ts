/**
 * Whole days from one day of the calendar to another; negative when the second comes first.
 *
 * Both `YYYY-MM-DD`, days of the calendar (`decimalYear` refuses others).
 */
export function daysBetween(fromIso: string, toIso: string): number {
  return julianDay(toIso) - julianDay(fromIso);
}

/** The day so many whole days after another, `YYYY-MM-DD`; `days` may be negative. */
export function dayLater(dateIso: string, days: number): string {
  // *Source:* as below, the way back.
  const l = julianDay(dateIso) + days + 68_569;
  const n = Math.floor((4 * l) / 146_097);
  const inCentury = l - Math.floor((146_097 * n + 3) / 4);
  const i = Math.floor((4000 * (inCentury + 1)) / 1_461_001);
  const inYear = inCentury - Math.floor((1461 * i) / 4) + 31;
  const j = Math.floor((80 * inYear) / 2447);
  const k = Math.floor(j / 11);
  const day = inYear - Math.floor((2447 * j) / 80);
  return `${figures(100 * (n - 49) + i + k, 4)}-${figures(j + 2 - 12 * k, 2)}-${figures(day, 2)}`;
}

/**
 * The number of a day of the Gregorian calendar: its Julian day at noon.
 *
 * *Source:* H. F. Fliegel, T. C. Van Flandern, "A machine algorithm for processing calendar dates",
 * Communications of the ACM 11 (1968) 657; from memory, held against the calendar of the machine in tests.
 */
function julianDay(dateIso: string): number {
  const [year = 0, month = 0, day = 0] = dateIso.split('-').map(Number);
  const before = Math.trunc((month - 14) / 12);
  return (
    day -
    32_075 +
    Math.floor((1461 * (year + 4800 + before)) / 4) +
    Math.floor((367 * (month - 2 - before * 12)) / 12) -
    Math.floor((3 * Math.floor((year + 4900 + before) / 100)) / 4)
  );
}

function figures(value: number, count: number): string {
  return String(value).padStart(count, '0');
}
