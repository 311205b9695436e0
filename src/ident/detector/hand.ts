import type { Stretch } from './amplitude.ts';
import type { Edges } from './edges.ts';
import { plus } from './ident-loop.ts';
import type { Level } from './letter-tables.ts';
import { LETTERS, TREE } from './letter-tree.ts';
import { keyOfLetters } from './likely-idents.ts';
import type { IdentKey } from './likely-idents.ts';
import { markEvidence } from './mark-sums.ts';
import { restS } from './occurrences.ts';
import { dotSOf, spanLogDensity, unknownTiming } from './timing.ts';
import type { Span, Timing } from './timing.ts';

/** An ident keyed by hand, read from edges. */
export interface HandIdent {
  readonly letters: readonly number[];
  readonly key: IdentKey;
  /** Frames. */
  readonly from: number;
  readonly to: number;
  /** Evidence of its marks and of their timing, nats. */
  readonly score: number;
  readonly timing: Timing;
  readonly last: Beginning;
}

/** A beginning of an ident that ends with a mark or with a gap. */
export interface Beginning {
  readonly before: Beginning | null;
  readonly from: number;
  /** Evidence of the idents that came before, nats: part of the score. */
  readonly earlier: number;
  /** Where the last mark began and ended, frames. */
  readonly markFrom: number;
  readonly markTo: number;
  readonly letters: readonly number[];
  /** Node of the letter under way; -1 between letters. */
  readonly node: number;
  readonly score: number;
  readonly timing: Timing;
}

/** So many beginnings are kept at each edge, and none that is worse than the best by more, nats. */
const KEPT = 30;
const WITHIN = 18;

/** Longest dash and longest gap inside an ident, seconds. */
const LONGEST_S = 1.25;
const LONGEST_GAP_S = 1.4;

const MOST_LETTERS = 4;

/** Children of a node by element, and letters by node. */
const CHILDREN = new Map(TREE.map((node, index) => [`${node.parent}${node.last}`, index]));
const LETTER_AT = new Map(LETTERS.map(({ node }, index) => [node, index]));

/**
 * Idents whose marks begin and end at the edges given, with timing that is learnt on the way.
 *
 * A search from edge to edge that keeps the best beginnings. `levels`: the evidence for marks.
 */
export function handIdents(edges: Edges, levels: readonly Level[], frameS: number): HandIdent[] {
  const { ups, downs } = edges;
  const atUp: Beginning[][] = Array.from(ups, () => []);
  const atDown: Beginning[][] = Array.from(downs, () => []);
  const scratch = unknownTiming();
  const atUps = { at: atUp, most: new Float64Array(ups.length), scratch };
  const atDowns = { at: atDown, most: new Float64Array(downs.length).fill(-Infinity), scratch };
  const finished: HandIdent[] = [];
  const rested = { most: 0, later: [] as Rest[] };
  let up = 0;
  let down = 0;
  while (up < ups.length || down < downs.length) {
    const rise = ups[up] ?? Infinity;
    const fall = downs[down] ?? Infinity;
    if (rise < fall) {
      // After a rest an ident may begin: it has to stand beside those that go on, so it brings what came before.
      wait(atUps, up, mostBefore(rested, rise), () => beginningAt(rise, rested.most));
      for (const each of best(atUp[up] ?? [])) {
        addMarks(each, rise, { downs, first: down, waiting: atDowns, levels, frameS });
      }
      up += 1;
    } else {
      for (const each of best(atDown[down] ?? [])) {
        for (const ident of finishedBy(each)) {
          finished.push(ident);
          const endFrame = ident.to + restS(dotSOf(ident.timing)) / frameS;
          rested.later.push({ endFrame, score: each.score });
        }
        addGaps(each, fall, { ups, first: up, waiting: atUps, frameS });
      }
      down += 1;
    }
  }
  return finished;
}

/** When the rest after an ident ends, and the evidence of all idents up to there. */
interface Rest {
  readonly endFrame: number;
  readonly score: number;
}

/** The most evidence of idents whose rest has ended by now; keeps the others for later. */
function mostBefore(rested: { most: number; later: Rest[] }, frame: number): number {
  const isOver = ({ endFrame }: Rest): boolean => endFrame <= frame;
  for (const { score } of rested.later.filter(isOver)) rested.most = Math.max(rested.most, score);
  rested.later = rested.later.filter((rest) => !isOver(rest));
  return rested.most;
}

function beginningAt(from: number, earlier: number): Beginning {
  const timing = unknownTiming();
  return {
    before: null,
    from,
    markFrom: from,
    markTo: from,
    letters: [],
    node: -1,
    score: earlier,
    earlier,
    timing,
  };
}

