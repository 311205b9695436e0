import morseDecoder from 'morse-decoder';

/** One keyed element of a symbol. */
export type Element = 'dot' | 'dash';

/** Whether a text can be keyed as an ident: 1 to 4 letters or figures, of either case. */
export function isIdent(text: string): boolean {
  return /^[A-Za-z0-9]{1,4}$/.test(text);
}

/**
 * The symbols of an ident in dots and dashes, a blank between letters: QEV -> "--.- . ...-".
 *
 * Letters of either case and figures; anything else has no symbol here and is left out.
 * *Source:* ITU-R M.1677-1, annex 1; the table itself comes from `morse-decoder`.
 */
export function pattern(ident: string): string {
  return symbols(ident).join(' ');
}

/** The elements of each letter of an ident, in the order in which they are keyed. */
export function elementsOf(ident: string): readonly (readonly Element[])[] {
  return symbols(ident).map((symbol) =>
    Array.from(symbol, (each) => (each === '.' ? 'dot' : 'dash')),
  );
}

function symbols(ident: string): readonly string[] {
  const letters = Array.from(ident).filter((each) => /^[A-Za-z0-9]$/.test(each));
  return letters.map((each) => morseDecoder.encode(each.toUpperCase()));
}
