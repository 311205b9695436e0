import type { Advice } from '../procedure/advice.ts';
import type { CheckItem, CheckRecord } from '../procedure/checklist.ts';
import type { FieldProblem } from '../base/result.ts';
import type { Estimate } from '../track/estimate.ts';
import type { Reading } from '../track/reading.ts';
import type { PlanEvent, ReadingFields } from './event.ts';

/** One reading of the flight, with the answer that it gave. */
export interface ReadingRecord {
  readonly eventId: string;
  readonly atMs: number;
  readonly legIndex: number;
  /** As given, or as corrected since. */
  readonly fields: ReadingFields;
  /** With what the fold filled in (flag and course set stay until read anew). */
  readonly reading: Reading;
  readonly text?: string;
  readonly isCorrected: boolean;
  /** Taken back by the pilot: stays in the list, counts for nothing. */
  readonly isTakenBack: boolean;
  /** Why it counts for nothing though it stays in the log; empty when it counts or is taken back. */
  readonly problem: readonly FieldProblem[];
  /** Null when taken back, when it has a problem, or when it came before the plan. */
  readonly advice: Advice | null;
}

/** How far one leg has come. */
export interface LegProgress {
  readonly checks: Readonly<Partial<Record<CheckItem, CheckRecord>>>;
  readonly identConfirmedAtMs: number | null;
  readonly startedAtMs: number | null;
  /** On a `to` leg: when the flag turned to FROM overhead. */
  readonly passageAtMs: number | null;
}

/** What the log of a flight comes to: never stored, always folded from the events. */
export interface FlightState {
  readonly plan: PlanEvent | null;
  /** The leg being flown. */
  readonly legIndex: number;
  /** One for each leg of the plan. */
  readonly legs: readonly LegProgress[];
  /** In time order, taken-back ones included. */
  readonly readings: readonly ReadingRecord[];
  /** Of the leg being flown; null before its first reading when nothing is carried over. */
  readonly estimate: Estimate | null;
  /** The answer that stands; null before the first reading. */
  readonly advice: Advice | null;
  readonly notes: readonly {
    readonly eventId: string;
    readonly atMs: number;
    readonly text: string;
  }[];
  readonly finishedAtMs: number | null;
  /** The last event that an undo would take back, with what it was, in words; null: nothing to undo. */
  readonly undoable: { readonly eventId: string; readonly what: string } | null;
}
