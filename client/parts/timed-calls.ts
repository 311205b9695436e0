import { effect } from '@preact/signals';
import { callsDue } from '../../src/flight/calls-due.ts';
import { settings } from '../settings/settings.ts';
import { speaker } from '../voice/speaker.ts';
import { nowMs } from './clock.ts';
import { mannerOf, type Deck } from './deck.ts';

/** A page that slept says nothing late: it looks back no further than this. */
const LOOK_BACK_MS = 5000;

/** The key of the call at the radial where an arc is left. */
const LEAD_RADIAL = /^arc-radial:\d+:0$/;

/** Speaks the call-outs between readings as their time comes, until the returned function is called. */
export function speakTimedCalls(deck: Deck): () => void {
  let beforeMs = nowMs.peek();
  const said = new Set<string>();
  const stopCalling = effect(() => {
    const untilMs = nowMs.value;
    const fromMs = Math.max(beforeMs, untilMs - LOOK_BACK_MS);
    beforeMs = untilMs;
    const againMin = settings.peek().identAgainMin || null;
    const state = deck.state.peek();
    for (const call of callsDue(state, fromMs, untilMs, mannerOf(), said, againMin)) {
      said.add(call.key);
      const isLeadRadial = LEAD_RADIAL.test(call.key);
      deck.lastCall.value = { text: call.say, atMs: call.atMs, isLeadRadial };
      // A screen that only follows shows the call and stays silent.
      if (!deck.isActing.peek()) continue;
      const key = `${deck.store.id}/${call.key}`;
      const urgency = call.urgency === 'now' ? 'urgent' : 'normal';
      const validForS = Math.max(1, (call.untilMs - untilMs) / 1000);
      speaker.say(call.say, { channel: 'call', key, urgency, validForS });
    }
  });
  // A new answer, from wherever it comes (an undo, another screen), is not hidden behind an older call.
  let answered = deck.state.peek().advice;
  const stopClearing = effect(() => {
    const { advice } = deck.state.value;
    if (advice !== answered) deck.lastCall.value = null;
    answered = advice;
  });
  return () => {
    stopCalling();
    stopClearing();
  };
}
