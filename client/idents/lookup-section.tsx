import type { JSX } from 'preact';
import { useEffect, useMemo, useState } from 'preact/hooks';
import './lookup.css';
import type { LatLon } from '../../src/earth/geodesic.ts';
import { readPatterns } from '../../src/ident/look-up.ts';
import { lettersOfRhythm, type Press } from '../../src/ident/rhythm.ts';
import { FoundList } from './found-list.tsx';
import { foundByPatterns, foundByRhythm } from './found-stations.ts';
import { KeyedLetters, type KeyedLetter } from './keyed-letters.tsx';
import { knownStations, type KnownStations } from './known-stations.ts';
import { NearestTo } from './nearest-to.tsx';
import { PatternKeys } from './pattern-keys.tsx';
import { RhythmPad } from './rhythm-pad.tsx';

/** After such a pause the rhythm begins anew: the ident has come round again. */
const ANEW_AFTER_S = 6;

/** An ident that was heard, typed or tapped in dots and dashes: which letters and which station it is. */
export function LookUpSection(): JSX.Element {
  const [stations, setStations] = useState<KnownStations | null>(null);
  const [problem, setProblem] = useState('');
  const [text, setText] = useState('');
  const [presses, setPresses] = useState<readonly Press[]>([]);
  const [from, setFrom] = useState<LatLon | null>(null);
  useEffect(() => {
    knownStations().then(setStations, () => {
      setProblem(
        'The stations of this device could not be read. Letters can be looked up all the same.',
      );
    });
  }, []);
  const type = (typed: string): void => {
    setPresses([]);
    setText(typed);
  };
  const tap = (press: Press): void => {
    setText('');
    setPresses((before) => {
      const last = before.at(-1);
      const isAnew =
        last !== undefined && press.startS - last.startS - last.durationS > ANEW_AFTER_S;
      return isAnew ? [press] : [...before, press];
    });
  };
  const letters = presses.length > 0 ? tappedLetters(presses) : typedLetters(text);
  const here = from ?? stations?.planned[0] ?? stations?.ofFlights[0] ?? null;
  const found = useMemo(() => {
    if (stations === null || here === null) return [];
    if (presses.length > 0) return foundByRhythm(stations.all, presses, here);
    return foundByPatterns(stations.all, readPatterns(text), here);
  }, [stations, here, presses, text]);
  return (
    <section class="look-up" aria-labelledby="look-up-title">
      <h2 id="look-up-title" class="hidden">
        Look up
      </h2>
      <p>Key what you hear, and see which letters and which station it could be.</p>
      <KeyedLetters letters={letters} />
      <PatternKeys text={text} hasPresses={presses.length > 0} onType={type} />
      <RhythmPad onPress={tap} />
      <p class="problem" role="alert">
        {problem}
      </p>
      {stations === null ? null : (
        <>
          <NearestTo stations={stations.ofFlights} from={here} onFrom={setFrom} />
          <FoundList found={found} isKeyed={letters.length > 0} many={stations.all.length} />
        </>
      )}
    </section>
  );
}

function typedLetters(text: string): readonly KeyedLetter[] {
  const patterns = readPatterns(text);
  const isEnded = /[\s/|]$/.test(text);
  return patterns.map((pattern, index) => ({
    pattern,
    likeliest: pattern,
    isOpen: index === patterns.length - 1 && !isEnded,
  }));
}

function tappedLetters(presses: readonly Press[]): readonly KeyedLetter[] {
  const { keyed, patterns } = lettersOfRhythm(presses);
  return keyed.map((elements, index) => ({
    pattern: elements
      .map(({ element, isSure }) => (isSure ? (element === 'dot' ? '.' : '-') : '?'))
      .join(''),
    likeliest: patterns[index] ?? '',
    isOpen: index === keyed.length - 1,
  }));
}
