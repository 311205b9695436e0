import type { Leg } from '../leg/leg.ts';
import { CHECK_ITEMS } from './check-item.ts';
import type { CheckContext, CheckItem } from './check-item.ts';
import { lineFor } from './check-line.ts';

export { CHECK_ITEMS } from './check-item.ts';
export type { CheckContext, CheckItem } from './check-item.ts';

/** What became of one item of the checklist. */
export interface CheckRecord {
  readonly outcome: 'done' | 'skipped';
  readonly atMs: number;
  readonly reason?: string;
}

/** How far the checklist of one leg has come. */
export interface CheckProgress {
  readonly checks: Readonly<Partial<Record<CheckItem, CheckRecord>>>;
  /** When the ident was confirmed by ear or by the tool; null: not yet, or in doubt again. */
  readonly identConfirmedAtMs: number | null;
  /** When the flag turned to FROM overhead, where the leg ends over its station. */
  readonly passageAtMs?: number | null;
}

/** One line of a leg's checklist. */
export interface CheckLine {
  readonly item: CheckItem;
  /** As spoken: figures as words. */
  readonly say: string;
  /** The same for the page, short, in figures. */
  readonly show: string;
  readonly state: 'open' | 'done' | 'skipped';
  /** Why it was skipped. */
  readonly reason: string | null;
  /** True on the one item that only an ident heard and right completes. */
  readonly needsIdent: boolean;
}

/** Whether two legs are flown on the same tuning: same ident, place and frequency. */
export function isSameTuning(a: Leg, b: Leg): boolean {
  return (
    a.station.ident === b.station.ident &&
    a.station.latitudeDeg === b.station.latitudeDeg &&
    a.station.longitudeDeg === b.station.longitudeDeg &&
    a.station.frequencyMhz === b.station.frequencyMhz
  );
}

/**
 * The checklist of one leg, in the order in which it is read aloud.
 *
 * A leg on the station of the leg before, whose ident stands, leaves out tuning, identifying and the
 * flags. `progress`: one for each leg. A `legIndex` outside the plan gives no lines.
 */
export function checklistFor(
  legs: readonly Leg[],
  legIndex: number,
  progress: readonly CheckProgress[],
  context: CheckContext,
): readonly CheckLine[] {
  const leg = legs[legIndex];
  if (leg === undefined) return [];
  const own = progress[legIndex];
  const before = legs[legIndex - 1];
  const hasPassed =
    before !== undefined &&
    isSameTuning(leg, before) &&
    typeof progress[legIndex - 1]?.passageAtMs === 'number';
  return itemsFor(legs, legIndex, progress).map((item) => {
    const record = own?.checks[item];
    return {
      item,
      ...lineFor(item, { leg, hasPassed, context }),
      state: item === 'identify' ? identifyState(own) : (record?.outcome ?? 'open'),
      reason: record?.outcome === 'skipped' ? (record.reason ?? null) : null,
      needsIdent: item === 'identify',
    };
  });
}

/** The first line that is neither done nor skipped; null when the list is complete. */
export function nextItem(lines: readonly CheckLine[]): CheckLine | null {
  return lines.find((line) => line.state === 'open') ?? null;
}

/**
 * Whether an outcome counts. Identify is a gate: it is done only when the ident has been confirmed by ear
 * or by the tool, and skipped only with a reason; every other item may be ticked or skipped freely.
 */
export function checkCounts(
  item: CheckItem,
  outcome: 'done' | 'skipped' | 'reopened',
  reason: string | undefined,
  isIdentConfirmed: boolean,
): boolean {
  if (item !== 'identify' || outcome === 'reopened') return true;
  return outcome === 'done' ? isIdentConfirmed : (reason ?? '').trim() !== '';
}

function itemsFor(
  legs: readonly Leg[],
  legIndex: number,
  progress: readonly CheckProgress[],
): readonly CheckItem[] {
  const leg = legs[legIndex];
  const before = legs[legIndex - 1];
  const isTuned =
    leg !== undefined &&
    before !== undefined &&
    isSameTuning(leg, before) &&
    typeof progress[legIndex]?.identConfirmedAtMs === 'number';
  return isTuned ? ['set-course', 'turn', 'look-out'] : CHECK_ITEMS;
}

function identifyState(own: CheckProgress | undefined): CheckLine['state'] {
  if (typeof own?.identConfirmedAtMs === 'number') return 'done';
  return own?.checks.identify?.outcome === 'skipped' ? 'skipped' : 'open';
}
