import { accept, refuse, type Result } from '../../src/base/result.ts';
import type { AirspeedRead } from '../../src/wind/airspeed.ts';
import type { NamedAircraft, Settings } from './settings-record.ts';

type Check<Value> = (value: unknown) => value is Value;

const isBetween =
  (low: number, high: number): Check<number> =>
  (value): value is number =>
    typeof value === 'number' && value >= low && value <= high;

const isOneOf =
  <Word extends string>(...words: readonly Word[]): Check<Word> =>
  (value): value is Word =>
    words.some((word) => word === value);

const isYesNo: Check<boolean> = (value) => typeof value === 'boolean';
const isText: Check<string> = (value) => typeof value === 'string';

const orNull =
  <Value>(check: Check<Value>): Check<Value | null> =>
  (value): value is Value | null =>
    value === null || check(value);

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isAircraft(value: unknown): value is NamedAircraft {
  return (
    isRecord(value) &&
    isText(value['name']) &&
    value['name'].trim() !== '' &&
    isBetween(30, 500)(value['trueAirspeedKt']) &&
    isBetween(0.1, 10)(value['degreesPerDot']) &&
    isBetween(1, 10)(value['dotsFullScale']) &&
    (value['airspeedFrom'] === undefined || isAirspeedRead(value['airspeedFrom']))
  );
}

function isAirspeedRead(value: unknown): value is AirspeedRead {
  if (!isRecord(value)) return false;
  const { calibratedAirspeedKt, pressureAltitudeFt, temperatureC } = value;
  return (
    isBetween(0, 600)(calibratedAirspeedKt) &&
    isBetween(-2000, 60_000)(pressureAltitudeFt) &&
    (temperatureC === undefined || isBetween(-90, 60)(temperatureC))
  );
}

const isHangar: Check<readonly NamedAircraft[]> = (value): value is readonly NamedAircraft[] =>
  Array.isArray(value) && value.length > 0 && value.every(isAircraft);

const checks: { readonly [Name in keyof Settings]: Check<Settings[Name]> } = {
  aircraft: isHangar,
  chosenAircraft: isText,
  decimalWord: isOneOf('decimal', 'point'),
  voiceOn: isYesNo,
  voiceName: orNull(isText),
  rate: isBetween(0.5, 1.5),
  volume: isBetween(0, 1),
  palette: isOneOf('day', 'night', 'auto'),
  identWpm: isBetween(5, 15),
  identAgainMin: isBetween(0, 60),
  cautionsReadAtMs: orNull(isBetween(0, Number.MAX_SAFE_INTEGER)),
};

/**
 * Reads stored settings. A setting that is missing (stored by an older edition) takes its default and
 * unknown ones are left behind; one that is there but wrong makes the whole text refused, with the reason.
 */
export function readSettings(text: string, defaults: Settings): Result<Settings, string> {
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch {
    return refuse('not JSON');
  }
  if (!isRecord(raw)) return refuse('not a list of settings');
  const wrong = Object.entries(checks).find(([name, check]) => name in raw && !check(raw[name]));
  if (wrong !== undefined) return refuse(`"${wrong[0]}" has an impossible value`);
  const known = Object.entries(raw).filter(([name]) => name in checks);
  return accept({ ...defaults, ...(Object.fromEntries(known) as Partial<Settings>) });
}
