// Voices on the channel, spoken by espeak-ng once and kept in build/ident-voices.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, renameSync } from 'node:fs';
import path from 'node:path';
import { pick } from './ident-air-keying.ts';
import { chanceFrom } from './track-chance.ts';
import type { Chance } from './track-chance.ts';

const FOLDER = path.join(import.meta.dirname, '..', '..', 'build', 'ident-voices');
const VOICES = ['en-us', 'en-gb', 'en-gb-scotland', 'en-gb-x-rp'] as const;
const KINDS = ['+m1', '+m3', '+m7', '+f2', '+f4', ''] as const;
const RECORDINGS = 48;

/** Why no voices can be made here; null when they can. */
export function whyNoVoice(): string | null {
  return spawnSync('espeak-ng', ['--version']).status === 0
    ? null
    : 'espeak-ng is not installed (apt-get install espeak-ng)';
}

const DIGITS = 'zero one two three four five six seven eight niner'.split(' ');
const LETTER_WORDS = 'alfa bravo charlie delta echo foxtrot golf hotel india juliett kilo'.split(
  ' ',
);

/** A broadcast such as a station may carry; invented, without the name of any place. */
function broadcast(chance: Chance): string {
  const digits = (count: number): string =>
    Array.from({ length: count }, () => DIGITS[pick(chance, 10)] ?? '').join(' ');
  const name = LETTER_WORDS[pick(chance, LETTER_WORDS.length)] ?? '';
  const parts = [
    `Wind ${digits(3)} degrees, ${digits(2)} knots.`,
    `Visibility ${digits(1)} kilometres in light rain.`,
    `Cloud few at ${digits(1)} thousand feet, broken at ${digits(1)} thousand ${digits(1)} hundred.`,
    `Temperature ${digits(2)}, dew point ${digits(1)}.`,
    `Altimeter ${digits(4)}.`,
    `Landing runway ${digits(2)}, expect the visual approach.`,
    `Taxiway ${name} is closed between ${digits(1)} and ${digits(1)}.`,
    'Bird activity in the vicinity of the field.',
    `Contact ground on one two one decimal ${digits(1)} before taxi.`,
    'Transponder on during taxi. Check notices before departure.',
  ].sort(() => chance.uniform(-1, 1));
  return `Information ${name}, time ${digits(4)}. ${parts.join(' ')} Advise on first contact that you have ${name}.`;
}

function spoken(index: number): Float64Array {
  const file = path.join(FOLDER, `voice-${index}.wav`);
  if (!existsSync(file)) {
    mkdirSync(FOLDER, { recursive: true });
    const chance = chanceFrom(900_000 + index);
    const voice = `${VOICES[index % VOICES.length] ?? 'en'}${KINDS[index % KINDS.length] ?? ''}`;
    const pace = Math.round(chance.uniform(130, 190));
    const pitch = Math.round(chance.uniform(25, 70));
    // Written aside first: two benches may run at once.
    const aside = `${file}.${process.pid}`;
    const args = ['-v', voice, '-s', `${pace}`, '-p', `${pitch}`, '-w', aside, broadcast(chance)];
    const { status, stderr } = spawnSync('espeak-ng', args, { encoding: 'utf8' });
    if (status !== 0) throw new Error(`espeak-ng could not speak: ${stderr}`);
    renameSync(aside, file);
  }
  return readPcm16(readFileSync(file));
}

/** Samples of a WAV file as espeak-ng writes it: mono, 16 bits, 22,050 Hz, header of 44 bytes. */
function readPcm16(bytes: Buffer): Float64Array {
  const at = bytes.indexOf('data') + 8;
  const count = Math.floor((bytes.length - at) / 2);
  return Float64Array.from(
    { length: count },
    (_, index) => bytes.readInt16LE(at + 2 * index) / 32768,
  );
}

const VOICE_RATE_HZ = 22_050;
const kept = new Map<number, Float64Array>();

/**
 * Speech for a clip: a stretch of a broadcast from a random moment on, up to a tenth quicker or slower,
 * round and round, with a root mean square of 1 while it is spoken.
 */
export function voiceFor(length: number, rateHz: number, chance: Chance): Float64Array {
  const index = pick(chance, RECORDINGS);
  const source = kept.get(index) ?? spoken(index);
  kept.set(index, source);
  const step = (VOICE_RATE_HZ * chance.uniform(0.9, 1.1)) / rateHz;
  const from = chance.uniform(0, source.length);
  const out = resampled(source, from, step, length);
  const active = activeRms(out, rateHz);
  return out.map((each) => each / active);
}

/** Windowed-sinc interpolation, low-passed when the rate goes down. */
function resampled(source: Float64Array, from: number, step: number, length: number): Float64Array {
  const cut = Math.min(1, 0.92 / step);
  const half = Math.ceil(8 / cut);
  return Float64Array.from({ length }, (_, index) => {
    const at = from + index * step;
    const middle = Math.floor(at);
    let sum = 0;
    for (let tap = middle - half + 1; tap <= middle + half; tap += 1) {
      const off = at - tap;
      const turn = Math.PI * off * cut;
      const sinc = Math.abs(turn) < 1e-9 ? 1 : Math.sin(turn) / turn;
      const window = 0.5 + 0.5 * Math.cos((Math.PI * off) / half);
      sum += cut * sinc * window * (source[tap % source.length] ?? 0);
    }
    return sum;
  });
}

/** Root mean square over the 50 ms pieces that are within 25 dB of the loudest: while it is spoken. */
function activeRms(samples: Float64Array, rateHz: number): number {
  const size = Math.round(0.05 * rateHz);
  const powers: number[] = [];
  for (let at = 0; at + size <= samples.length; at += size) {
    let sum = 0;
    for (let index = at; index < at + size; index += 1) sum += (samples[index] ?? 0) ** 2;
    powers.push(sum / size);
  }
  const loudest = Math.max(1e-12, ...powers);
  const active = powers.filter((each) => each > loudest * 10 ** -2.5);
  return (
    Math.sqrt(active.reduce((sum, each) => sum + each, 0) / Math.max(1, active.length)) || 1e-6
  );
}