function best(all: Beginning[]): Beginning[] {
  all.sort((a, b) => b.score - a.score);
  const least = (all[0]?.score ?? 0) - WITHIN;
  return all.slice(0, KEPT).filter(({ score }) => score >= least);
}

/** Where beginnings wait at each edge, with the score of the best there, and room to reckon in. */
interface Waiting {
  readonly at: readonly Beginning[][];
  readonly most: Float64Array;
  readonly scratch: Timing;
}

/** Lets a beginning wait at an edge unless it is hopeless beside the best one there. */
function wait(waiting: Waiting, edge: number, score: number, grown: () => Beginning): void {
  const most = waiting.most[edge] ?? 0;
  if (score < most - WITHIN) return;
  if (score > most) waiting.most[edge] = score;
  waiting.at[edge]?.push(grown());
}

interface MarksOnward {
  readonly downs: Float64Array;
  readonly first: number;
  readonly waiting: Waiting;
  readonly levels: readonly Level[];
  readonly frameS: number;
}

function addMarks(each: Beginning, from: number, onward: MarksOnward): void {
  const { downs, waiting, levels, frameS } = onward;
  for (let n = onward.first; n < downs.length; n += 1) {
    const to = downs[n] ?? 0;
    const durationS = (to - from) * frameS;
    if (durationS > LONGEST_S) return;
    if (durationS < 0.03) continue;
    const evidence = evidenceOf(levels, from, to);
    if (evidence < -3) continue;
    for (const element of ['dot', 'dash'] as const) {
      const node = CHILDREN.get(`${each.node}${element}`);
      if (node === undefined) continue;
      const score =
        each.score + evidence + timed(each, element, durationS, waiting.scratch, frameS);
      const mark = { before: each, markFrom: from, markTo: to, node, score };
      wait(waiting, n, score, () => ({ ...each, ...mark, timing: waiting.scratch.slice() }));
    }
  }
}

interface GapsOnward {
  readonly ups: Float64Array;
  readonly first: number;
  readonly waiting: Waiting;
  readonly frameS: number;
}

function addGaps(each: Beginning, from: number, onward: GapsOnward): void {
  const { ups, waiting, frameS } = onward;
  const { scratch } = waiting;
  const letter = LETTER_AT.get(each.node);
  for (let n = onward.first; n < ups.length; n += 1) {
    const durationS = ((ups[n] ?? 0) - from) * frameS;
    if (durationS > LONGEST_GAP_S) return;
    if (durationS < 0.02) continue;
    const inner = each.score + timed(each, 'element-gap', durationS, scratch, frameS);
    wait(waiting, n, inner, () => ({ ...each, score: inner, timing: scratch.slice() }));
    if (letter === undefined || each.letters.length + 1 >= MOST_LETTERS) continue;
    const score = each.score + timed(each, 'letter-gap', durationS, scratch, frameS);
    const letters = [...each.letters, letter];
    wait(waiting, n, score, () => ({ ...each, letters, node: -1, score, timing: scratch.slice() }));
  }
}

/**
 * Log chance that a span lasts just so many frames (so that it compares with a machine's); what is
 * learnt of the timing stands in `learnt` after that.
 */
function timed(
  each: Beginning,
  span: Span,
  durationS: number,
  learnt: Timing,
  frameS: number,
): number {
  return spanLogDensity(each.timing, span, durationS, learnt) - Math.log(durationS / frameS);
}

function evidenceOf(levels: readonly Level[], from: number, to: number): number {
  return levels.reduce(
    (sum, { sums, logPrior }) => plus(sum, logPrior + markEvidence(sums, from, to)),
    -Infinity,
  );
}

function finishedBy(each: Beginning): HandIdent[] {
  const letter = LETTER_AT.get(each.node);
  if (letter === undefined) return [];
  const letters = [...each.letters, letter];
  const { from, markTo: to, timing } = each;
  const score = each.score - each.earlier;
  return [{ letters, key: keyOfLetters(letters), from, to, score, timing, last: each }];
}

/** The marks of an ident keyed by hand, in frames, in order. */
export function marksOfHand(ident: HandIdent): Stretch[] {
  const marks: Stretch[] = [];
  for (let at: Beginning | null = ident.last; at !== null; at = at.before) {
    const isNew = at.markTo > at.markFrom && marks[0]?.from !== at.markFrom;
    if (isNew) marks.unshift({ from: at.markFrom, to: at.markTo });
  }
  return marks;
}
