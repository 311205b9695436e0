import { assert } from '../base/assert.ts';
import type { Element } from './morse.ts';
import { elementsOf } from './morse.ts';
import { IDENT_LIMITS } from './limits.ts';

/** One keying of the tone. */
export interface Mark {
  /** Seconds from the start of the first mark. */
  readonly startS: number;
  readonly durationS: number;
  readonly element: Element;
  /** Which letter of the ident it belongs to, from 0; counts on from the start at each repeat. */
  readonly letterIndex: number;
}

/** How an ident is keyed; what is left out is as usual for a VOR. */
export interface Keying {
  readonly wpm?: number;
  /** How often the ident is keyed. */
  readonly repeats?: number;
  /** From the start of one ident to the start of the next, seconds. */
  readonly intervalS?: number;
}

/** Lengths in dots. *Source:* ITU-R M.1677-1, annex 1, spacing and length of the signals. */
const UNITS = { dot: 1, dash: 3, elementGap: 1, letterGap: 3, wordGap: 7 } as const;

/** Quiet between two idents when the interval is too short for a slow one, seconds. */
const LEAST_REST_S = 2;

/** Dots in the word PARIS with its closing word gap, that one word a minute stands for. */
const DOTS_PER_WORD = 50;

/** Length of one dot in seconds: 1.2 / wpm (speed counted in the word PARIS). */
export function dotS(wpm: number): number {
  assert(wpm > 0 && Number.isFinite(wpm), `keying speed is above zero, not ${wpm}`);
  return 60 / (DOTS_PER_WORD * wpm);
}

/** The gap between words, 7 dots, seconds: the least quiet that sets an ident apart. */
export function wordGapS(wpm: number): number {
  return UNITS.wordGap * dotS(wpm);
}

/**
 * When the tone is on, for an ident keyed once: dots and dashes with their gaps.
 *
 * Seconds, the first mark at 0. Speed in words a minute, 7 when left out. An ident without letters or
 * figures gives no marks.
 * *Source:* ITU-R M.1677-1, annex 1: dash 3 dots; gaps 1 dot in a letter, 3 between letters.
 */
export function identTimeline(ident: string, keying: Pick<Keying, 'wpm'> = {}): Mark[] {
  const unitS = dotS(keying.wpm ?? IDENT_LIMITS.wpm.usual);
  const marks: Mark[] = [];
  let units = 0;
  for (const [letterIndex, elements] of elementsOf(ident).entries()) {
    for (const element of elements) {
      marks.push({
        startS: units * unitS,
        durationS: UNITS[element] * unitS,
        element,
        letterIndex,
      });
      units += UNITS[element] + UNITS.elementGap;
    }
    units += UNITS.letterGap - UNITS.elementGap;
  }
  return marks;
}

/**
 * The same ident keyed several times, each from the start of its interval.
 *
 * Where the ident is longer than the interval, the next one follows after a word gap and at least two
 * seconds of quiet, so that two idents never run into one.
 */
export function repeatedTimeline(ident: string, keying: Keying = {}): Mark[] {
  const once = identTimeline(ident, keying);
  const wpm = keying.wpm ?? IDENT_LIMITS.wpm.usual;
  const restS = Math.max(wordGapS(wpm), LEAST_REST_S);
  const askedS = keying.intervalS ?? IDENT_LIMITS.intervalS.usual;
  const intervalS = Math.max(askedS, timelineLengthS(once) + restS);
  const repeats = keying.repeats ?? IDENT_LIMITS.repeats.usual;
  return Array.from({ length: repeats }, (_, repeat) =>
    once.map((mark) => ({ ...mark, startS: mark.startS + repeat * intervalS })),
  ).flat();
}

/** From the start of the first mark to the end of the last, seconds; 0 without marks. */
export function timelineLengthS(marks: readonly Mark[]): number {
  const last = marks.at(-1);
  return last === undefined ? 0 : last.startS + last.durationS;
}
