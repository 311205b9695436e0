// Lets the ear listen to clips and counts what it makes of them.
import { streamOf } from '../../src/ident/detector/stream.ts';
import { tell, tellAgain, verdictFrom } from '../../src/ident/detector/tell.ts';
import type { Telling } from '../../src/ident/detector/tell.ts';
import type { Confirmation, IdentHeard } from '../../src/ident/heard.ts';
import { codeOf, LETTERS, pick, randomIdent } from './ident-air-keying.ts';
import { makeClip } from './ident-air.ts';
import type { Clip } from './ident-air.ts';
import type { Line } from './ident-lines.ts';
import { chanceFrom } from './track-chance.ts';
import type { Chance } from './track-chance.ts';

/** Answers to one kind of question. */
export interface Verdicts {
  confirmed: number;
  different: number;
  asked: number;
}

/** What came of the clips of a line. */
export interface Tally {
  clips: number;
  /** The likeliest ident is the one keyed. */
  whole: number;
  /** An ident is told, and it is not the one keyed. */
  saidWrong: number;
  saidNothing: number;
  readonly true: Verdicts;
  /** Expected: one element away from what is keyed. */
  readonly near: Verdicts;
  readonly wrong: Verdicts;
  /** Clips in which the likeliest ident is a wrong one and would have been confirmed. */
  worstCase: number;
  /** For looking into: seed and what was heard. */
  readonly remarks: string[];
}

/** Seeds of the clips of a line: apart from those of any other seed. */
export function clipSeed(seed: number, index: number): number {
  return seed * 100_000 + index;
}

/** The likeliest ident, also where it is not told because it is not sure enough. */
export function likeliestOf(heard: IdentHeard): string {
  return heard.letters ?? heard.perLetter.map(({ letter }) => letter).join('');
}

function noVerdicts(): Verdicts {
  return { confirmed: 0, different: 0, asked: 0 };
}

function emptyTally(): Tally {
  return {
    clips: 0,
    whole: 0,
    saidWrong: 0,
    saidNothing: 0,
    true: noVerdicts(),
    near: noVerdicts(),
    wrong: noVerdicts(),
    worstCase: 0,
    remarks: [],
  };
}

function count(verdicts: Verdicts, answer: Confirmation | undefined): void {
  verdicts.asked += 1;
  if (answer?.verdict === 'confirmed') verdicts.confirmed += 1;
  if (answer?.verdict === 'different') verdicts.different += 1;
}

/** Clips of a line with a station; each is read once and asked about the right, a near and a wrong ident. */
export function tallyStation(line: Line, clips: number, seed: number): Tally {
  const tally = emptyTally();
  for (let index = 0; index < clips; index += 1) {
    takeIn(tally, makeClip({ seed: clipSeed(seed, index), ...line }), clipSeed(seed, index));
  }
  return tally;
}

/** As `confirmIdent` answers, without reading the clip again. */
function answerTo(telling: Telling, expected: string): Confirmation {
  return verdictFrom(tellAgain(telling, {}, expected), expected);
}

function takeIn(tally: Tally, clip: Clip, seed: number): void {
  const keyed = clip.ident ?? '';
  const chance = chanceFrom(seed + 1);
  const asked = [keyed, nearIdent(keyed, chance), otherIdent(keyed, chance)];
  const telling = tell(streamOf(clip), {}, null);
  const answers = asked.map((each) => answerTo(telling, each));
  count(tally.true, answers[0]);
  count(tally.near, answers[1]);
  count(tally.wrong, answers[2]);
  const { heard } = telling.told;
  const best = likeliestOf(heard);
  const isRight = best === keyed;
  tally.clips += 1;
  if (isRight) tally.whole += 1;
  if (heard.letters === null) tally.saidNothing += 1;
  else if (heard.letters !== keyed) tally.saidWrong += 1;
  const isFooled = !isRight && wouldConfirm(telling, best);
  if (isFooled) tally.worstCase += 1;
  const verdicts = answers.map(({ verdict }) => verdict);
  const isUsual = isRight && verdicts[0] !== 'different' && !verdicts.includes('confirmed', 1);
  if (!isUsual) tally.remarks.push(`seed ${seed}: ${keyed} ${remark(heard, verdicts, isFooled)}`);
}

function remark(heard: IdentHeard, verdicts: readonly string[], isFooled: boolean): string {
  const told = heard.letters === null ? `not told, ${heard.why ?? ''}` : 'told';
  const answers = `${verdicts.join(', ')}${isFooled ? ', WOULD CONFIRM' : ''}`;
  return `read ${likeliestOf(heard)} (${told}): ${answers}`;
}

/** Clips without a station, each asked about `trials` random idents and about the likeliest one. */
export function tallyEmpty(condition: string, clips: number, seed: number, trials: number): Tally {
  const tally = emptyTally();
  for (let index = 0; index < clips; index += 1) {
    const clip = makeClip({ seed: clipSeed(seed, index), condition });
    const chance = chanceFrom(clipSeed(seed, index) + 1);
    const asked = Array.from({ length: trials }, () => randomIdent(chance));
    const telling = tell(streamOf(clip), {}, null);
    // The first is asked about as a pilot would; for the others it is enough that the clip was read.
    for (const each of asked.slice(1)) count(tally.wrong, verdictFrom(telling, each));
    for (const each of asked.slice(0, 1)) count(tally.wrong, answerTo(telling, each));
    const { heard } = telling.told;
    const best = likeliestOf(heard);
    tally.clips += 1;
    if (heard.letters === null) tally.saidNothing += 1;
    else tally.saidWrong += 1;
    const isFooled = wouldConfirm(telling, best);
    if (isFooled) tally.worstCase += 1;
    if (isFooled || heard.letters !== null) {
      tally.remarks.push(
        `seed ${clipSeed(seed, index)}: read ${best}${isFooled ? ', WOULD CONFIRM' : ''}`,
      );
    }
  }
  return tally;
}

/** Asked again without the other idents, as the pilot would; only one of three letters counts. */
function wouldConfirm(telling: Telling, expected: string): boolean {
  if (expected.length !== 3) return false;
  return answerTo(telling, expected).verdict === 'confirmed';
}

/** An ident that differs in one element: one changed, dropped or put in. */
function nearIdent(ident: string, chance: Chance): string {
  const place = pick(chance, ident.length);
  const near = lettersNear(ident[place] ?? 'E');
  return `${ident.slice(0, place)}${near[pick(chance, near.length)] ?? ''}${ident.slice(place + 1)}`;
}

function otherIdent(ident: string, chance: Chance): string {
  const other = randomIdent(chance);
  return other === ident ? otherIdent(ident, chance) : other;
}

function lettersNear(letter: string): string[] {
  const code = codeOf(letter);
  const near = new Set<string>();
  for (let at = 0; at <= code.length; at += 1) {
    for (const put of ['.', '-']) {
      near.add(code.slice(0, at) + put + code.slice(at));
      if (at < code.length) near.add(code.slice(0, at) + put + code.slice(at + 1));
    }
    if (at < code.length) near.add(code.slice(0, at) + code.slice(at + 1));
  }
  return Array.from(LETTERS).filter((each) => each !== letter && near.has(codeOf(each)));
}
