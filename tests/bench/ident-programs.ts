// Against programs of radio amateurs: npx tsx tests/bench/ident-programs.ts [--clips 500] [--seed 7001]
import { decodeIdent } from '../../src/ident/decode.ts';
import { identWav, readIdentRequest } from '../../src/ident/ident-request.ts';
import { keyedByEbook2cw, MULTIMON_RATE_HZ, readByMultimon } from '../reference/radio-programs.ts';
import { randomIdent } from './ident-air-keying.ts';
import { addWhite } from './ident-air-sound.ts';
import { inWords } from './ident-figure.ts';
import type { IdentFigure } from './ident-figure.ts';
import { likeliestOf } from './ident-tally.ts';
import { chanceFrom } from './track-chance.ts';
import type { Chance } from './track-chance.ts';
import { option } from './track-options.ts';

const WPM = 7;
const NOISY_DB = -10;

/** Scaled to a held tone of amplitude 1, with white noise in the midst of which it lies. */
function noisy(
  samples: Float32Array,
  rateHz: number,
  snr3kDb: number,
  chance: Chance,
): Float32Array {
  const loudest = samples.reduce((most, each) => Math.max(most, Math.abs(each)), 1e-9);
  const sound = Float64Array.from(samples, (each) => each / loudest);
  addWhite(sound, rateHz, snr3kDb, chance);
  return Float32Array.from(sound, (each) => each / 10);
}

/** ebook2cw keys, clean and 10 dB under the noise; multimon-ng reads what the tool keys. */
export function programFigures(clips: number, seed: number): readonly IdentFigure[] {
  const chance = chanceFrom(seed);
  const count = { clean: 0, told: 0, noisy: 0, read: 0 };
  for (let clip = 0; clip < clips; clip += 1) {
    const [keyed] = keyedByEbook2cw([randomIdent(chance)], WPM, 1020);
    if (keyed === undefined) continue;
    const heard = decodeIdent(keyed);
    if (likeliestOf(heard) === keyed.ident) count.clean += 1;
    if (heard.letters === keyed.ident) count.told += 1;
    const samples = noisy(keyed.samples, keyed.sampleRateHz, NOISY_DB, chance);
    if (likeliestOf(decodeIdent({ ...keyed, samples })) === keyed.ident) count.noisy += 1;
  }
  const keyed = Math.ceil(clips / 5);
  for (let turn = 0; turn < keyed; turn += 1) {
    const ident = randomIdent(chance);
    const request = readIdentRequest(ident, { sampleRateHz: MULTIMON_RATE_HZ, repeats: 1 });
    const read = request.ok ? readByMultimon(identWav(request.value), 1200 / WPM) : [];
    if (read.length === 1 && read[0] === ident) count.read += 1;
  }
  const part = (name: string, right: number, of: number, goalAtLeast: number): IdentFigure => ({
    name,
    value: (100 * right) / of,
    unit: '%',
    n: of,
    goalAtLeast,
  });
  return [
    part('keyed by ebook2cw, clean: read', count.clean, clips, 100),
    part('keyed by ebook2cw, clean: told', count.told, clips, 100),
    part(`keyed by ebook2cw, ${NOISY_DB} dB: read`, count.noisy, clips, 99.5),
    part('keyed by the tool, read by multimon-ng', count.read, keyed, 100),
  ];
}

if (process.argv[1]?.endsWith('ident-programs.ts') === true) {
  for (const each of programFigures(option('clips', 100), option('seed', 1))) {
    console.log(inWords(each));
  }
}
