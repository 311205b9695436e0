import type { DatedLeg } from '../leg/leg-frame.ts';
import type { Aircraft, Leg } from '../leg/leg.ts';
import type { Manner } from '../speech/numbers.ts';
import type { Alert, Guidance, Question } from '../track/guidance.ts';
import type { Flag, Reading } from '../track/reading.ts';
import type { Advice } from './advice.ts';
import type { RangeFinding } from './range-finding.ts';

/** What the words of an answer are made from. */
export interface AnswerContext {
  readonly leg: DatedLeg;
  readonly aircraft: Aircraft;
  /** The leg to come, where it is known. */
  readonly next?: Leg;
  readonly guidance: Guidance;
  readonly alerts: readonly Alert[];
  /** How many readings the answer rests on. */
  readonly readingCount: number;
  /** How long nothing was read before the last reading, seconds; left out: not too long to go on from. */
  readonly unseenS?: number;
  /** The flag as it was read last; null: not yet. */
  readonly flag: Flag | null;
  /** Course set on the OBS when the leg's own station was read last; null: not read on this leg. */
  readonly courseSetDeg: number | null;
  /** The reading that is worth asking for now. */
  readonly question: Question | null;
  /** Whether a heading has ever been read; until then there is no telling how far to turn. */
  readonly isHeadingRead: boolean;
  /** The bearing-change check, where it is offered or flown. */
  readonly finding?: RangeFinding | null;
  readonly manner: Manner;
  /** The answer before, where the pilot has heard it: what has not changed is not said again. */
  readonly previous?: Advice;
}

/** What the reasons are told from, besides what the answer is made from. */
export interface WhyContext extends AnswerContext {
  /** The reading that is answered; null before the first. */
  readonly reading: Reading | null;
  /** Heading that would keep the line of the leg in the wind as far as it is known, magnetic. */
  readonly lineHeadingDeg: number;
}
