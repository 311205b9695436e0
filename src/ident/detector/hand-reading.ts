import type { Stretch } from './amplitude.ts';
import { edgesOf } from './edges.ts';
import type { Frames } from './frames.ts';
import { handIdents, marksOfHand } from './hand.ts';
import type { HandIdent } from './hand.ts';
import { plus } from './ident-loop.ts';
import type { Level } from './letter-tables.ts';
import type { IdentKey } from './likely-idents.ts';
import { mostInAll } from './most-in-all.ts';
import { identLogPrior, restS } from './occurrences.ts';
import { dotSOf, ratiosOf } from './timing.ts';
import type { Ratios } from './timing.ts';

/** One place where an ident seems to be keyed by hand. */
export interface HandOccurrence {
  /** Frames. */
  readonly from: number;
  readonly to: number;
  readonly dotS: number;
  readonly ratios: Ratios;
  readonly letters: readonly number[];
  readonly marks: readonly Stretch[];
  readonly score: number;
  /** Evidence for each ident that may be it. */
  readonly evidence: ReadonlyMap<IdentKey, number>;
  /** No ident that is not among them has more. */
  readonly floor: number;
}

/** How often an ident starts, as one in so many seconds. */
const ONCE_IN_S = 10;

/** An ident not among those found is at least this much worse than the best one, nats. */
const FLOOR_BELOW = 16;

/** Reads one tone as keyed by hand, mark by mark; empty when the tone is too faint for that. */
export function handReading(
  frames: Frames,
  amplitude: Float64Array,
  levels: readonly Level[],
): HandOccurrence[] {
  const edges = edgesOf(frames, amplitude);
  if (edges === null) return [];
  const enter = Math.log(frames.frameS / ONCE_IN_S);
  const worth = (ident: HandIdent) => ident.score + identLogPrior(ident.letters.length) + enter;
  const all = handIdents(edges, levels, frames.frameS).filter((ident) => worth(ident) > 0);
  const chosen = mostInAll(all, (ident) => ({
    from: ident.from,
    to: ident.to + restS(dotSOf(ident.timing)) / frames.frameS,
    worth: worth(ident),
  }));
  const claims = chosen.map((ident) => ({ ident, worth: worth(ident) }));
  return claims.map((top) => occurrenceOf(top, claims, all, enter));
}

interface Chosen {
  readonly ident: HandIdent;
  readonly worth: number;
}

/** What may be keyed where `chosen` is; what runs into another one counts without what it takes from that. */
function occurrenceOf(
  chosen: Chosen,
  claims: readonly Chosen[],
  all: readonly HandIdent[],
  enter: number,
): HandOccurrence {
  const { ident: top, worth: score } = chosen;
  const others = claims.filter((each) => each !== chosen);
  const evidence = new Map<IdentKey, number>();
  for (const ident of all) {
    if (!overlap(ident, top)) continue;
    const taken = others.filter((other) => overlap(ident, other.ident));
    const own = taken.reduce((sum, other) => sum - other.worth, ident.score + enter);
    evidence.set(ident.key, plus(evidence.get(ident.key) ?? -Infinity, own));
  }
  const { from, to, letters } = top;
  const floor = top.score + enter - FLOOR_BELOW;
  const timing = { dotS: dotSOf(top.timing), ratios: ratiosOf(top.timing) };
  return { from, to, letters, ...timing, score, marks: marksOfHand(top), evidence, floor };
}

function overlap(a: HandIdent, b: HandIdent): boolean {
  return a.to >= b.from && a.from <= b.to;
}

/** Evidence for one ident from all occurrences, nats, against nothing keyed. */
export function handEvidence(found: readonly HandOccurrence[], key: IdentKey): number {
  return found.reduce((sum, { evidence, floor }) => sum + plus(0, evidence.get(key) ?? floor), 0);
}
