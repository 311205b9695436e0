// Recordings made mark by mark, with faults in them: the sound of the benches, nothing of src/ident.
import type { Recording } from '../../src/ident/recording.ts';
import { codeOf } from '../bench/ident-air-keying.ts';
import type { KeyedMark } from '../bench/ident-air-keying.ts';
import { addMarks, addWhite } from '../bench/ident-air-sound.ts';
import { chanceFrom } from '../bench/track-chance.ts';

/** How an ident is keyed; what is left out is as usual. */
export interface Keying {
  readonly startS?: number;
  readonly wpm?: number;
  readonly toneHz?: number;
  readonly level?: number;
  /** Lengths of elements by their place in the ident, dots. */
  readonly lengths?: Readonly<Record<number, number>>;
  /** Gaps before elements by their place, dots. */
  readonly gaps?: Readonly<Record<number, number>>;
  /** Elements with a hole of so many dots in the midst. */
  readonly holes?: Readonly<Record<number, number>>;
}

/** The marks of an ident keyed once. */
export function marksOf(ident: string, keying: Keying = {}): KeyedMark[] {
  const { toneHz = 1020, level = 1 } = keying;
  const dotS = 1.2 / (keying.wpm ?? 7);
  const marks: KeyedMark[] = [];
  let atS = keying.startS ?? 1.5;
  for (const [place, { length, gap, hole }] of elementsOf(ident, keying).entries()) {
    if (place > 0) atS += gap * dotS;
    const partS = (hole > 0 ? (length - hole) / 2 : length) * dotS;
    const laterS = atS + partS + hole * dotS;
    for (const startS of hole > 0 ? [atS, laterS] : [atS]) {
      marks.push({ startS, durationS: partS, isDash: false, toneHz, level });
    }
    atS += length * dotS;
  }
  return marks;
}

/** Length, gap before it, and hole of each element, dots. */
function elementsOf(
  ident: string,
  { lengths, gaps, holes }: Keying,
): { readonly length: number; readonly gap: number; readonly hole: number }[] {
  const plain = Array.from(ident).flatMap((letter) =>
    Array.from(codeOf(letter), (element, k) => ({
      length: element === '-' ? 3 : 1,
      gap: k === 0 ? 3 : 1,
    })),
  );
  return plain.map(({ length, gap }, place) => ({
    length: lengths?.[place] ?? length,
    gap: gaps?.[place] ?? gap,
    hole: holes?.[place] ?? 0,
  }));
}

/** An ident keyed alike at 1.5 s and at 10.5 s. */
export function twice(ident: string, keying: Keying = {}): KeyedMark[] {
  return [1.5, 10.5].flatMap((startS) => marksOf(ident, { ...keying, startS }));
}

/** Marks in white noise (tone over noise in 3 kHz, decibels; null: none). */
export function soundOf(
  marks: readonly KeyedMark[],
  lengthS: number,
  snr3kDb: number | null,
  add: (samples: Float64Array) => void = () => undefined,
): Recording {
  const sampleRateHz = 8000;
  const chance = chanceFrom(31);
  const samples = new Float64Array(lengthS * sampleRateHz);
  addMarks(samples, sampleRateHz, marks, chance, () => 1);
  if (snr3kDb !== null) addWhite(samples, sampleRateHz, snr3kDb, chance);
  add(samples);
  return { samples: Float32Array.from(samples, (x) => x / 8), sampleRateHz, isCutShort: false };
}
