import type { Aircraft, Leg } from '../leg/leg.ts';
import type { CheckItem } from '../procedure/checklist.ts';
import type { Flag } from '../track/reading.ts';
import type { Station } from '../station/station.ts';
import type { Wind } from '../wind/wind.ts';

/** What every event carries: a ULID made where the event was born, and when that was. */
interface Stamp {
  readonly id: string;
  readonly atMs: number;
}

/** The wind forecast for one leg alone. */
export interface LegWind {
  /** From 0. */
  readonly legIndex: number;
  readonly wind: Wind;
}

/** The legs, the aircraft and the wind that the flight starts from; a later one replaces it. */
export interface PlanEvent extends Stamp {
  readonly kind: 'plan';
  readonly name: string;
  readonly legs: readonly Leg[];
  readonly aircraft: Aircraft;
  readonly forecastWind?: Wind;
  /** Forecasts of single legs; `forecastWind` holds for the others. */
  readonly legWinds?: readonly LegWind[];
  /** Day of the flight (`2026-11-25`): magnetic variation is taken for it. */
  readonly dateIso: string;
}

/** The fields of a reading; what was not said is left out, the fold fills in what has not changed. */
export interface ReadingFields {
  readonly headingDeg?: number;
  readonly courseSetDeg?: number;
  readonly needleDots?: number;
  readonly flag?: Flag;
  readonly dmeNm?: number;
  readonly station?: Station;
}

/** A reading as tapped, typed or heard. `text` keeps the sentence that it came from. */
export interface ReadingEvent extends Stamp, ReadingFields {
  readonly kind: 'reading';
  readonly via?: 'tapped' | 'typed' | 'heard';
  readonly text?: string;
}

/** Replaces all fields of an earlier reading; its time stays. */
export interface ReadingCorrectedEvent extends Stamp, ReadingFields {
  readonly kind: 'reading-corrected';
  readonly readingId: string;
}

/** Takes an earlier event back (an undo is itself an event: nothing recorded is ever lost). */
interface TakenBackEvent extends Stamp {
  readonly kind: 'taken-back';
  readonly eventId: string;
}

/** One item of a leg's checklist done, skipped with a reason, or opened again. */
export interface CheckEvent extends Stamp {
  readonly kind: 'check';
  readonly legIndex: number;
  readonly item: CheckItem;
  readonly outcome: 'done' | 'skipped' | 'reopened';
  readonly reason?: string;
}

/** The ident of a leg's station was heard and is right, or is in doubt again. */
export interface IdentEvent extends Stamp {
  readonly kind: 'ident';
  readonly legIndex: number;
  readonly outcome: 'confirmed' | 'doubted';
  readonly by: 'ear' | 'tool';
  /** By the tool: how probable it held the expected ident to be, 0 to 1. */
  readonly confidence?: number;
}

/** The pilot starts to fly this leg (the station passage starts the next one by itself). */
export interface LegStartedEvent extends Stamp {
  readonly kind: 'leg-started';
  readonly legIndex: number;
}

/** A remark of the pilot. */
interface NoteEvent extends Stamp {
  readonly kind: 'note';
  readonly text: string;
}

/** The flight is over. */
interface FinishedEvent extends Stamp {
  readonly kind: 'finished';
}

/** One line of a flight's append-only log. */
export type FlightEvent =
  | PlanEvent
  | ReadingEvent
  | ReadingCorrectedEvent
  | TakenBackEvent
  | CheckEvent
  | IdentEvent
  | LegStartedEvent
  | NoteEvent
  | FinishedEvent;
