import { signal, type ReadonlySignal } from '@preact/signals';
import { BUNDLED_VOICE, settings } from '../settings/settings.ts';
import { browserVoice, browserVoices, chooseVoice, voicesNamed } from './browser-voice.ts';
import type { Voice } from './voice.ts';

/** Which voice speaks. `none`: not needed yet, or there is none (then `voiceProblem` says why). */
export type VoiceState = 'browser' | 'bundled-loading' | 'bundled' | 'none';

const state = signal<VoiceState>('none');
const progress = signal<number | null>(null);
const problem = signal<string | null>(null);

/** Which voice speaks. */
export const voiceState: ReadonlySignal<VoiceState> = state;

/** 0 to 1 while the bundled voice is being fetched, else null. */
export const loadProgress: ReadonlySignal<number | null> = progress;

/** Why there is no voice; null: nothing is wrong. */
export const voiceProblem: ReadonlySignal<string | null> = problem;

/** So long after a failure the bundled voice is not tried again: the text log has to do meanwhile. */
const REST_MS = 10_000;

/** A voice that has spoken may stumble; one that has not yet is given up at its first failure. */
const MOST_FAILURES = { ofOneThatHasSpoken: 2, ofOneThatHasNot: 1 } as const;

let bundled: Voice | null = null;
let loading: Promise<void> | null = null;
let failedAtMs = Number.NEGATIVE_INFINITY;
let areVoicesNamed = false;
let isBrowserGivenUp = false;
let failuresInARow = 0;
let hasSpoken = false;

function voiceOfBrowser(): Voice | null {
  const { voiceName } = settings.peek();
  if (voiceName === BUNDLED_VOICE || isBrowserGivenUp) return null;
  const voice = chooseVoice(browserVoices.peek(), voiceName);
  return voice === null ? null : browserVoice(voice);
}

async function loadBundled(): Promise<void> {
  state.value = 'bundled-loading';
  progress.value = 0;
  problem.value = null;
  try {
    const { startBundledVoice } = await import('./bundled-voice.ts');
    bundled = await startBundledVoice((fraction) => {
      progress.value = fraction;
    });
    state.value = 'bundled';
  } catch (reason) {
    failedAtMs = Date.now();
    state.value = 'none';
    const why = reason instanceof Error ? reason.message : String(reason);
    problem.value = `The bundled voice could not be loaded (${why}). Everything is still shown as text.`;
  } finally {
    progress.value = null;
    loading = null;
  }
}

/** The voice to speak with now; null while there is none (yet). */
export function voiceNow(): Voice | null {
  const own = voiceOfBrowser();
  if (own !== null) {
    state.value = 'browser';
    return own;
  }
  if (bundled !== null) state.value = 'bundled';
  return bundled;
}

/** Gets a voice ready: settles with true when there is one, with false when there is none for now. */
export async function getReady(): Promise<boolean> {
  if (!areVoicesNamed && settings.peek().voiceName !== BUNDLED_VOICE) await voicesNamed();
  areVoicesNamed = true;
  if (voiceNow() !== null) return true;
  if (Date.now() - failedAtMs < REST_MS) return false;
  loading ??= loadBundled();
  await loading;
  return voiceNow() !== null;
}

/** A sentence was spoken: the voice is sound. */
export function voiceDidWell(): void {
  failuresInARow = 0;
  hasSpoken = true;
  problem.value = null;
}

/** The voice failed at a sentence; after some failures in a row it is given up for another one. */
export function voiceFailed(reason: unknown): void {
  failuresInARow += 1;
  const most = hasSpoken ? MOST_FAILURES.ofOneThatHasSpoken : MOST_FAILURES.ofOneThatHasNot;
  if (failuresInARow < most) return;
  failuresInARow = 0;
  hasSpoken = false;
  if (state.peek() === 'browser') {
    isBrowserGivenUp = true;
    return;
  }
  bundled = null;
  failedAtMs = Date.now();
  state.value = 'none';
  problem.value = reason instanceof Error ? reason.message : String(reason);
}
