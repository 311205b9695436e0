// Clips for measuring the ear of the tool. Shares no code with src/ident.
import { endOf, habitOf, keyOnce, pick, randomIdent } from './ident-air-keying.ts';
import type { KeyedMark } from './ident-air-keying.ts';
import { clip, controlGain, echo, fadingGain, recorded } from './ident-air-channel.ts';
import { airOf } from './ident-air-conditions.ts';
import type { Air } from './ident-air-conditions.ts';
import { addCabin, addMarks, addWhite, passBand } from './ident-air-sound.ts';
import { voiceFor } from './ident-air-voice.ts';
import { chanceFrom } from './track-chance.ts';
import type { Chance } from './track-chance.ts';

/** What clip is wanted. */
export interface ClipPlan {
  readonly seed: number;
  /** A name of `airOf`: `awgn-16`, `cabin0`, `voice-6`, `hand`, `none_mix` ... */
  readonly condition: string;
  /** Left out: random letters; null: no station (the `none_...` conditions have none anyway). */
  readonly ident?: string | null;
  readonly repeats?: number;
  readonly sampleRateHz?: number;
  readonly wpm?: number;
  readonly toneHz?: number;
}

/** A clip, and the truth about it. Can be given as a recording as it is. */
export interface Clip {
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
  readonly isCutShort: boolean;
  /** What is keyed; of two stations the stronger one, after retuning the later one. */
  readonly ident: string | null;
  /** The other station's ident, where there is one. */
  readonly other: string | null;
  readonly wpm: number;
  readonly toneHz: number;
  /** Of `ident`, in the clip's time (before 0 where the start is cut off). */
  readonly marks: readonly KeyedMark[];
}

const PERIOD_S = 10;

/** A clip from a seed: the same plan gives the same samples. */
export function makeClip(plan: ClipPlan): Clip {
  const chance = chanceFrom(plan.seed * 7919 + 17);
  const air = airOf(plan.condition, chance);
  const rateHz = plan.sampleRateHz ?? air.sampleRateHz ?? 8000;
  const usual = { wpm: chance.uniform(6, 9), toneHz: chance.uniform(970, 1070) };
  const wpm = plan.wpm ?? air.wpm ?? usual.wpm;
  const toneHz = plan.toneHz ?? air.toneHz ?? usual.toneHz;
  const ident = identOf(plan, air, randomIdent(chance));
  const keyed = keyedIdent(ident, { air, wpm, toneHz, repeats: plan.repeats ?? 1 }, chance);
  const { other, marks: otherMarks } = otherStation(air, keyed, toneHz, chance);
  const shiftS = air.other === 'before' ? endOf(otherMarks) + chance.uniform(0.5, 3) : 0;
  const cut = cutOf(air, keyed, chance);
  const marks = keyed.map((each) => ({ ...each, startS: each.startS + shiftS - cut.fromS }));
  const all = [...marks, ...otherMarks];
  const emptyS = chance.uniform(10, 20);
  const endS = cut.toS ?? endOf(all) + chance.uniform(1, 3);
  const length = Math.round((all.length === 0 ? emptyS : endS) * rateHz);
  const samples = recorded(heard(all, { air, rateHz, length }, chance), chance);
  return { samples, sampleRateHz: rateHz, isCutShort: false, ident, other, wpm, toneHz, marks };
}

function identOf(plan: ClipPlan, air: Air, drawn: string): string | null {
  if (air.hasStation === false || plan.ident === null) return null;
  return plan.ident ?? air.ident ?? drawn;
}

interface Station {
  readonly air: Air;
  readonly wpm: number;
  readonly toneHz: number;
  readonly repeats: number;
}

/** All marks of a station: each 10 s, or 2 s after a longer one; one in four on the DME's tone if asked. */
function keyedIdent(ident: string | null, station: Station, chance: Chance): KeyedMark[] {
  if (ident === null) return [];
  const { air, wpm, repeats } = station;
  const habit = habitOf(air.fist ?? 'machine', chance);
  const dmeTurn = air.hasDme === true ? pick(chance, 4) : -1;
  const marks: KeyedMark[] = [];
  let startS = chance.uniform(1, 3);
  for (let turn = 0; turn < repeats; turn += 1) {
    const isDme = turn % 4 === dmeTurn;
    const toneHz = isDme ? 1350 : station.toneHz;
    marks.push(...keyOnce(ident, { startS, wpm, toneHz }, habit, chance));
    startS = Math.max(startS + PERIOD_S, endOf(marks) + 2);
  }
  return marks;
}

