import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import {
  NEW_LETTER,
  recallAt,
  type LetterStrength,
} from '../../src/ident/drill/letter-strength.ts';
import { LETTER_GROUPS } from '../../src/ident/drill/letters.ts';
import { mixedPairs } from '../../src/ident/drill/pairs.ts';
import type { PracticeStore } from '../store/practice-store.ts';
import { nowMs } from '../parts/clock.ts';
import { useCompared } from './compared-sound.ts';
import { keptFor } from './practise-figures.ts';
import { ThresholdPlot } from './threshold-plot.tsx';

const PAIRS_SHOWN = 6;

/** Progress as a picture: the letters, the pairs that are mixed up, the threshold over the weeks. */
export function PractiseProgress({ store }: { readonly store: PracticeStore }): JSX.Element {
  const practice = store.practice.value;
  const { play, problem } = useCompared();
  const mixed = mixedPairs(practice.pairs).slice(0, PAIRS_SHOWN);
  return (
    <>
      <section aria-labelledby="letters-title">
        <h3 id="letters-title">Letters</h3>
        <p class="soft">
          The longer the bar, the longer the letter is kept. Tap a letter to hear it. Dashed ones
          are not taken up yet: the next group opens when each letter of the last one is right in 18
          of 20.
        </p>
        <p class="problem" role="alert">
          {problem}
        </p>
        {LETTER_GROUPS.map((letters, group) => (
          <ul key={group} class="letter-tiles">
            {letters.map((letter) => (
              <li key={letter}>
                <LetterTile
                  letter={letter}
                  strength={practice.letters.get(letter) ?? NEW_LETTER}
                  isOpen={group < practice.groups}
                  onHear={() => {
                    play([letter]);
                  }}
                />
              </li>
            ))}
          </ul>
        ))}
        <OpenNextGroup store={store} />
      </section>
      <section aria-labelledby="pairs-title">
        <h3 id="pairs-title">Mixed up</h3>
        {mixed.length === 0 ? (
          <p class="soft">None yet.</p>
        ) : (
          <ul class="mixed-pairs">
            {mixed.map(({ letters, mixed: times, of }) => (
              <li key={letters}>
                <span>
                  <b>
                    {letters.charAt(0)} and {letters.charAt(1)}
                  </b>{' '}
                  <span class="soft">
                    {times} of {of}
                  </span>
                </span>
                <button
                  type="button"
                  onClick={() => {
                    play(Array.from(letters));
                  }}
                >
                  Hear {letters.charAt(0)}, then {letters.charAt(1)}
                </button>
              </li>
            ))}
          </ul>
        )}
      </section>
      <section aria-labelledby="threshold-title">
        <h3 id="threshold-title">In noise</h3>
        <ThresholdPlot sessions={practice.sessions} />
      </section>
    </>
  );
}

interface LetterTileProps {
  readonly letter: string;
  readonly strength: LetterStrength;
  readonly isOpen: boolean;
  readonly onHear: () => void;
}

const SHORTEST_DAYS = 0.1;
const LONGEST_DAYS = 60;

/** Length of the bar, 0 to 1: the half-life on a scale of ratios. */
function barOf({ halfLifeDays, lastAtMs }: LetterStrength): number {
  if (lastAtMs === null) return 0;
  const along = Math.log(halfLifeDays / SHORTEST_DAYS) / Math.log(LONGEST_DAYS / SHORTEST_DAYS);
  return Math.min(1, Math.max(0.06, along));
}

function LetterTile({ letter, strength, isOpen, onHear }: LetterTileProps): JSX.Element {
  const { heard, right, halfLifeDays } = strength;
  const isDue = heard > 0 && recallAt(strength, nowMs.value) < 0.5;
  const kept = keptFor(halfLifeDays);
  return (
    <button type="button" class={isOpen ? 'letter-tile' : 'letter-tile shut'} onClick={onHear}>
      <b>{letter}</b> <span class="soft tile-words">{heard === 0 ? '' : isDue ? 'due' : kept}</span>
      <span class="hidden">
        {heard === 0 ? ' not asked yet' : ` kept ${kept}, ${right} of ${heard} right`}, hear it
      </span>
      <span class="bar" style={{ width: `${(100 * barOf(strength)).toFixed(0)}%` }} />
    </button>
  );
}

/** For a pilot who knows letters already: no need to be asked for them twenty times each. */
function OpenNextGroup({ store }: { readonly store: PracticeStore }): JSX.Element | null {
  const [problem, setProblem] = useState('');
  const { groups } = store.practice.value;
  const next = LETTER_GROUPS[groups];
  if (next === undefined) return null;
  return (
    <p>
      <button
        type="button"
        class="quiet"
        onClick={() => {
          store.append({ kind: 'opened', groups: groups + 1 }).catch(() => {
            setProblem('This device did not keep it: is its storage full?');
          });
        }}
      >
        I know these: take up {next.join(' ')}
      </button>
      <span class="problem" role="alert">
        {problem}
      </span>
    </p>
  );
}
