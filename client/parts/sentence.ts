import type { Advice } from '../../src/procedure/advice.ts';
import type { Command, HeardReading } from '../../src/speech/heard.ts';
import { hear } from '../../src/speech/vocabulary.ts';
import { checkReading } from '../../src/track/check-reading.ts';
import { speaker } from '../voice/speaker.ts';
import { checkDone, explain, giveReading, judgeIdent, reply, undoLastReading } from './actions.ts';
import { nowMs } from './clock.ts';
import { isHeadingRead, mannerOf, type Deck } from './deck.ts';
import { fieldsHeard, otherStationIn } from './other-station.ts';
import { rangeFindingOf } from '../../src/procedure/range-finding.ts';
import { rangeOffer } from '../../src/procedure/range-words.ts';
import { howFarReply, whichWayReply } from './replies.ts';

/** What came of a sentence: null when it was done, else why not, in words. */
export type SentenceProblem = string | null;

/** Does what a typed sentence says, through the same vocabulary as the voice. */
export async function takeSentence(deck: Deck, sentence: string): Promise<SentenceProblem> {
  const aircraft = deck.state.peek().plan?.aircraft;
  const dotsFullScale = aircraft?.dotsFullScale ?? 5;
  const heard = hear(sentence, { dotsFullScale });
  if (heard.kind === 'rejected') return takeOtherStation(deck, sentence, heard.reason);
  if (heard.reading !== undefined) {
    const problem = await takeReading(deck, heard.reading, heard.text);
    if (problem !== null) return problem;
  }
  return heard.command === undefined ? null : obey(deck, heard.command);
}

/** What another station showed ("QXF radial 240"); `otherwise` is why the sentence is nothing else. */
async function takeOtherStation(
  deck: Deck,
  sentence: string,
  otherwise: string,
): Promise<SentenceProblem> {
  const station = deck.leg.peek()?.station;
  const planned = (deck.state.peek().plan?.legs ?? []).map((leg) => leg.station);
  const other = station === undefined ? null : await otherStationIn(sentence, station, planned);
  if (other === null) return otherwise;
  if (other.kind === 'refused') return other.reason;
  const isRecorded = await giveReading(deck, other.fields, { via: 'typed', text: other.text });
  return isRecorded ? null : deck.problem.peek();
}

async function takeReading(
  deck: Deck,
  reading: HeardReading,
  text: string,
): Promise<SentenceProblem> {
  const fields = fieldsHeard(reading);
  const aircraft = deck.state.peek().plan?.aircraft;
  const shown = deck.draft.shown.peek();
  const station = deck.leg.peek()?.station;
  if (fields.dmeNm !== undefined && station?.hasDme === false)
    return `${station.ident} has no DME: give needle, flag and heading.`;
  if (aircraft !== undefined) {
    const { courseSetDeg, flag } = { ...shown, ...fields };
    const checked = checkReading({ atMs: 0, ...fields, courseSetDeg, flag }, aircraft);
    if (!checked.ok) {
      return checked.problem
        .map(({ expected, got }) => `Expected ${expected}, not ${got}.`)
        .join(' ');
    }
  }
  const isRecorded = await giveReading(deck, fields, { via: 'typed', text });
  return isRecorded ? null : deck.problem.peek();
}

async function obey(deck: Deck, command: Command): Promise<SentenceProblem> {
  const { advice } = deck.state.peek();
  switch (command) {
    case 'ident-confirmed':
      await judgeIdent(deck, 'confirmed');
      return null;
    case 'next-step':
      await checkDone(deck);
      return null;
    case 'correction':
      return (await undoLastReading(deck)) ? null : 'There is no reading to take back.';
    case 'say-again':
      speaker.sayAgain();
      return null;
    case 'how-far':
    case 'which-way':
    case 'why':
      if (advice === null) return 'No answer yet: give a reading first.';
      if (command === 'why') explain(deck);
      else reply(deck, command === 'how-far' ? howFarNow(deck) : whichWayNow(deck, advice));
      return null;
  }
}

function howFarNow(deck: Deck): string {
  const { advice, estimate } = deck.state.peek();
  const howFar = deck.foresight.peek()?.howFar ?? advice?.howFar;
  const words = howFarReply(howFar ?? null, mannerOf(), advice?.estimate.driftDeg);
  if (howFar?.toGoNm != null || estimate === null) return words;
  const finding = rangeFindingOf(estimate);
  return finding?.kind === 'offered' ? `${words} ${rangeOffer(finding)}` : words;
}

function whichWayNow(deck: Deck, { whichWay }: Advice): string {
  const atMs = nowMs.peek();
  const ageS = (atMs - (deck.last.peek()?.atMs ?? atMs)) / 1000;
  return whichWayReply(whichWay, ageS, isHeadingRead(deck));
}
