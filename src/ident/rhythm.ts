import type { Element } from './morse.ts';
import { elementsOf } from './morse.ts';
import { letterOf } from './drill/letters.ts';

/** One press of the pad: seconds. */
export interface Press {
  readonly startS: number;
  readonly durationS: number;
}

/** One element as it was tapped. */
export interface TappedElement {
  readonly element: Element;
  /** False where it may as well be the other one. */
  readonly isSure: boolean;
}

/** A rhythm as it was understood. */
export interface Rhythm {
  /** Dots and dashes of each letter: `--.-`. */
  readonly patterns: readonly string[];
  /** The letters, or null when there are none or a pattern is no letter. */
  readonly letters: string | null;
  /** The elements of each letter, with how sure they are. */
  readonly keyed: readonly (readonly TappedElement[])[];
}

/** Lengths in dots, and how far people are off: one standard deviation of the logarithm. */
const DOT = { units: 1, spread: 0.28 } as const;
const DASH = { units: 3, spread: 0.28 } as const;
const GAP_IN_LETTER = { units: 1, spread: 0.45 } as const;
const GAP_AFTER_LETTER = { units: 3, spread: 0.45 } as const;

/** A longer wait between letters is just as much one: only then does it fall off slowly. */
const LONG_WAIT_SPREAD = 1.5;

/** How long a dot may be, seconds, and how fast most people tap: a station's 7 words a minute. */
const DOT_S = { least: 0.05, most: 0.6, usual: 0.171, spread: 0.5 } as const;
const SPEEDS = 48;

const SURE = 0.9;

interface Heard {
  readonly lengthsS: readonly number[];
  /** Between one press and the next: one fewer than the presses. */
  readonly gapsS: readonly number[];
}

/**
 * The letters of a rhythm that was tapped and held on a pad.
 *
 * The speed is found from the presses themselves: all speeds are weighed by how well they fit. An element
 * is sure when nine tenths of that weight agree. Presses that are no numbers or last no time are left out.
 * *Source:* lengths and gaps of ITU-R M.1677-1 with log-normal spreads; the spreads are common practice,
 * no source, and were not measured on people.
 */
export function lettersOfRhythm(presses: readonly Press[]): Rhythm {
  const heard = measured(presses);
  const weights = speedWeights(heard);
  const elements = heard.lengthsS.map((lengthS): TappedElement => {
    const dash = share(weights, lengthS, DASH, DOT);
    return { element: dash > 0.5 ? 'dash' : 'dot', isSure: Math.max(dash, 1 - dash) >= SURE };
  });
  const keyed: TappedElement[][] = [];
  for (const [index, element] of elements.entries()) {
    const gapS = heard.gapsS[index - 1];
    const isNew = gapS === undefined || share(weights, gapS, GAP_AFTER_LETTER, GAP_IN_LETTER) > 0.5;
    const letter = keyed.at(-1);
    if (letter === undefined || isNew) keyed.push([element]);
    else letter.push(element);
  }
  const patterns = keyed.map(patternOf);
  const letters = patterns.map(letterOf);
  const isAllKnown = letters.length > 0 && letters.every((letter) => letter !== null);
  return { patterns, letters: isAllKnown ? letters.join('') : null, keyed };
}

/**
 * How well a rhythm fits an ident, in nats: 0 as well as the best reading of it, -3 much worse, null when
 * it has more elements than the ident. `isWhole`: the ident has no more elements to come.
 */
export function fitOf(
  presses: readonly Press[],
  ident: string,
): { readonly nats: number; readonly isWhole: boolean } | null {
  const heard = measured(presses);
  const asked = elementsOf(ident);
  const many = heard.lengthsS.length;
  const length = asked.reduce((sum, letter) => sum + letter.length, 0);
  if (many === 0 || length < many) return null;
  const best = logFit(
    heard,
    lettersOfRhythm(presses).keyed.map((letter) => letter.map(kindOf)),
  );
  return { nats: logFit(heard, asked) - best, isWhole: length === many };
}

function kindOf({ element }: TappedElement): Element {
  return element;
}

