import type { Analysis } from './analysis.ts';
import { keyOfLetters, lettersOfKey } from './likely-idents.ts';
import type { IdentKey } from './likely-idents.ts';
import { LETTERS } from './letter-tree.ts';
import { identLogPrior } from './occurrences.ts';

/** How probable each ident is after all that was heard; what is missing up to 1 is that none was keyed. */
export type Posterior = ReadonlyMap<IdentKey, number>;

/**
 * Nats of evidence are divided by this: level, tone and noise are estimated from the same sound, so that
 * the evidence is a little too sure of itself. Fitted on clips kept apart from those of the report.
 */
const TEMPERATURE = 1.12;

/** How likely an ident is one of those that can be received here, where these are known. */
const AMONG_KNOWN = 0.99;

/** The posterior over the candidates. `known`: idents that can be received here; empty: any. */
export function posteriorOf(analysis: Analysis, known: readonly IdentKey[]): Posterior {
  const scores = analysis.candidates.map(({ key, score }) => {
    const usual = identLogPrior(lettersOfKey(key).length);
    return { key, score: (score - usual) / TEMPERATURE + priorOf(key, usual, known) };
  });
  const most = scores.reduce((best, { score }) => Math.max(best, score), 0);
  const total = scores.reduce((sum, { score }) => sum + Math.exp(score - most), Math.exp(-most));
  return new Map(scores.map(({ key, score }) => [key, Math.exp(score - most) / total]));
}

function priorOf(key: IdentKey, usual: number, known: readonly IdentKey[]): number {
  if (known.length === 0) return usual;
  if (known.includes(key)) return Math.log(AMONG_KNOWN / known.length);
  return Math.log(1 - AMONG_KNOWN) + usual;
}

/** The most probable ident; null when there is no candidate. */
export function likeliestOf(posterior: Posterior): IdentKey | null {
  let best: IdentKey | null = null;
  for (const [key, share] of posterior) {
    if (best === null || share > (posterior.get(best) ?? 0)) best = key;
  }
  return best;
}

/** How probable it is that a letter of an ident is right, whatever the others are. */
export function letterShare(posterior: Posterior, key: IdentKey, at: number): number {
  const letters = lettersOfKey(key);
  let sum = 0;
  for (const [other, share] of posterior) {
    const theirs = lettersOfKey(other);
    if (theirs.length === letters.length && theirs[at] === letters[at]) sum += share;
  }
  return Math.min(1, sum);
}

/** The letters of a key as text. */
export function textOfKey(key: IdentKey): string {
  return lettersOfKey(key)
    .map((each) => LETTERS[each]?.letter ?? '')
    .join('');
}

/** The key of an ident of 1 to 4 letters in either case; null for anything else. */
export function keyOfText(ident: string): IdentKey | null {
  const text = ident.trim().toUpperCase();
  if (!/^[A-Z]{1,4}$/.test(text)) return null;
  return keyOfLetters(Array.from(text, (each) => each.charCodeAt(0) - 65));
}
