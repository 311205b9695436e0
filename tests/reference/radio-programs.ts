// Two programs for radio amateurs that know nothing of this project: one keys Morse code, one reads it.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

/** Sound of one ident, mono, -1 to 1. */
interface Keyed {
  readonly ident: string;
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
  readonly isCutShort: boolean;
}

const RATE_HZ = 16_000;
/** ebook2cw begins with the first mark at once: the quiet around an ident has to be put there. */
const QUIET_S = 1.2;

function run(program: string, args: readonly string[], input?: Uint8Array, home?: string): Buffer {
  const environment = home === undefined ? process.env : { ...process.env, HOME: home };
  const { status, stdout, stderr, error } = spawnSync(program, args, {
    ...(input === undefined ? {} : { input }),
    env: environment,
    maxBuffer: 64 * 1024 * 1024,
  });
  if (error !== undefined) {
    const packages = 'ebook2cw multimon-ng sox';
    throw new Error(`NOT RUN: ${program} is missing. Do: sudo apt-get install -y ${packages}`);
  }
  if (status !== 0) throw new Error(`${program} failed: ${stderr.toString('utf8')}`);
  return stdout;
}

/**
 * Idents keyed by ebook2cw (Fabian Kurz, Debian package ebook2cw), each alone with 1.2 s of digital
 * silence at both ends. It writes Ogg Vorbis, which sox turns into samples.
 */
export function keyedByEbook2cw(idents: readonly string[], wpm: number, toneHz: number): Keyed[] {
  const folder = mkdtempSync(path.join(tmpdir(), 'spoken-radial-keyed-'));
  try {
    return idents.map((ident) => {
      const out = path.join(folder, ident);
      const sound = ['-w', `${wpm}`, '-f', `${toneHz}`, '-s', `${RATE_HZ}`, '-O', '-o', out];
      // The home is its own: it would put its settings into that of whoever runs this.
      run('ebook2cw', sound, Buffer.from(`${ident}\n`), folder);
      const raw = run('sox', [`${out}0000.ogg`, '-t', 'f32', '-c', '1', '-r', `${RATE_HZ}`, '-']);
      return { ident, samples: quietAround(raw), sampleRateHz: RATE_HZ, isCutShort: false };
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function quietAround(raw: Buffer): Float32Array {
  const quiet = Math.round(QUIET_S * RATE_HZ);
  const count = Math.floor(raw.length / 4);
  const samples = new Float32Array(count + 2 * quiet);
  for (let index = 0; index < count; index += 1) {
    samples[quiet + index] = raw.readFloatLE(4 * index);
  }
  return samples;
}

/** The only rate at which multimon-ng reads raw samples. */
export const MULTIMON_RATE_HZ = 22_050;

/**
 * What multimon-ng (Elias Oenal and others, Debian package multimon-ng) reads in a WAV file of 22,050
 * samples a second, told the length of a dot: words, as it prints them.
 */
export function readByMultimon(wav: Uint8Array, dotMs: number): readonly string[] {
  const samples = wav.subarray(44);
  const timing = [`-d${Math.round(dotMs)}`, `-g${Math.round(dotMs)}`];
  const printed = run('multimon-ng', ['-q', '-c', '-a', 'MORSE_CW', ...timing, '-'], samples);
  return printed.toString('utf8').split(/\s+/).filter(Boolean);
}
