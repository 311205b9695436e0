import { wrap360 } from '../base/angle.ts';
import { figuresAt, isDecimalWordAt, rowAt } from './figures.ts';
import type { Figures } from './figures.ts';
import { NO, SHOWS, refused, took } from './grammar.ts';
import type { Parse } from './grammar.ts';
import type { HeardReading } from './heard.ts';
import { bearingPhrase } from './read-back.ts';
import type { Token } from './tokens.ts';
import { skipWords, wordAt } from './tokens.ts';

type Name = 'heading' | 'course' | 'radial';

const NAME_OF_WORD: ReadonlyMap<string, Name> = new Map<string, Name>(
  Object.entries({
    heading: 'heading',
    hdg: 'heading',
    course: 'course',
    crs: 'course',
    obs: 'course',
    radial: 'radial',
    rad: 'radial',
  }),
);

const DEGREES: ReadonlySet<string> = new Set(['degrees', 'degree', 'deg', 'magnetic']);

/**
 * "heading one two five", "hdg 125", "obs 112", "radial three one zero".
 *
 * Always three figures, so that a lost one is noticed: "heading 45" is refused, not taken for 045.
 * "zero zero zero" is taken for north.
 */
export function bearingPhraseAt(tokens: readonly Token[], at: number): Parse {
  const name = NAME_OF_WORD.get(wordAt(tokens, at));
  if (name === undefined) return NO;
  const from = skipWords(tokens, at + 1, SHOWS);
  const found = bearingFiguresAt(tokens, from);
  if (found === null) return refused(`${name} needs three figures, like zero four five`);
  if (found.figures.includes('.') || isDecimalWordAt(tokens, found.next)) {
    return refused(`${name} is read in whole degrees`);
  }
  if (found.figures.length !== 3) {
    const like = found.figures.length < 3 ? `${found.figures.padStart(3, '0')} and ` : '';
    return refused(`${name} needs three figures, ${like}not ${found.figures}`);
  }
  const bearing = Number(found.figures);
  if (bearing > 360) return refused(`${name} ${found.figures} is not on the compass`);
  const next = skipWords(tokens, found.next, DEGREES);
  return took({ text: bearingPhrase(name, bearing), reading: fieldOf(name, bearing) }, next);
}

/** Three figures one by one, or whatever was typed as one number; null when figures are missing. */
function bearingFiguresAt(tokens: readonly Token[], at: number): Figures | null {
  const first = figuresAt(tokens, at);
  if (first?.isTyped === true && first.figures.length > 1) return first;
  const row = rowAt(tokens, at, 3);
  return row.figures.length === 3 ? row : null;
}

function fieldOf(name: Name, bearing: number): HeardReading {
  const bearingDeg = wrap360(bearing);
  switch (name) {
    case 'heading':
      return { headingDeg: bearingDeg };
    case 'course':
      return { courseSetDeg: bearingDeg };
    case 'radial':
      return { radialDeg: bearingDeg };
  }
}
