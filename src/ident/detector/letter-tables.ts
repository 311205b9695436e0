import { LETTERS, LETTER_GAP_UNITS, TREE } from './letter-tree.ts';
import { markEvidence } from './mark-sums.ts';
import type { MarkSums } from './mark-sums.ts';

/** One level at which marks may come, and how likely that is before anything is heard. */
export interface Level {
  readonly sums: MarkSums;
  readonly logPrior: number;
}

/** Evidence for each letter at each place, for one exact keying speed. */
export interface LetterTables {
  /** Per letter, A first: evidence when it starts at place `p`, that is at frame `p - lead`. */
  readonly letters: readonly Float64Array[];
  /** Places before the recording starts: an ident may have been cut off there. */
  readonly lead: number;
  readonly places: number;
  /** Length of a dot, frames. */
  readonly unit: number;
  /** Per letter: places from its start to the start of the next letter. */
  readonly steps: Int32Array;
}

/**
 * Tables for a dot of `unit` frames: dash 3, gaps 1 and 3, as a machine keys them.
 *
 * A letter is the sum of its marks, each of unknown phase and of the level that fits it.
 */
export function letterTables(levels: readonly Level[], unit: number, lead: number): LetterTables {
  const count = levels[0]?.sums.count ?? 0;
  const places = lead + count;
  const dots = elementTable(levels, unit, lead, places);
  const dashes = elementTable(levels, 3 * unit, lead, places);
  const nodes: Float64Array[] = [];
  for (const node of TREE) {
    const element = node.last === 'dot' ? dots : dashes;
    const parent = nodes[node.parent];
    if (parent === undefined) {
      nodes.push(element);
      continue;
    }
    const shift = Math.round(node.lastStartUnits * unit);
    const table = new Float64Array(places);
    for (let p = 0; p < places; p += 1) table[p] = (parent[p] ?? 0) + (element[p + shift] ?? 0);
    nodes.push(table);
  }
  const letters = LETTERS.map(({ node }) => nodes[node] ?? new Float64Array(places));
  const steps = Int32Array.from(LETTERS, ({ units }) =>
    Math.round((units + LETTER_GAP_UNITS) * unit),
  );
  return { letters, lead, places, unit, steps };
}

/** Evidence for one element of a given length, wherever it starts. */
function elementTable(
  levels: readonly Level[],
  length: number,
  lead: number,
  places: number,
): Float64Array {
  const table = new Float64Array(places);
  const least = Math.max(0, Math.ceil(lead - length));
  for (let p = least; p < places; p += 1) {
    const from = p - lead;
    let best = -Infinity;
    let sum = 0;
    for (const { sums, logPrior } of levels) {
      const here = logPrior + markEvidence(sums, from, from + length);
      if (here > best) {
        sum = 1 + sum * Math.exp(best - here);
        best = here;
      } else {
        sum += Math.exp(here - best);
      }
    }
    table[p] = levels.length === 1 ? best : best + Math.log(sum);
  }
  return table;
}
