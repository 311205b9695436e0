import { accept, refuse, type Result } from '../base/result.ts';

const DAYS_BEFORE_MONTH = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365] as const;

/** Whether February has 29 days. *Source:* Gregorian calendar, as in ISO 8601-1:2019, 4.2.1. */
function isLeapYear(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/** Days of the year that are over when the month begins; month 13 gives the length of the year. */
function daysBefore(month: number, year: number): number {
  return (DAYS_BEFORE_MONTH[month - 1] ?? 0) + (month > 2 && isLeapYear(year) ? 1 : 0);
}

/**
 * A calendar day as decimal year: 2025-01-01 is 2025.0, 2026-07-02 is 2026.4986.
 *
 * `dateIso`: `YYYY-MM-DD`. The hour does not matter here: variation changes by less than 0.01 degrees
 * a day wherever a compass works. Refuses, with the given field name, what is no day of the calendar.
 */
export function decimalYear(dateIso: string, field = 'dateIso'): Result<number> {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(dateIso);
  const [year, month, day] = (parts ?? []).slice(1).map(Number);
  if (year !== undefined && month !== undefined && day !== undefined && month >= 1 && month <= 12) {
    const over = daysBefore(month, year);
    if (day >= 1 && day <= daysBefore(month + 1, year) - over) {
      return accept(year + (over + day - 1) / daysBefore(13, year));
    }
  }
  const expected = 'a day of the calendar, written like 2026-11-25';
  return refuse([{ field, expected, got: dateIso }]);
}
