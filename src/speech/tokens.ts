/** One piece of a sentence as the grammar sees it; `said` is how it stood there. */
export type Token =
  | { readonly kind: 'word'; readonly word: string; readonly said: string }
  /** Typed figures, "125" or "7.2"; "1½" has become "1.5". */
  | { readonly kind: 'number'; readonly figures: string; readonly said: string }
  /** A comma, full stop or line end: no phrase reaches across it. */
  | { readonly kind: 'pause'; readonly said: string }
  /** "7,2" is seven decimal two, or seven and then two; "7.2.5" is worse. */
  | { readonly kind: 'unclear'; readonly said: string };

const PATTERN = new RegExp(
  [
    String.raw`(?<half>(?:(?<![\d.,])(?<whole>\d)\s*|(?<!\d))(?:½|1\/2(?![\d/])))`,
    String.raw`(?<unclear>(?<![\d.])\d+,\d(?![\d.])|\d*\.\d+(?:\.\d+)+)`,
    String.raw`(?<number>\d*\.\d+|\d+)`,
    String.raw`(?<word>\p{L}+(?:['’]\p{L}+)*)`,
    String.raw`(?<is>[:=])`,
    String.raw`(?<pause>[,;.!?\n]+)`,
    String.raw`(?<degree>°)`,
    String.raw`(?<blank>[\s_]+|[-‐–](?!\s*[.\d½]))`,
    String.raw`(?<other>.)`,
  ].join('|'),
  'gsu',
);

/**
 * Cuts a sentence into words, figures and pauses.
 *
 * Case does not count; a hyphen between words is a blank; figures and letters that touch are cut apart
 * ("hdg125", "1.5l"). What is neither stays as a word of its own, for the grammar to refuse.
 */
export function tokensOf(sentence: string): readonly Token[] {
  return Array.from(sentence.toLowerCase().matchAll(PATTERN), tokenOf).filter(
    (each): each is Token => each !== null,
  );
}

function tokenOf(match: RegExpMatchArray): Token | null {
  const groups: Readonly<Record<string, string | undefined>> = match.groups ?? {};
  const said = match[0].trim();
  if (groups['blank'] !== undefined) return null;
  if (groups['half'] !== undefined) {
    return { kind: 'number', figures: `${groups['whole'] ?? '0'}.5`, said };
  }
  if (groups['unclear'] !== undefined) return { kind: 'unclear', said };
  if (groups['number'] !== undefined) return { kind: 'number', figures: said, said };
  if (groups['word'] !== undefined) return { kind: 'word', word: said, said };
  if (groups['is'] !== undefined) return { kind: 'word', word: 'is', said };
  if (groups['pause'] !== undefined) return { kind: 'pause', said };
  if (groups['degree'] !== undefined) return { kind: 'word', word: 'degrees', said };
  return { kind: 'word', word: said, said };
}

/** The word at a place, or an empty text where there is none. */
export function wordAt(tokens: readonly Token[], at: number): string {
  const token = tokens[at];
  return token?.kind === 'word' ? token.word : '';
}

/** Whether these words stand at a place, one after the other. */
export function wordsAt(tokens: readonly Token[], at: number, words: readonly string[]): boolean {
  return words.every((word, index) => wordAt(tokens, at + index) === word);
}

/** The place behind any of these words. */
export function skipWords(
  tokens: readonly Token[],
  at: number,
  words: ReadonlySet<string>,
): number {
  let next = at;
  while (words.has(wordAt(tokens, next))) next += 1;
  return next;
}
