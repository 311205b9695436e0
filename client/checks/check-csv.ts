import { stringify } from 'csv-stringify/browser/esm/sync';
import type { LoggedCheck } from '../../src/station/library/check-log.ts';
import { outcomeOf } from '../../src/station/library/receiver-check.ts';
import { KIND_WORDS, rulesWords } from './check-words.ts';

const COLUMNS: readonly (readonly [string, (logged: LoggedCheck) => unknown])[] = [
  ['date_utc', ({ check }) => check.dateIso],
  ['time_utc', ({ check }) => check.timeUtc],
  ['aircraft', ({ check }) => check.aircraft],
  ['place', ({ check }) => check.place],
  ['kind', ({ check }) => KIND_WORDS[check.kind].name],
  ['station', ({ check }) => check.station],
  ['receiver', ({ check }) => check.receiver],
  ['other_receiver', ({ check }) => check.otherReceiver],
  ['expected_deg', ({ check }) => check.expectedDeg],
  ['indicated_deg', ({ check }) => check.indicatedDeg],
  ['error_deg', ({ check }) => outcomeOf(check).errorDeg],
  ['permitted_deg', ({ check }) => outcomeOf(check).permittedDeg],
  ['result', ({ check }) => RESULTS[String(outcomeOf(check).isPassed)]],
  ['rule', ({ check }) => rulesWords(check.rules)],
  ['who', ({ check }) => check.who],
  ['struck_through', ({ struckAtMs }) => (struckAtMs === null ? '' : 'yes')],
];

const RESULTS: Readonly<Record<string, string>> = {
  true: 'pass',
  false: 'fail',
  null: 'no figure',
};

/** The log as CSV (RFC 4180), the newest check first, those struck through marked as such. */
export function checksCsv(checks: readonly LoggedCheck[]): string {
  const rows = checks.map((each) => COLUMNS.map(([, value]) => value(each)));
  return stringify([COLUMNS.map(([name]) => name), ...rows], {
    record_delimiter: 'windows',
    // A text that begins like a formula is not one to a spreadsheet.
    escape_formulas: true,
    cast: { number: (value) => ({ value: String(value), escape_formulas: false }) },
  });
}
