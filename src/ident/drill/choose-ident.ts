import {
  letterWorths,
  madeUpIdents,
  newLetters,
  realIdents,
  worth,
  type Around,
} from './candidates.ts';
import type { Question } from './event.ts';
import { keyedLetters } from './judge.ts';
import type { Practice, Session } from './practice.ts';

/** The same ident does not come back within so many questions. */
const NOT_AGAIN_FOR = 4;

/** What a choice depends on besides the practice so far. */
export interface Choosing {
  readonly around: Around;
  readonly atMs: number;
  readonly isPlate: boolean;
  readonly chance: () => number;
}

/**
 * The ident that is worth most to be asked now: a single letter while some are new, else an ident of the
 * flight, from near it, or made up. Never with a first letter of the question before.
 */
export function chooseIdent(practice: Practice, session: Session, choosing: Choosing): string {
  const { around, atMs, isPlate, chance } = choosing;
  const avoided = firstLettersBefore(session);
  const recent = session.answered.slice(-NOT_AGAIN_FOR).map(({ question }) => askedIdent(question));
  const isUsable = (ident: string): boolean => !avoided.includes(ident.charAt(0));
  const fresh = isPlate || session.about === 'noise' ? [] : newLetters(practice).filter(isUsable);
  const madeUp = madeUpIdents(practice, chance);
  const whole = [...realIdents(practice, around, isPlate), ...madeUp].filter(isUsable);
  const all = fresh.length > 0 ? fresh : whole;
  const unasked = all.filter((ident) => !recent.includes(ident));
  const letters = letterWorths(practice, atMs);
  const scored = shuffled(unasked.length > 0 ? unasked : all, chance).map((ident) => ({
    ident,
    worth: worth(ident, letters, around),
  }));
  const fallBack = ['TEN', 'ANT', 'MAE'].find(isUsable) ?? 'NIM';
  return scored.reduce((best, each) => (each.worth > best.worth ? each : best), {
    ident: fallBack,
    worth: Number.NEGATIVE_INFINITY,
  }).ident;
}

/** The first letters of the question before: of what was keyed and of what stood on the plate. */
export function firstLettersBefore(session: Session): readonly string[] {
  const last = session.answered.at(-1)?.question;
  if (last === undefined) return [];
  return [keyedLetters(last.sent), last.plate ?? '']
    .map((ident) => ident.charAt(0))
    .filter((letter) => letter !== '');
}

function askedIdent({ sent, plate }: Question): string {
  return plate ?? keyedLetters(sent);
}

function shuffled(idents: readonly string[], chance: () => number): readonly string[] {
  return idents
    .map((ident) => ({ ident, place: chance() }))
    .toSorted((one, other) => one.place - other.place)
    .map(({ ident }) => ident);
}
