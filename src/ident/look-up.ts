import { LETTERS } from './drill/letters.ts';
import { pattern } from './morse.ts';

/** How an ident agrees with what was typed of it. */
export type Agreement = 'whole' | 'begins' | 'gaps-elsewhere';

/**
 * The dots and dashes of each letter in a typed text: `.`, `-`, `?` for one that was not made out; a
 * blank or a stroke ends a letter. Anything else is left out; nothing typed gives no letters.
 */
export function readPatterns(text: string): readonly string[] {
  return text
    .replaceAll(/[·•*]/g, '.')
    .replaceAll(/[–—−_]/g, '-')
    .split(/[\s/|]+/)
    .map((each) => each.replaceAll(/[^.?-]/g, ''))
    .filter((each) => each !== '');
}

/** The letters that a pattern may be; `isOpen`: more of it may come. */
export function lettersLike(typed: string, isOpen: boolean): readonly string[] {
  return LETTERS.filter((letter) => {
    const keyed = pattern(letter);
    return isOpen ? isLike(typed, keyed.slice(0, typed.length)) : isLike(typed, keyed);
  });
}

/**
 * How an ident agrees with the patterns typed so far, null when it does not.
 *
 * `begins`: there is more to come, in the last letter or after it. `gaps-elsewhere`: the elements are
 * those of the whole ident, but the letters end elsewhere, as when no gap was typed.
 */
export function agreementOf(patterns: readonly string[], ident: string): Agreement | null {
  const keyed = pattern(ident).split(' ');
  if (patterns.length === 0 || keyed.length === 0) return null;
  const isWhole =
    patterns.length === keyed.length && patterns.every((each, at) => isLike(each, keyed[at] ?? ''));
  if (isWhole) return 'whole';
  const last = patterns.length - 1;
  const begins =
    patterns.length <= keyed.length &&
    patterns.every((each, at) =>
      at < last
        ? isLike(each, keyed[at] ?? '')
        : isLike(each, (keyed[at] ?? '').slice(0, each.length)),
    );
  if (begins) return 'begins';
  return isLike(patterns.join(''), keyed.join('')) ? 'gaps-elsewhere' : null;
}

function isLike(typed: string, keyed: string): boolean {
  return (
    typed.length === keyed.length &&
    Array.from(typed).every((each, at) => each === '?' || each === keyed.charAt(at))
  );
}
