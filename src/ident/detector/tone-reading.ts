import { amplitudeFromMarks, loudAmplitude, localAmplitude } from './amplitude.ts';
import type { Stretch } from './amplitude.ts';
import { framesAt } from './frames.ts';
import type { Frames } from './frames.ts';
import { handEvidence, handReading } from './hand-reading.ts';
import type { HandOccurrence } from './hand-reading.ts';
import { heldEvidence } from './held.ts';
import { loopEvidence, plus } from './ident-loop.ts';
import { lettersOfKey, likelyIdents } from './likely-idents.ts';
import type { IdentKey } from './likely-idents.ts';
import type { Listened } from './listened.ts';
import { levelsFor } from './levels.ts';
import { machineReading, roughReading, stretchesOf } from './machine.ts';
import type { MachineReading } from './machine.ts';
import { identLogPrior } from './occurrences.ts';
import { detuningHz } from './retune.ts';
import type { ToneFound } from './tone-search.ts';

/** What one tone holds, read as keyed by a machine and as keyed by hand. */
export interface ToneReading {
  readonly tone: ToneFound;
  readonly frames: Frames;
  /** Of the held tone, on the whole. */
  readonly meanAmplitude: number;
  readonly machine: MachineReading | null;
  readonly hand: readonly HandOccurrence[];
  /** Evidence that the tone is only held, or switched now and then, or not there at all. */
  readonly held: number;
  /** How much an ident explains beyond that, nats. */
  readonly score: number;
}

/** How usual it is that a machine keys. *Source:* common practice, no source. */
const BY_MACHINE = 0.85;

const MOST_LIKELY = 60;

/** Reads one tone; null when nothing is keyed there. */
export function readTone(listened: Listened, tone: ToneFound): ToneReading | null {
  const beside = listened.besideAt(tone.offsetHz);
  const first = framesAt(listened.stream, tone.offsetHz, beside);
  const guess = localAmplitude(first);
  const rough = roughReading(first, guess);
  if (rough === null) return null;
  const byHand = handReading(first, guess, levelsFor(first, guess));
  const isHand = total(byHand) > rough.score;
  const marks = isHand ? byHand.flatMap((each) => each.marks) : rough.marks;
  // The tone's exact place and level follow from the marks; both ways of keying are then judged by them.
  const offsetHz = tone.offsetHz + detuningHz(first, marks, loudAmplitude(first));
  const frames = framesAt(listened.stream, offsetHz, beside);
  const { amplitude, mean, spread } = amplitudeFromMarks(frames, marks);
  const levels = levelsFor(frames, amplitude, spread);
  const hand = handReading(frames, amplitude, levels);
  const machine = machineReading(levels, rough.dotS, frames.frameS);
  const held = heldEvidence(levels, frames.frameS);
  const score = Math.max(total(hand), machine?.score ?? 0) - Math.max(0, held);
  return { tone: { ...tone, offsetHz }, frames, meanAmplitude: mean, machine, hand, held, score };
}

/** Evidence of all idents that were read at a tone, by the better way of keying, nats. */
export function keyedTotal({ machine, hand }: ToneReading): number {
  return Math.max(total(hand), machine?.score ?? 0);
}

/** The marks of the idents that were read at a tone, in frames. */
export function marksOfReading({ machine, hand }: ToneReading): Stretch[] {
  const isHand = total(hand) > (machine?.score ?? 0);
  if (isHand || machine === null) return hand.flatMap((each) => each.marks);
  return stretchesOf(machine.best.found, machine.best.tables);
}

function total(found: readonly HandOccurrence[]): number {
  return found.reduce((sum, { score }) => sum + score, 0);
}

/** The idents that may be keyed at a tone, the likeliest first, at most 60 by each way of keying. */
export function likeliestAt({ machine, hand }: ToneReading): IdentKey[] {
  const speed = machine?.best;
  const byMachine =
    speed?.found.map((each, n) => likelyIdents(speed, each, speed.found[n - 1] ?? null)) ?? [];
  const byHand = hand.map(({ evidence }) => evidence);
  return [...ranked(byMachine, () => 0), ...ranked(byHand, priorOf)];
}

function priorOf(key: IdentKey): number {
  return identLogPrior(lettersOfKey(key).length);
}

/** The idents with most evidence in all lists together; one that a list lacks counts as just too poor. */
function ranked(
  lists: readonly ReadonlyMap<IdentKey, number>[],
  prior: (key: IdentKey) => number,
): IdentKey[] {
  const floors = lists.map((list) => Math.max(...list.values()) - 15);
  const keys = [...new Set(lists.flatMap((list) => [...list.keys()]))];
  const scored = keys.map((key) => ({
    key,
    score: lists.reduce((sum, list, n) => sum + (list.get(key) ?? floors[n] ?? 0), prior(key)),
  }));
  scored.sort((a, b) => b.score - a.score);
  return scored.slice(0, MOST_LIKELY).map(({ key }) => key);
}

/** Evidence for one ident at one tone, nats, beyond that for a tone without rhythm. */
export function evidenceAt(reading: ToneReading, key: IdentKey): number {
  const { machine, hand, held } = reading;
  const byMachine =
    machine === null ? 0 : machineEvidence(machine, lettersOfKey(key), reading.frames.frameS);
  const keyed = plus(
    Math.log(BY_MACHINE) + byMachine,
    Math.log(1 - BY_MACHINE) + handEvidence(hand, key),
  );
  return plus(keyed, held) - plus(0, held);
}

/** Whether an ident at a tone looks keyed by hand rather than by a machine. */
export function isHandBetter({ machine, hand, frames }: ToneReading, key: IdentKey): boolean {
  const byMachine =
    machine === null ? 0 : machineEvidence(machine, lettersOfKey(key), frames.frameS);
  return handEvidence(hand, key) > byMachine;
}

function machineEvidence(
  machine: MachineReading,
  letters: readonly number[],
  frameS: number,
): number {
  return machine.speeds.reduce(
    (sum, { tables }) => plus(sum, loopEvidence(tables, letters, frameS)),
    -Infinity,
  );
}
