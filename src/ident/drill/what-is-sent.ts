import { oneOf } from './chance.ts';
import { firstLettersBefore } from './choose-ident.ts';
import type { Sent } from './event.ts';
import { nearIdents } from './near-idents.ts';
import { confusionChance } from './pairs.ts';
import type { Practice, Session } from './practice.ts';

/** One question in eight has no ident to find, once a pilot has answered a dozen. */
const UNIDENTIFIED = { oneIn: 8, fromAnswers: 12 } as const;

/**
 * What is sent for an ident that is asked for: mostly the ident; to a plate as often one that differs in
 * one element; now and then TEST, nothing, or the ident of a DME alone, but never twice in a row.
 */
export function whatIsSent(
  practice: Practice,
  session: Session,
  ident: string,
  { isPlate, chance }: { readonly isPlate: boolean; readonly chance: () => number },
): Sent {
  const avoided = firstLettersBefore(session);
  const last = session.answered.at(-1)?.question.sent.kind ?? 'ident';
  const isDue = practice.answers >= UNIDENTIFIED.fromAnswers && chance() < 1 / UNIDENTIFIED.oneIn;
  if (isDue && last === 'ident' && ident.length > 1) {
    const none: readonly Sent[] = [{ kind: 'nothing' }, { kind: 'dme-only', ident }];
    const all: readonly Sent[] = avoided.includes('T') ? none : [...none, { kind: 'test' }];
    return oneOf(all, chance) ?? { kind: 'nothing' };
  }
  if (!isPlate || chance() < 0.5) return { kind: 'ident', ident };
  return { kind: 'ident', ident: neighbour(practice, ident, avoided, chance) };
}

/** One that differs in one element; the likelier the pilot takes it for the plate's, the likelier it comes. */
function neighbour(
  practice: Practice,
  ident: string,
  avoided: readonly string[],
  chance: () => number,
): string {
  const near = nearIdents(ident)
    .filter((each) => !avoided.includes(each.ident.charAt(0)))
    .map((each) => ({
      ...each,
      weight: confusionChance(practice.pairs, each.letter, ident.charAt(each.letterIndex)),
    }));
  let left = chance() * near.reduce((sum, each) => sum + each.weight, 0);
  const found = near.find((each) => {
    left -= each.weight;
    return left <= 0;
  });
  return found?.ident ?? near.at(-1)?.ident ?? ident;
}
