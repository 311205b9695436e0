import { elementsOf, type Element } from '../morse.ts';
import { align, type Costs } from './align.ts';
import { LETTERS } from './letters.ts';

/**
 * Pairs of letters that listeners most often called the same, the most alike first.
 *
 * *Source:* same-different judgements of 598 listeners, E. Z. Rothkopf, "A measure of stimulus similarity
 * and errors in some paired-associate learning", Journal of Experimental Psychology 53 (1957) 94-101, as
 * published with open statistics packages (`morse`); the 32 closest pairs of letters. They had not learned
 * Morse, and the signals were fast (dots of 0.05 s), so this is where a new pilot starts, no more.
 */
export const ALIKE_PAIRS: readonly string[] = (
  'DK BX JP CY GO QZ RW BL LZ MN KX DL AI QY BD ET ' +
  'PQ PZ HV SU BZ QX XY LP CP HS CZ CL FP BF BC UV'
).split(' ');

const SWAP = 0.8;
const LONGER_RUN = 0.75;
const OTHER_ELEMENT = 1.2;
const MIRRORED = 1.1;

const COSTS: Costs<Element> = {
  swap: SWAP,
  alone: (row, index) =>
    row[index] === row[index - 1] || row[index] === row[index + 1] ? LONGER_RUN : OTHER_ELEMENT,
};

/**
 * How far apart two letters sound: 0 for a letter and itself, about 0.5 for D and K, 2 and more for
 * letters that nobody mixes up. No unit.
 *
 * Changed elements cost 0.8, a longer run of the same element 0.75, any other element 1.2, a mirror image
 * 1.1 in all; divided by the root of the longer letter's length.
 * *Source:* a proposal of this project, held against `ALIKE_PAIRS` in the tests.
 */
function patternDistance(one: string, other: string): number {
  const first = elementsOf(one)[0] ?? [];
  const second = elementsOf(other)[0] ?? [];
  const { cost } = align(first, second, COSTS);
  const isMirrored = first.join() === second.toReversed().join() && one !== other;
  const least = isMirrored ? Math.min(cost, MIRRORED) : cost;
  return least / Math.sqrt(Math.max(1, first.length, second.length));
}

/** How fast the likeness of pairs falls off that the listening data do not name. */
const FALL_OFF = 3;

/**
 * How easily one letter is taken for another before anything is known of the pilot, 0 to 1.
 *
 * Pairs of the listening data from 1 (most alike) down to 0.5; the others below, by their distance.
 */
export function similarity(one: string, other: string): number {
  if (one === other) return 1;
  const rank = ALIKE_PAIRS.findIndex((pair) => pair === one + other || pair === other + one);
  if (rank >= 0) return 1 - (0.5 * rank) / ALIKE_PAIRS.length;
  return 0.5 * Math.exp(-FALL_OFF * patternDistance(one, other));
}

/** All pairs of letters, the most alike by their elements first. */
export function pairsByDistance(): readonly string[] {
  const pairs = LETTERS.flatMap((one) =>
    LETTERS.filter((other) => other > one).map((other) => one + other),
  );
  const distance = new Map(
    pairs.map((pair) => [pair, patternDistance(pair.charAt(0), pair.charAt(1))]),
  );
  return pairs.toSorted((one, other) => (distance.get(one) ?? 0) - (distance.get(other) ?? 0));
}