/** Another station: at the same time on a tone and at a level of its own, or before this one was tuned in. */
function otherStation(
  air: Air,
  mine: readonly KeyedMark[],
  toneHz: number,
  chance: Chance,
): { readonly other: string | null; readonly marks: KeyedMark[] } {
  if (air.other === undefined) return { other: null, marks: [] };
  const other = randomIdent(chance);
  const isBefore = air.other === 'before';
  const apartHz = chance.uniform(12, 40) * (pick(chance, 2) === 0 ? 1 : -1);
  const marks: KeyedMark[] = [];
  let startS = chance.uniform(0.8, 4);
  const habit = habitOf('machine', chance);
  const wpm = chance.uniform(6, 9);
  const level = isBefore ? 1 : 10 ** (-chance.uniform(0, 4) / 20);
  do {
    marks.push(...keyOnce(other, { startS, wpm, toneHz: toneHz + apartHz, level }, habit, chance));
    startS = Math.max(startS + PERIOD_S, endOf(marks) + 2);
  } while (!isBefore && startS < endOf(mine) - 4);
  return { other, marks };
}

/** Where the recording begins and ends: inside the first or the last ident when it is to be cut off. */
function cutOf(
  air: Air,
  marks: readonly KeyedMark[],
  chance: Chance,
): { readonly fromS: number; readonly toS: number | null } {
  const first = marks[0];
  const last = marks.at(-1);
  if (air.cut === undefined || first === undefined || last === undefined) {
    return { fromS: 0, toS: null };
  }
  // Somewhere after the first mark and before the last one of a single ident.
  const inOne = marks.filter((each) => each.startS < first.startS + 9.5).slice(1, -1);
  const gone = inOne[pick(chance, inOne.length)] ?? last;
  const offS = gone.startS - first.startS;
  if (air.cut === 'start') return { fromS: first.startS + offS, toS: null };
  const lastIdentS = last.startS + last.durationS - (endOf([...inOne, first]) - first.startS);
  return { fromS: 0, toS: Math.max(first.startS + 1, lastIdentS + offS) };
}

interface Sound {
  readonly air: Air;
  readonly rateHz: number;
  readonly length: number;
}

/** All that is heard: the marks, what disturbs them, and what the channel does to both. */
function heard(marks: readonly KeyedMark[], sound: Sound, chance: Chance): Float64Array {
  const { air, rateHz, length } = sound;
  const samples = new Float64Array(length);
  const gain = air.fadingDb === undefined ? () => 1 : fadingGain(air.fadingDb, chance);
  addMarks(samples, rateHz, marks, chance, gain);
  addMarks(samples, rateHz, air.intruders?.(length / rateHz) ?? [], chance, () => 1);
  if (air.voiceDb !== undefined) addVoice(samples, rateHz, air.voiceDb, chance);
  if (air.snr3kDb !== undefined) addWhite(samples, rateHz, air.snr3kDb, chance);
  passThrough(samples, sound, chance);
  return samples;
}

function addVoice(samples: Float64Array, rateHz: number, db: number, chance: Chance): void {
  const level = Math.SQRT1_2 * 10 ** (-db / 20);
  const voice = voiceFor(samples.length, rateHz, chance);
  for (let index = 0; index < samples.length; index += 1) {
    samples[index] = (samples[index] ?? 0) + level * (voice[index] ?? 0);
  }
}

/** From the loudspeaker to the recording, in place. */
function passThrough(samples: Float64Array, { air, rateHz }: Sound, chance: Chance): void {
  if (air.hasEcho === true) echo(samples, rateHz, chance);
  if (air.cabinDb !== undefined) addCabin(samples, rateHz, air.cabinDb, chance);
  if (air.isBandPassed === true) {
    passBand(samples, rateHz, chance.uniform(250, 400), chance.uniform(2400, 3300));
  }
  if (air.hasGainControl === true) controlGain(samples, rateHz, chance);
  if (air.clipDb !== undefined) clip(samples, air.clipDb);
}
