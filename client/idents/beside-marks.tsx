import type { JSX } from 'preact';
import type { LetterBeside } from '../../src/ident/drill/difference.ts';
import type { Element } from '../../src/ident/morse.ts';

interface BesideMarksProps {
  readonly beside: readonly LetterBeside[];
  /** Names of the rows: what was sent, and what it is held against. */
  readonly rows: readonly string[];
  /** Row that sounds now; null: none. */
  readonly sounding: number | null;
}

/** Idents letter under letter, element under element; what differs stands in a frame. */
export function BesideMarks({ beside, rows, sounding }: BesideMarksProps): JSX.Element {
  return (
    <div class="beside">
      {rows.map((name, row) => (
        <div key={name} class={row === sounding ? 'beside-row sounding' : 'beside-row'}>
          <span class="beside-name">{name}</span>
          <span class="beside-letters">
            {beside.map((pair, index) => (
              <LetterMarks key={index} pair={pair} isSent={row === 0} />
            ))}
          </span>
        </div>
      ))}
    </div>
  );
}

function LetterMarks({
  pair,
  isSent,
}: {
  readonly pair: LetterBeside;
  readonly isSent: boolean;
}): JSX.Element {
  const letter = isSent ? pair.sent : pair.answered;
  const keyed = pair.elements.flatMap(({ one, other }) => (isSent ? one : other) ?? []);
  return (
    <span class="beside-letter">
      <b>{letter ?? '·'}</b>
      <span class="elements" role="img" aria-label={`${letter ?? 'nothing'}: ${keyed.join(' ')}`}>
        {pair.elements.map(({ one, other }, index) => (
          <Mark
            key={index}
            element={isSent ? one : other}
            widest={widest(one, other)}
            differs={one !== other}
          />
        ))}
      </span>
    </span>
  );
}

function widest(one: Element | null, other: Element | null): Element {
  return one === 'dash' || other === 'dash' ? 'dash' : 'dot';
}

interface MarkProps {
  readonly element: Element | null;
  /** Both rows give an element the same room, so that they stay under each other. */
  readonly widest: Element;
  readonly differs: boolean;
}

function Mark({ element, widest: room, differs }: MarkProps): JSX.Element {
  return (
    <span class={`element-room ${room}${differs ? ' differs' : ''}`}>
      {element === null ? null : <span class={`element ${element}`} />}
    </span>
  );
}
