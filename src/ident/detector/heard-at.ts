import type { Stretch } from './amplitude.ts';
import type { HandOccurrence } from './hand-reading.ts';
import { keyOfLetters } from './likely-idents.ts';
import type { MachineReading } from './machine.ts';
import { marksOfPatterns, patternsOf } from './marks-of.ts';
import { placed } from './placement.ts';
import type { Ratios } from './timing.ts';
import type { ToneReading } from './tone-reading.ts';

/** As a machine keys. *Source:* ITU-R M.1677-1, annex 1. */
const BY_RULE: Ratios = { dash: 3, elementGap: 1, letterGap: 3 };

/** One time that an ident was keyed, as it looks if it was this one. */
export interface HeardAt {
  /** In frames; before 0 or after the end where the recording cut it off. */
  readonly marks: readonly Stretch[];
  readonly dotFrames: number;
  readonly ratios: Ratios;
  /** Patterns of the letters whose marks these are. */
  readonly patterns: readonly string[];
  readonly isByHand: boolean;
  /** Evidence for this ident, nats. */
  readonly evidence: number;
  /** Evidence for what fits best there, nats. */
  readonly mostEvidence: number;
  /** Elements of what fits best there. */
  readonly mostElements: number;
}

/** Each time that an ident (letters from A = 0) was keyed at a tone, by a machine or by hand. */
export function heardAt(
  reading: ToneReading,
  letters: readonly number[],
  isByHand: boolean,
): HeardAt[] {
  const { machine, hand, frames } = reading;
  if (isByHand) return hand.map((each) => byHand(each, letters, frames.frameS));
  return machine === null ? [] : byMachine(machine, letters);
}

function byHand(found: HandOccurrence, letters: readonly number[], frameS: number): HeardAt {
  const own = found.evidence.get(keyOfLetters(letters)) ?? found.floor;
  const mostEvidence = Math.max(...found.evidence.values());
  const { marks } = found;
  const timing = { dotFrames: found.dotS / frameS, ratios: found.ratios, isByHand: true };
  const keyed = { marks, patterns: patternsOf(found.letters), ...timing };
  return { ...keyed, evidence: own, mostEvidence, mostElements: marks.length };
}

function byMachine(machine: MachineReading, letters: readonly number[]): HeardAt[] {
  const { tables, found } = machine.best;
  return found.map((occurrence) => {
    const { place, evidence } = placed(tables, letters, occurrence);
    const most = placed(tables, occurrence.letters, occurrence);
    const marks = marksOfPatterns(patternsOf(letters)).map(({ fromUnits, toUnits }) => ({
      from: place - tables.lead + fromUnits * tables.unit,
      to: place - tables.lead + toUnits * tables.unit,
    }));
    const mostElements = patternsOf(occurrence.letters).join('').length;
    const { evidence: mostEvidence } = most;
    const keyed = { marks, patterns: patternsOf(letters), dotFrames: tables.unit };
    return { ...keyed, ratios: BY_RULE, isByHand: false, evidence, mostEvidence, mostElements };
  });
}
