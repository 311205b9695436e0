import { elementsOf, type Element } from '../morse.ts';
import { align, EVEN_COSTS, type Aligned } from './align.ts';
import { laidBeside } from './judge.ts';

/** One letter of each of two idents, with their elements side by side. */
export interface LetterBeside {
  readonly sent: string | null;
  readonly answered: string | null;
  /** `one`: what was sent, `other`: what was answered. */
  readonly elements: readonly Aligned<Element>[];
}

/** Two idents side by side, letter by letter and element by element. */
export function besideEachOther(sent: string, answered: string): readonly LetterBeside[] {
  return laidBeside(sent, answered).map((pair) => ({
    ...pair,
    elements: align(elementsIn(pair.sent), elementsIn(pair.answered), EVEN_COSTS).pairs,
  }));
}

function elementsIn(letter: string | null): readonly Element[] {
  return letter === null ? [] : (elementsOf(letter)[0] ?? []);
}

const PLACES = ['first', 'second', 'third', 'fourth', 'fifth'] as const;

/** How two letters differ, in a sentence; empty when they do not. */
export function differenceWords({ sent, answered, elements }: LetterBeside): string {
  if (sent === answered) return '';
  if (sent === null) return `${answered ?? ''} was not sent.`;
  if (answered === null) return `${sent} is missing.`;
  const found = elements.flatMap(({ one, other }, index) =>
    one === other ? [] : [{ one, other, index }],
  );
  const first = found[0];
  if (first === undefined) return '';
  if (found.length > 1) return `${sent} and ${answered} differ in ${found.length} places.`;
  return oneDifference(sent, answered, first);
}

function oneDifference(
  sent: string,
  answered: string,
  { one, other, index }: Aligned<Element> & { readonly index: number },
): string {
  if (one === null) return `${sent} has one ${other ?? 'element'} less than ${answered}.`;
  if (other === null) return `${sent} has one ${one} more than ${answered}.`;
  const place = PLACES[index] ?? 'last';
  return `The ${place} element is a ${one} in ${sent}, a ${other} in ${answered}.`;
}
