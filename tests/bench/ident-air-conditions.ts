// The conditions of the benches by name.
import { pick } from './ident-air-keying.ts';
import type { Fist, KeyedMark } from './ident-air-keying.ts';
import type { Chance } from './track-chance.ts';

/** What a clip is like; all that is left out is not there, or as usual. */
export interface Air {
  /** False: no station is heard. */
  readonly hasStation?: boolean;
  readonly ident?: string;
  /** Power of the held tone over that of white noise in 3 kHz. */
  readonly snr3kDb?: number;
  /** Power of the held tone over cabin noise in 300 to 3300 Hz. */
  readonly cabinDb?: number;
  /** Power of the held tone over speech while it is spoken. */
  readonly voiceDb?: number;
  readonly fadingDb?: number;
  readonly fist?: Fist;
  readonly wpm?: number;
  readonly toneHz?: number;
  readonly sampleRateHz?: number;
  readonly hasDme?: boolean;
  readonly hasEcho?: boolean;
  readonly hasGainControl?: boolean;
  readonly isBandPassed?: boolean;
  readonly clipDb?: number;
  readonly other?: 'with' | 'before';
  readonly cut?: 'start' | 'end';
  /** Tones that are no ident. */
  readonly intruders?: (lengthS: number) => KeyedMark[];
}

const RATES_HZ = [8000, 16_000, 44_100, 48_000] as const;

/** The channel of the mixtures, between two radios that pump, clip and cut the band. */
function mixture(chance: Chance): Air {
  return {
    cabinDb: 0,
    voiceDb: chance.uniform(0, 8),
    hasGainControl: true,
    clipDb: 6,
    isBandPassed: true,
    hasEcho: true,
    sampleRateHz: RATES_HZ[pick(chance, 3)] ?? 8000,
  };
}

const FISTS: readonly Fist[] = ['machine', 'cam', 'hand'];

const NAMED: Readonly<Record<string, (chance: Chance) => Air>> = {
  hand: (chance) => ({ snr3kDb: 5, fist: 'hand', wpm: chance.uniform(5, 15) }),
  cam: (chance) => ({ snr3kDb: 5, fist: 'cam', wpm: chance.uniform(5.5, 11) }),
  fade: () => ({ snr3kDb: 0, fadingDb: 5 }),
  agc: () => ({ cabinDb: 0, hasGainControl: true }),
  clip: () => ({ cabinDb: 0, clipDb: 6 }),
  reverb: () => ({ snr3kDb: 10, hasEcho: true }),
  band: () => ({ snr3kDb: 0, isBandPassed: true }),
  dme: () => ({ snr3kDb: 5, hasDme: true }),
  'dme-only': (chance) => ({ snr3kDb: 5, toneHz: chance.uniform(1330, 1370) }),
  'off-tune': (chance) => ({
    snr3kDb: 0,
    toneHz: pick(chance, 2) === 0 ? chance.uniform(962, 975) : chance.uniform(1065, 1078),
  }),
  rates: (chance) => ({ snr3kDb: -6, sampleRateHz: RATES_HZ[pick(chance, 4)] ?? 8000 }),
  all0: (chance) => ({
    ...mixture(chance),
    fadingDb: 5,
    fist: FISTS[pick(chance, 3)] ?? 'machine',
    wpm: chance.uniform(5.5, 11),
  }),
  overlap: () => ({ snr3kDb: 5, other: 'with' }),
  retuned: () => ({ snr3kDb: 5, other: 'before' }),
  test: () => ({ snr3kDb: 5, ident: 'TEST' }),
  'cut-start': () => ({ snr3kDb: 5, cut: 'start' }),
  'cut-end': () => ({ snr3kDb: 5, cut: 'end' }),
  none_noise: () => ({ hasStation: false, snr3kDb: 0 }),
  none_cabin: () => ({ hasStation: false, cabinDb: 0 }),
  none_speech: () => ({ hasStation: false, snr3kDb: 20, voiceDb: 0 }),
  none_mix: (chance) => ({ hasStation: false, ...mixture(chance), voiceDb: chance.uniform(-6, 6) }),
  none_silence: () => ({ hasStation: false }),
  none_steady: (chance) => ({ hasStation: false, snr3kDb: 5, intruders: steadyTone(chance) }),
  none_pulses: (chance) => ({ hasStation: false, snr3kDb: 5, intruders: pulses(chance) }),
  none_beeps: (chance) => ({ hasStation: false, snr3kDb: 5, intruders: beeps(chance) }),
};

/**
 * The condition of a name. `awgn-16`: white noise, the tone 16 dB under it in 3 kHz, 7 words a minute
 * as in the table of goals; `cabin0`, `voice-6` (the voice 6 dB stronger than the tone) likewise.
 */
export function airOf(name: string, chance: Chance): Air {
  const named = NAMED[name];
  if (named !== undefined) return named(chance);
  const [, kind, db] = /^(awgn|cabin|voice)(-?\d+(?:\.\d+)?)$/.exec(name) ?? [];
  if (kind === 'awgn') return { snr3kDb: Number(db), wpm: 7 };
  if (kind === 'cabin') return { cabinDb: Number(db) };
  if (kind === 'voice') return { voiceDb: Number(db), snr3kDb: 15 };
  throw new Error(`there is no condition ${name}`);
}

function usualTone(chance: Chance): number {
  return chance.uniform(970, 1070);
}

function steadyTone(chance: Chance): (lengthS: number) => KeyedMark[] {
  const toneHz = usualTone(chance);
  return (lengthS) => [{ startS: -1, durationS: lengthS + 2, isDash: true, toneHz, level: 1 }];
}

/** Even pulses, of any length, without an end. */
function pulses(chance: Chance): (lengthS: number) => KeyedMark[] {
  const toneHz = usualTone(chance);
  const periodS = chance.uniform(0.2, 1.5);
  const durationS = periodS * chance.uniform(0.2, 0.7);
  return (lengthS) =>
    Array.from({ length: Math.ceil(lengthS / periodS) + 1 }, (_, index) => ({
      startS: (index - 0.5) * periodS,
      durationS,
      isDash: false,
      toneHz,
      level: 1,
    }));
}

/** Beeps of any length at any time, one to three seconds apart: no rhythm of a letter. */
function beeps(chance: Chance): (lengthS: number) => KeyedMark[] {
  const toneHz = usualTone(chance);
  return (lengthS) => {
    const marks: KeyedMark[] = [];
    let startS = chance.uniform(0, 1);
    while (startS < lengthS) {
      const durationS = Math.exp(chance.uniform(Math.log(0.05), Math.log(1.5)));
      marks.push({ startS, durationS, isDash: false, toneHz, level: 1 });
      startS += durationS + Math.exp(chance.uniform(Math.log(0.05), Math.log(3)));
    }
    return marks;
  };
}
