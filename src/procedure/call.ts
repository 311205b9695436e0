import type { DatedLeg } from '../leg/leg-frame.ts';
import type { Leg } from '../leg/leg.ts';
import type { Manner } from '../speech/numbers.ts';
import type { Estimate } from '../track/estimate.ts';
import type { Advice } from './advice.ts';
import type { IdentKept } from './ident-kept.ts';

/** Something to say at a moment between two readings. */
export interface Call {
  /** Stable: the same call-out has the same key however often the estimate moves it. */
  readonly key: string;
  /** When it is to be said. */
  readonly atMs: number;
  /** After this moment it is stale and must not be said any more. */
  readonly untilMs: number;
  /** As spoken: figures as words. */
  readonly say: string;
  /** `now`: act on it at once. `soon`: prepare. `routine`: when the voice is free. */
  readonly urgency: 'now' | 'soon' | 'routine';
}

/** What the call-outs between two readings are foreseen from. */
export interface CallContext {
  readonly leg: DatedLeg;
  /** The leg after it. */
  readonly next?: Leg;
  readonly legIndex: number;
  /** Whether the flight ends with this leg: its end is then the destination. */
  readonly isLastLeg: boolean;
  readonly estimate: Estimate;
  /** The answer that stands, and the moment of the reading that it answers. */
  readonly advice: Advice;
  readonly answeredAtMs: number;
  readonly manner: Manner;
  /** Left out: the ident is not asked for. */
  readonly ident?: IdentKept;
}

/** What is called at a distance from the end of the leg. */
export interface Mark {
  readonly key: string;
  readonly toGoNm: number;
  readonly urgency: Call['urgency'];
  readonly say: string;
}

/** How long a call-out stays true enough to be said, ms. Common practice, no source. */
const GOOD_FOR_MS = { now: 12_000, soon: 15_000, routine: 30_000 } as const;

/** A call-out with the time until which it may be said. */
export function callAt(key: string, atMs: number, urgency: Call['urgency'], say: string): Call {
  return { key, atMs, untilMs: atMs + GOOD_FOR_MS[urgency], say, urgency };
}

/** Whether the leg ends over its station, where the flag tells the passage. */
export function endsOverStation({ leg }: CallContext): boolean {
  return leg.leg.direction === 'to' && leg.endGroundNm === 0;
}
