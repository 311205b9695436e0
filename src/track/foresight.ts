import type { Flag } from './reading.ts';
import type { HowFar, Phase } from './guidance.ts';

/** What the panel should show at some later moment if the last advice is being flown. */
export interface Foresight {
  /** Heading that the advice has the pilot hold by then, magnetic. */
  readonly headingDeg: number;
  /** Dots, clipped to full deflection; null where the needle tells nothing (cone, no picture yet). */
  readonly needleDots: number | null;
  readonly flag: Flag;
  /** Null without DME or while the range is unknown. */
  readonly dmeNm: number | null;
  readonly howFar: HowFar;
  readonly phase: Phase;
}
