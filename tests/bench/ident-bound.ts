// The bound for hearing an ident in white noise: npx tsx tests/bench/ident-bound.ts --clips 2000 --seed 1 [--json]
import { codeOf, LETTERS, randomIdent } from './ident-air-keying.ts';
import { chanceFrom } from './track-chance.ts';
import type { Chance } from './track-chance.ts';
import { isAsked, option } from './track-options.ts';

const WPM = 7;
const DOT_S = 1.2 / WPM;
/** Three letters of 19 dots at most, with two gaps of 3. */
const LONGEST = 64;

/** A letter as marks: where each begins and how long it is, in dots; and where the letter ends. */
const SHAPES = Array.from(LETTERS, (letter) => {
  let at = 0;
  const marks = Array.from(codeOf(letter), (element) => {
    const mark = { at, dots: element === '-' ? 3 : 1 };
    at += mark.dots + 1;
    return mark;
  });
  return { marks, length: at - 1 };
});

/**
 * Energy of a dot over the noise density, from the power of the tone over that of the noise in 3 kHz:
 * 27.1 dB more at 7 words a minute.
 */
function dotEnergy(snr3kDb: number): number {
  return 10 ** (snr3kDb / 10) * 3000 * DOT_S;
}

/** ln I0. *Source:* Abramowitz, Stegun, Handbook of Mathematical Functions, 9.8.1 and 9.8.2. */
function lnBessel0(x: number): number {
  if (x < 3.75) {
    const t = (x / 3.75) ** 2;
    const terms = [3.5156229, 3.0899424, 1.2067492, 0.2659732, 0.0360768, 0.0045813];
    return Math.log(1 + terms.reduce((sum, each, index) => sum + each * t ** (index + 1), 0));
  }
  const t = 3.75 / x;
  const terms = [
    0.39894228, 0.01328592, 0.00225319, -0.00157565, 0.00916281, -0.02057706, 0.02635537,
    -0.01647633, 0.00392377,
  ];
  return x - Math.log(x) / 2 + Math.log(terms.reduceRight((sum, each) => sum * t + each, 0));
}

/** What a receiver that knows all but the letters (and the phase of each mark) makes of one trial. */
function hearsRight(energy: number, repeats: number, chance: Chance): boolean {
  const ident = randomIdent(chance);
  const keyed = new Float64Array(LONGEST);
  let at = 0;
  for (const letter of ident) {
    const shape = SHAPES[LETTERS.indexOf(letter)];
    for (const mark of shape?.marks ?? []) keyed.fill(1, at + mark.at, at + mark.at + mark.dots);
    at += (shape?.length ?? 0) + 3;
  }
  const dot = new Float64Array(LONGEST);
  const dash = new Float64Array(LONGEST);
  for (let turn = 0; turn < repeats; turn += 1) addEvidence(keyed, energy, dot, dash, chance);
  return likeliest(dot, dash) === ident;
}

/** Log-likelihood ratios, on against off, of a dot and of a dash that begins at each dot's length. */
function addEvidence(
  keyed: Float64Array,
  energy: number,
  dot: Float64Array,
  dash: Float64Array,
  chance: Chance,
): void {
  const height = Math.sqrt(energy);
  const re = Float64Array.from(keyed, (on) => on * height + chance.normal(Math.SQRT1_2));
  const im = Float64Array.from(keyed, () => chance.normal(Math.SQRT1_2));
  const ratio = (from: number, dots: number): number => {
    let [sumRe, sumIm] = [0, 0];
    for (let index = from; index < Math.min(LONGEST, from + dots); index += 1) {
      sumRe += re[index] ?? 0;
      sumIm += im[index] ?? 0;
    }
    return lnBessel0(2 * height * Math.hypot(sumRe, sumIm)) - dots * energy;
  };
  for (let index = 0; index < LONGEST; index += 1) {
    dot[index] = (dot[index] ?? 0) + ratio(index, 1);
    dash[index] = (dash[index] ?? 0) + ratio(index, 3);
  }
}

/** The ident with the greatest likelihood of all 17,576. */
function likeliest(dot: Float64Array, dash: Float64Array): string {
  const scoreOf = (from: number): number[] =>
    SHAPES.map(({ marks }) =>
      marks.reduce((sum, { at, dots }) => sum + ((dots === 1 ? dot : dash)[from + at] ?? 0), 0),
    );
  const scores = Array.from({ length: LONGEST }, (_, from) => scoreOf(from));
  let best = { score: -Infinity, ident: '' };
  SHAPES.forEach((first, one) => {
    SHAPES.forEach((second, two) => {
      const from = first.length + 3;
      const last = scores[from + second.length + 3] ?? [];
      const before = (scores[0]?.[one] ?? 0) + (scores[from]?.[two] ?? 0);
      last.forEach((score, three) => {
        if (before + score <= best.score) return;
        best = { score: before + score, ident: `${LETTERS[one]}${LETTERS[two]}${LETTERS[three]}` };
      });
    });
  });
  return best.ident;
}

/**
 * Share of whole idents that a receiver reads which knows start, speed, tone, amplitude and noise:
 * noncoherent at each mark, maximum likelihood over all 17,576 idents of three letters.
 */
function boundAccuracy(snr3kDb: number, repeats: number, clips: number, seed: number): number {
  const chance = chanceFrom(seed * 1009 + 1);
  const energy = dotEnergy(snr3kDb);
  let right = 0;
  for (let clip = 0; clip < clips; clip += 1) {
    if (hearsRight(energy, repeats, chance)) right += 1;
  }
  return right / clips;
}

/** The bound at each decibel, from -26 to -12. */
type Curve = readonly { readonly snr3kDb: number; readonly accuracy: number }[];

export function boundCurve(repeats: number, clips: number, seed: number): Curve {
  return Array.from({ length: 15 }, (_, index) => {
    const snr3kDb = index - 26;
    return { snr3kDb, accuracy: boundAccuracy(snr3kDb, repeats, clips, seed + index) };
  });
}

/** How many decibels more than the bound were needed for the same share of right idents; null: off the curve. */
export function gapDb(curve: Curve, snr3kDb: number, accuracy: number): number | null {
  // Near 100 % the curve is too flat to be read backwards.
  if (accuracy > 0.985) return null;
  const above = curve.findIndex((each) => each.accuracy >= accuracy);
  const [low, high] = [curve[above - 1], curve[above]];
  if (low === undefined || high === undefined) return null;
  const along = (accuracy - low.accuracy) / (high.accuracy - low.accuracy);
  return snr3kDb - (low.snr3kDb + along * (high.snr3kDb - low.snr3kDb));
}

if (process.argv[1]?.endsWith('ident-bound.ts') === true) {
  const curves = [1, 2, 3].map((repeats) =>
    boundCurve(repeats, option('clips', 600), option('seed', 1)),
  );
  if (isAsked('json')) console.log(JSON.stringify(curves));
  else {
    console.log('SNR3k dB, whole idents % with 1, 2, 3 repeats');
    curves[0]?.forEach(({ snr3kDb }, index) => {
      const shares = curves.map((each) => (100 * (each[index]?.accuracy ?? NaN)).toFixed(1));
      console.log(`${snr3kDb}  ${shares.join('  ')}`);
    });
  }
}
