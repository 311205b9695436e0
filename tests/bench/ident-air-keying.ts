// How a station keys its ident in the benches: own table and own timing, nothing of src/ident.
import type { Chance } from './track-chance.ts';

/** ITU-R M.1677-1, annex 1, 1.1.1, typed in from the table. */
const CODE: Readonly<Record<string, string>> = {
  A: '.-',
  B: '-...',
  C: '-.-.',
  D: '-..',
  E: '.',
  F: '..-.',
  G: '--.',
  H: '....',
  I: '..',
  J: '.---',
  K: '-.-',
  L: '.-..',
  M: '--',
  N: '-.',
  O: '---',
  P: '.--.',
  Q: '--.-',
  R: '.-.',
  S: '...',
  T: '-',
  U: '..-',
  V: '...-',
  W: '.--',
  X: '-..-',
  Y: '-.--',
  Z: '--..',
};

/** The letters that idents are made of. */
export const LETTERS = Object.keys(CODE).join('');

/** The elements of a letter, `.` and `-`. */
export function codeOf(letter: string): string {
  const code = CODE[letter];
  if (code === undefined) throw new Error(`no code for ${letter}`);
  return code;
}

/** One keying of a tone in a clip. */
export interface KeyedMark {
  readonly startS: number;
  readonly durationS: number;
  readonly isDash: boolean;
  readonly toneHz: number;
  /** Relative to the station's usual 1. */
  readonly level: number;
}

/** How evenly it is keyed. */
export type Fist = 'machine' | 'cam' | 'hand';

/** Lengths in dots, and how much each one strays (standard deviation of its logarithm). */
interface Habit {
  readonly dash: number;
  readonly elementGap: number;
  readonly letterGap: number;
  readonly stray: number;
}

/**
 * A machine keeps ITU-R M.1677-1. A worn cam has its own ratios but the same ones each time. A hand
 * has its own ratios and strays by 10 % at each mark and gap. Ranges: common practice, no source.
 */
export function habitOf(fist: Fist, chance: Chance): Habit {
  if (fist === 'machine') return { dash: 3, elementGap: 1, letterGap: 3, stray: 0 };
  if (fist === 'cam') {
    return {
      dash: chance.uniform(2.7, 3.4),
      elementGap: chance.uniform(0.85, 1.2),
      letterGap: chance.uniform(2.7, 3.8),
      stray: 0.02,
    };
  }
  return {
    dash: chance.uniform(2.5, 3.7),
    elementGap: chance.uniform(0.85, 1.3),
    letterGap: chance.uniform(2.7, 4.3),
    stray: 0.1,
  };
}

/** One ident keyed from `startS` on. */
export function keyOnce(
  ident: string,
  how: { readonly startS: number; readonly wpm: number; readonly toneHz: number; level?: number },
  habit: Habit,
  chance: Chance,
): KeyedMark[] {
  const dotS = 1.2 / how.wpm;
  const stray = (dots: number): number =>
    dots * dotS * Math.exp(Math.max(-2.5, Math.min(2.5, chance.normal(1))) * habit.stray);
  const marks: KeyedMark[] = [];
  let atS = how.startS;
  Array.from(ident).forEach((letter, place) => {
    if (place > 0) atS += stray(habit.letterGap);
    Array.from(codeOf(letter)).forEach((element, index) => {
      if (index > 0) atS += stray(habit.elementGap);
      const isDash = element === '-';
      const durationS = stray(isDash ? habit.dash : 1);
      marks.push({ startS: atS, durationS, isDash, toneHz: how.toneHz, level: how.level ?? 1 });
      atS += durationS;
    });
  });
  return marks;
}

/** When the last of some marks ends, seconds. */
export function endOf(marks: readonly KeyedMark[]): number {
  return Math.max(0, ...marks.map((each) => each.startS + each.durationS));
}

/** An ident of `letters` random letters. */
export function randomIdent(chance: Chance, letters = 3): string {
  return Array.from({ length: letters }, () => LETTERS[pick(chance, 26)] ?? 'E').join('');
}

/** A whole number from 0 up to, not including, `count`. */
export function pick(chance: Chance, count: number): number {
  return Math.min(count - 1, Math.floor(chance.uniform(0, count)));
}
