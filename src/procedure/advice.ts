import type { Alert, EstimateSeen, HowFar, Phase, WhichWay } from '../track/guidance.ts';

/**
 * The answer to a reading: how far to go, which way to correct, what does not fit, and the words.
 * The same record leaves `POST /api/advice` and is shown on the Fly page.
 */
export interface Advice {
  readonly phase: Phase;
  readonly howFar: HowFar;
  readonly whichWay: WhichWay;
  readonly estimate: EstimateSeen;
  readonly alerts: readonly Alert[];
  /** What the voice says: short sentences, figures as words. */
  readonly say: string;
  /** One or two sentences that a pilot would say when asked why. */
  readonly why: string;
  /** When the next reading is worth most, seconds after the last one. */
  readonly nextReadingInS: number;
}
