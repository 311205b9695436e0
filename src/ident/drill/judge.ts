import { align, EVEN_COSTS } from './align.ts';
import type { Answer, Question, Sent } from './event.ts';

/** One letter of what was sent, and what was made of it; null: left out, or put in between. */
export interface LetterJudged {
  readonly sent: string | null;
  readonly answered: string | null;
}

/** What an answer is worth. */
export interface Judgement {
  readonly isRight: boolean;
  /** The letters that the answer says something about. */
  readonly letters: readonly LetterJudged[];
}

/** The letters that are keyed; empty when nothing is. */
export function keyedLetters(sent: Sent): string {
  switch (sent.kind) {
    case 'ident':
    case 'dme-only':
      return sent.ident;
    case 'test':
      return 'TEST';
    case 'nothing':
      return '';
  }
}

/**
 * Whether an answer is right, and about which letters it says something.
 *
 * A station that sends TEST, nothing, or its DME's ident alone is not identified: "no" is as right there
 * as "not identified", and so is the word TEST written down. Never right is a yes to the wrong sound.
 */
export function judge(question: Question, answer: Answer): Judgement {
  const { sent, plate } = question;
  if (sent.kind !== 'ident') return { isRight: isSafe(sent, answer), letters: [] };
  if (plate !== null) return judgePlate(sent.ident, plate, answer);
  if (answer.kind !== 'letters') return { isRight: false, letters: [] };
  const written = answer.letters.toUpperCase();
  return { isRight: written === sent.ident, letters: laidBeside(sent.ident, written) };
}

function isSafe(sent: Sent, answer: Answer): boolean {
  if (answer.kind === 'letters') return sent.kind === 'test' && /^TEST$/i.test(answer.letters);
  return answer.kind !== 'yes';
}

function judgePlate(ident: string, plate: string, answer: Answer): Judgement {
  const isSame = ident === plate;
  const saidSame = answer.kind === 'yes';
  const isRight = answer.kind !== 'not-identified' && saidSame === isSame;
  if (isSame) {
    // Doubting the right station says nothing of a certain letter.
    return { isRight, letters: isRight ? laidBeside(ident, ident) : [] };
  }
  const differing = laidBeside(ident, plate).filter(({ sent, answered }) => sent !== answered);
  const told = differing.map(({ sent, answered }) => ({
    sent,
    answered: saidSame ? answered : sent,
  }));
  return { isRight, letters: answer.kind === 'not-identified' ? [] : told };
}

/** Two idents letter beside letter. */
export function laidBeside(sent: string, answered: string): readonly LetterJudged[] {
  return align(Array.from(sent), Array.from(answered), EVEN_COSTS).pairs.map(({ one, other }) => ({
    sent: one,
    answered: other,
  }));
}
