import type { JSX } from 'preact';
import { elementsOf } from '../../src/ident/morse.ts';

interface MorseMarksProps {
  readonly ident: string;
  /** Index of the dot or dash that sounds now, counted over the whole ident; null: none. */
  readonly sounding?: number | null;
}

const DOT = 7;
const GAP = 6;
const LETTER_GAP = 18;

/** An ident in dots and dashes, drawn; read out as words. */
export function MorseMarks({ ident, sounding = null }: MorseMarksProps): JSX.Element {
  const marks = layOut(ident);
  const width = marks.length === 0 ? DOT : Math.max(...marks.map((mark) => mark.x + mark.width));
  return (
    <svg
      class="morse"
      fill="currentColor"
      viewBox={`-2 0 ${width + 4} 20`}
      role="img"
      aria-label={`${ident} in Morse: ${spoken(ident)}`}
    >
      {marks.map((mark, index) => (
        <rect
          key={index}
          class={index === sounding ? 'mark sounding' : 'mark'}
          x={mark.x}
          y={10 - DOT / 2}
          width={mark.width}
          height={DOT}
          rx={mark.width === DOT ? DOT / 2 : 1}
        />
      ))}
    </svg>
  );
}

function layOut(ident: string): readonly { readonly x: number; readonly width: number }[] {
  const marks: { x: number; width: number }[] = [];
  let x = 0;
  for (const letter of elementsOf(ident)) {
    for (const element of letter) {
      const width = element === 'dot' ? DOT : DOT * 3;
      marks.push({ x, width });
      x += width + GAP;
    }
    x += LETTER_GAP - GAP;
  }
  return marks;
}

function spoken(ident: string): string {
  return elementsOf(ident)
    .map((letter) => letter.join(' '))
    .join(', ');
}