function patternOf(letter: readonly TappedElement[]): string {
  return letter.map(({ element }) => (element === 'dot' ? '.' : '-')).join('');
}

function measured(presses: readonly Press[]): Heard {
  const sound = presses
    .filter(({ startS, durationS }) => Number.isFinite(startS) && durationS > 0 && durationS < 60)
    .toSorted((one, other) => one.startS - other.startS);
  const gapsS = sound.slice(1).map((press, index) => {
    const before = sound[index] ?? press;
    // Two fingers at once overlap: no gap is a very short one.
    return Math.max(0.01, press.startS - before.startS - before.durationS);
  });
  return { lengthsS: sound.map(({ durationS }) => durationS), gapsS };
}

interface Speed {
  readonly unitS: number;
  readonly weight: number;
}

interface Length {
  readonly units: number;
  readonly spread: number;
}

const SPEED_GRID: readonly number[] = Array.from(
  { length: SPEEDS },
  (_, index) => DOT_S.least * (DOT_S.most / DOT_S.least) ** (index / (SPEEDS - 1)),
);

/** How well each speed fits all that was tapped, whatever it means; the weights add up to 1. */
function speedWeights({ lengthsS, gapsS }: Heard): readonly Speed[] {
  const logs = SPEED_GRID.map((unitS) => {
    const presses = lengthsS.map((each) =>
      Math.log(density(each, DOT, unitS) / 2 + density(each, DASH, unitS) / 2),
    );
    const gaps = gapsS.map((each) =>
      Math.log(
        0.6 * density(each, GAP_IN_LETTER, unitS) + 0.4 * density(each, GAP_AFTER_LETTER, unitS),
      ),
    );
    return prior(unitS) + sum(presses) + sum(gaps);
  });
  const top = Math.max(...logs);
  const all = sum(logs.map((each) => Math.exp(each - top)));
  return SPEED_GRID.map((unitS, index) => ({
    unitS,
    weight: Math.exp((logs[index] ?? top) - top) / all,
  }));
}

function share(speeds: readonly Speed[], lengthS: number, one: Length, other: Length): number {
  return sum(
    speeds.map(({ unitS, weight }) => {
      const ones = density(lengthS, one, unitS);
      return (weight * ones) / (ones + density(lengthS, other, unitS));
    }),
  );
}

/** Of what was tapped, given what it means so far; all speeds weighed. */
function logFit({ lengthsS, gapsS }: Heard, letters: readonly (readonly Element[])[]): number {
  const asked = letters.flatMap((letter) =>
    letter.map((element, index) => ({ element, startsLetter: index === 0 })),
  );
  const logs = SPEED_GRID.map((unitS) => {
    const fits = lengthsS.map((lengthS, index) => {
      const { element, startsLetter } = asked[index] ?? { element: 'dot', startsLetter: false };
      const press = Math.log(density(lengthS, element === 'dot' ? DOT : DASH, unitS));
      const gapS = gapsS[index - 1];
      if (gapS === undefined) return press;
      return (
        press + Math.log(density(gapS, startsLetter ? GAP_AFTER_LETTER : GAP_IN_LETTER, unitS))
      );
    });
    return prior(unitS) + sum(fits);
  });
  const top = Math.max(...logs);
  return top + Math.log(sum(logs.map((each) => Math.exp(each - top))));
}

function prior(unitS: number): number {
  return -0.5 * (Math.log(unitS / DOT_S.usual) / DOT_S.spread) ** 2;
}

/** Never quite nothing: a slip of the finger must not rule everything out. */
const SLIP = 1e-6;

function density(lengthS: number, { units, spread }: Length, unitS: number): number {
  const off = Math.log(lengthS / (units * unitS));
  const isLongWait =
    units === GAP_AFTER_LETTER.units && spread === GAP_AFTER_LETTER.spread && off > 0;
  const width = isLongWait ? LONG_WAIT_SPREAD : spread;
  return Math.exp(-0.5 * (off / width) ** 2) / spread + SLIP;
}

function sum(values: readonly number[]): number {
  return values.reduce((all, each) => all + each, 0);
}
