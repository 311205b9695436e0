import type { JSX } from 'preact';
import type { Agreement } from '../../src/ident/look-up.ts';
import { megahertz } from '../parts/figures.ts';
import { MorseMarks } from '../parts/morse-marks.tsx';
import type { FoundStation } from './found-stations.ts';

interface FoundListProps {
  readonly found: readonly FoundStation[];
  readonly isKeyed: boolean;
  /** How many stations are known in all. */
  readonly many: number;
}

const SHOWN = 12;

const WORDS: Readonly<Record<Agreement, string>> = {
  whole: 'sends this',
  'gaps-elsewhere': 'with the gaps elsewhere',
  begins: 'begins like this',
};

/** The stations that it could be, whole idents first, then the nearest first. */
export function FoundList({ found, isKeyed, many }: FoundListProps): JSX.Element {
  if (!isKeyed) {
    return (
      <p class="soft">
        {many === 1 ? 'One station is' : `${many} stations are`} known here: those of your flights,
        of the demo, and of the library.
      </p>
    );
  }
  if (found.length === 0) {
    return (
      <p>No station known here sends that. Listen for another repeat, and check the frequency.</p>
    );
  }
  const left = found.length - SHOWN;
  return (
    <>
      <ul class="found-stations" aria-label="Could be">
        {found.slice(0, SHOWN).map(({ station, agreement, distanceNm }, index) => (
          <li key={index}>
            <b class="found-ident">{station.ident}</b>
            <MorseMarks ident={station.ident} />
            <span>
              {WORDS[agreement]}
              <span class="soft">
                {station.frequencyMhz === undefined ? '' : ` · ${megahertz(station.frequencyMhz)}`}
                {` · ${distance(distanceNm)}`}
                {station.name === undefined ? '' : ` · ${station.name}`}
              </span>
            </span>
          </li>
        ))}
      </ul>
      {left > 0 ? <p class="soft">{left} more, farther away.</p> : null}
    </>
  );
}

function distance(distanceNm: number): string {
  return `${distanceNm < 10 ? distanceNm.toFixed(1) : distanceNm.toFixed(0)} NM`;
}
