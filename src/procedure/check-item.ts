import type { Aircraft } from '../leg/leg.ts';
import type { Manner } from '../speech/numbers.ts';
import type { Wind } from '../wind/wind.ts';

/** The items of a leg's checklist, in the order in which they are read aloud. */
export const CHECK_ITEMS = ['tune', 'identify', 'flags', 'set-course', 'turn', 'look-out'] as const;

/** One item of a leg's checklist. */
export type CheckItem = (typeof CHECK_ITEMS)[number];

/** What the words of a checklist need besides the legs. */
export interface CheckContext {
  readonly aircraft: Aircraft;
  /** Day of the flight, `2026-11-25`. */
  readonly dateIso: string;
  readonly manner: Manner;
  /** The wind carried over from the leg before, or else the forecast; left out: none is known. */
  readonly wind?: Wind;
  /** Heading that the standing answer gives for this leg, magnetic; left out: along the course in the wind. */
  readonly headingAdvisedDeg?: number;
  /** Heading being flown, magnetic, where it is known: the turn is then spoken with its side. */
  readonly headingNowDeg?: number;
}
