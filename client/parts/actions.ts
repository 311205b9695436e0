import type { ReadingFields } from '../../src/flight/event.ts';
import { nextItem, type CheckLine } from '../../src/procedure/checklist.ts';
import { speaker } from '../voice/speaker.ts';
import { nowMs } from './clock.ts';
import type { Deck } from './deck.ts';
import { fieldsOf } from './expected-panel.ts';

/** Speaks the answer that stands, at once: whatever is being said has become less important. */
function sayAnswer(deck: Deck): void {
  const advice = deck.state.peek().advice;
  if (advice !== null) speaker.say(advice.say, { channel: 'answer', urgency: 'urgent' });
}

/** Answers a question of the pilot: said at once, and in the line of what was said. */
export function reply(deck: Deck, text: string): void {
  deck.isWhyShown.value = false;
  deck.lastCall.value = { text, atMs: nowMs.peek() };
  speaker.say(text, { channel: 'answer', urgency: 'urgent' });
}

/** Records a reading, or the correction of one, and speaks the answer. */
export async function giveReading(
  deck: Deck,
  fields: ReadingFields,
  from: { readonly via: 'tapped' | 'typed'; readonly text?: string },
): Promise<boolean> {
  const corrected = deck.draft.correcting.peek();
  const isRecorded = await deck.record(
    corrected === null
      ? { kind: 'reading', ...fields, ...from }
      : { kind: 'reading-corrected', readingId: corrected.eventId, ...fields },
  );
  if (!isRecorded) return false;
  clearDraft(deck);
  deck.isWhyShown.value = false;
  deck.lastCall.value = null;
  sayAnswer(deck);
  return true;
}

const CHECKLIST_DONE = 'The checklist is done.';
const FIRST_READING = 'Give me the first reading.';

const DOUBLE_TAP_MS = 400;

/** Records what the panel shows. */
export async function giveShown(deck: Deck): Promise<void> {
  if (performance.now() - deck.givenAt.peek() < DOUBLE_TAP_MS) return;
  const shown = deck.draft.shown.peek();
  if (shown.flag !== 'off' && shown.needleDots === null && shown.dmeNm === null) {
    deck.problem.value = 'Nothing read yet: slide the needle to where it stands.';
    return;
  }
  deck.givenAt.value = performance.now();
  await giveReading(deck, fieldsOf(shown), { via: 'tapped' });
}

/** Lets the panel follow what is expected again. */
export function clearDraft(deck: Deck): void {
  deck.draft.given.value = {};
  deck.draft.correcting.value = null;
}

/** Takes the last thing back that can be taken back. */
export async function undoLast(deck: Deck): Promise<void> {
  const undoable = deck.state.peek().undoable;
  if (undoable === null) return;
  const isRecorded = await deck.record({ kind: 'taken-back', eventId: undoable.eventId });
  if (!isRecorded) return;
  sayTakenBack(deck, undoable.what.startsWith('reading'));
}

/** The answer that stands again is said with it, when it was a reading that went. */
function sayTakenBack(deck: Deck, wasReading: boolean): void {
  const answer = wasReading ? deck.state.peek().advice?.say : undefined;
  const text = answer === undefined ? 'Taken back.' : `Taken back. ${answer}`;
  speaker.say(text, { channel: 'answer', urgency: 'urgent' });
}

/** Takes one reading back. */
export async function takeBackReading(deck: Deck, eventId: string): Promise<void> {
  const isRecorded = await deck.record({ kind: 'taken-back', eventId });
  if (isRecorded) sayTakenBack(deck, true);
}

/** Shows why the answer is as it is, and says it. */
export function explain(deck: Deck): void {
  const advice = deck.state.peek().advice;
  if (advice === null) return;
  deck.isWhyShown.value = !deck.isWhyShown.peek();
  if (deck.isWhyShown.peek()) speaker.say(advice.why, { channel: 'answer', urgency: 'urgent' });
}

/** Reads one item of the checklist aloud. */
export function sayLine(line: CheckLine | null): void {
  if (line !== null) speaker.say(line.say, { channel: 'checklist' });
}

