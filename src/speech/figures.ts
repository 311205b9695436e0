import type { Token } from './tokens.ts';
import { wordAt } from './tokens.ts';

/** Figures found at a place, and the place behind them. */
export interface Figures {
  /** "5", "125", "25" for "twenty five"; with a point only where one was typed. */
  readonly figures: string;
  /** Typed as figures: then they stand for a whole number, not for one figure of it. */
  readonly isTyped: boolean;
  readonly next: number;
}

/**
 * Plain words and the words of radio telephony.
 * *Source:* AIM 4-2-7; CAP 413 chapter 2 table 2 (tree, fower, fife, niner).
 */
const FIGURE_OF_WORD: ReadonlyMap<string, string> = new Map(
  Object.entries({
    zero: '0',
    oh: '0',
    one: '1',
    two: '2',
    three: '3',
    tree: '3',
    four: '4',
    fower: '4',
    five: '5',
    fife: '5',
    six: '6',
    seven: '7',
    eight: '8',
    nine: '9',
    niner: '9',
  }),
);

const TEENS: ReadonlyMap<string, string> = new Map(
  Object.entries({
    ten: '10',
    eleven: '11',
    twelve: '12',
    thirteen: '13',
    fourteen: '14',
    fifteen: '15',
    sixteen: '16',
    seventeen: '17',
    eighteen: '18',
    nineteen: '19',
  }),
);

const TENS: ReadonlyMap<string, string> = new Map(
  Object.entries({
    twenty: '2',
    thirty: '3',
    forty: '4',
    fifty: '5',
    sixty: '6',
    seventy: '7',
    eighty: '8',
    ninety: '9',
  }),
);

/** The words for counts below twenty, as `figuresAt` reads them. */
export const COUNT_WORDS: readonly string[] = [
  ...['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'],
  ...TEENS.keys(),
];

const DECIMAL_WORDS: ReadonlySet<string> = new Set(['decimal', 'point']);

/**
 * The figures at a place: a typed number, one spoken figure, or a spoken number below a hundred.
 *
 * Null where there are none. "twenty five" is 25 and never 20 and 5: what it leaves without its
 * figures is then refused, so nothing is guessed.
 */
export function figuresAt(tokens: readonly Token[], at: number): Figures | null {
  const token = tokens[at];
  if (token?.kind === 'number') return { figures: token.figures, isTyped: true, next: at + 1 };
  const word = wordAt(tokens, at);
  const whole = FIGURE_OF_WORD.get(word) ?? TEENS.get(word);
  if (whole !== undefined) return { figures: whole, isTyped: false, next: at + 1 };
  const tens = TENS.get(word);
  if (tens === undefined) return null;
  const ones = FIGURE_OF_WORD.get(wordAt(tokens, at + 1));
  return ones === undefined || ones === '0'
    ? { figures: `${tens}0`, isTyped: false, next: at + 1 }
    : { figures: tens + ones, isTyped: false, next: at + 2 };
}

/** A row of figures said or typed one by one ("one two five", "1 2 5", "one twenty five"). */
export function rowAt(tokens: readonly Token[], at: number, longest: number): Figures {
  let row: Figures = { figures: '', isTyped: false, next: at };
  for (;;) {
    const one = figuresAt(tokens, row.next);
    if (one === null || (one.isTyped && one.figures.length > 1)) return row;
    if (row.figures.length + one.figures.length > longest) return row;
    row = { figures: row.figures + one.figures, isTyped: one.isTyped, next: one.next };
  }
}

/** "decimal two" or "point two" at a place: the one figure behind the decimal sign. */
export function decimalFigureAt(tokens: readonly Token[], at: number): Figures | null {
  if (!isDecimalWordAt(tokens, at)) return null;
  const tenth = figuresAt(tokens, at + 1);
  return tenth?.figures.length === 1 ? tenth : null;
}

/** Whether the word for the decimal sign stands at a place. */
export function isDecimalWordAt(tokens: readonly Token[], at: number): boolean {
  return DECIMAL_WORDS.has(wordAt(tokens, at));
}