/**
 * Ticks the item that is due; the one after it is read aloud. Identify goes to the ident instead, and
 * after the last item the next step is to start the leg.
 */
export async function checkDone(deck: Deck): Promise<void> {
  const line = nextItem(deck.lines.peek());
  if (line === null) {
    const { legs, legIndex, advice } = deck.state.peek();
    if (advice !== null) reply(deck, CHECKLIST_DONE);
    else if (legs[legIndex]?.startedAtMs === null) await startLeg(deck);
    else reply(deck, `${CHECKLIST_DONE} ${FIRST_READING}`);
    return;
  }
  if (line.needsIdent && !deck.isIdentConfirmed.peek()) {
    deck.sheet.value = 'ident';
    return;
  }
  await checkOff(deck, line, { outcome: 'done' });
}

/** Leaves the item that is due out, with the reason. */
export async function checkSkipped(deck: Deck, reason: string): Promise<void> {
  const line = nextItem(deck.lines.peek());
  if (line !== null) await checkOff(deck, line, { outcome: 'skipped', reason });
}

async function checkOff(
  deck: Deck,
  line: CheckLine,
  how: { readonly outcome: 'done' | 'skipped' | 'reopened'; readonly reason?: string },
): Promise<void> {
  const { legIndex } = deck.state.peek();
  const isRecorded = await deck.record({ kind: 'check', legIndex, item: line.item, ...how });
  if (!isRecorded) return;
  const next = nextItem(deck.lines.peek());
  if (next === null) speaker.say('Checklist complete.', { channel: 'checklist' });
  else sayLine(next);
}

/** Opens the item before the one that is due again. */
export async function checkBack(deck: Deck): Promise<void> {
  const lines = deck.lines.peek();
  const due = lines.findIndex((line) => line.state === 'open');
  const before = lines[(due === -1 ? lines.length : due) - 1];
  if (before === undefined) return;
  // An ident that was confirmed is doubted again before it can be confirmed anew.
  if (before.needsIdent && deck.isIdentConfirmed.peek()) await judgeIdent(deck, 'doubted');
  else await checkOff(deck, before, { outcome: 'reopened' });
}

/**
 * Records that the ident was heard and is right, or that it is not. `heard`: the tool has heard it too,
 * and the pilot has taken that over.
 */
export async function judgeIdent(
  deck: Deck,
  outcome: 'confirmed' | 'doubted',
  heard?: { readonly confidence: number },
): Promise<void> {
  const { legIndex } = deck.state.peek();
  const before = nextItem(deck.lines.peek());
  const by = heard === undefined ? 'ear' : 'tool';
  const isRecorded = await deck.record({
    kind: 'ident',
    legIndex,
    outcome,
    by,
    ...(heard === undefined ? {} : { confidence: heard.confidence }),
  });
  if (!isRecorded) return;
  if (outcome === 'doubted') {
    speaker.say(
      'Ident not confirmed. Do not use this station: check the frequency and listen again.',
      {
        channel: 'checklist',
      },
    );
    return;
  }
  const next = before?.needsIdent === true ? nextItem(deck.lines.peek()) : null;
  speaker.say(next === null ? 'Ident confirmed.' : `Ident confirmed. ${next.say}`, {
    channel: 'checklist',
  });
}

/** The pilot starts to fly the leg. */
export async function startLeg(deck: Deck): Promise<void> {
  const { legIndex } = deck.state.peek();
  const isRecorded = await deck.record({ kind: 'leg-started', legIndex });
  if (isRecorded) speaker.say(FIRST_READING, { channel: 'answer' });
}

/** Takes the last reading that stands back; false when there is none. */
export async function undoLastReading(deck: Deck): Promise<boolean> {
  const last = deck.state.peek().readings.findLast((each) => !each.isTakenBack);
  if (last === undefined) return false;
  await takeBackReading(deck, last.eventId);
  return true;
}

/** The flight is over; an undo opens it again. */
export async function finishFlight(deck: Deck): Promise<boolean> {
  speaker.hush();
  return deck.record({ kind: 'finished' });
}
