import { signal, type ReadonlySignal } from '@preact/signals';
import { lengthMs, type Manner, type Speaking, type Voice } from './voice.ts';

/** How long after the page has come a browser may name its voices before it counts as having none. */
const VOICES_PATIENCE_MS = 1500;

/** After a cancel some browsers swallow a sentence that comes in the same breath. */
const BREATH_MS = 60;

const synthesis: SpeechSynthesis | null =
  'speechSynthesis' in globalThis ? globalThis.speechSynthesis : null;

const cameAtMs = performance.now();
const englishVoices = signal<readonly SpeechSynthesisVoice[]>([]);

function look(): void {
  englishVoices.value = (synthesis?.getVoices() ?? []).filter((voice) =>
    voice.lang.toLowerCase().startsWith('en'),
  );
}

if (synthesis !== null) {
  look();
  // Not every browser has addEventListener on it.
  synthesis.onvoiceschanged = look;
}

/** The English voices of the browser; the list may fill a moment after the page has come. */
export const browserVoices: ReadonlySignal<readonly SpeechSynthesisVoice[]> = englishVoices;

/** Settles when the browser has named a voice, or has had long enough to do so. */
export function voicesNamed(): Promise<void> {
  if (synthesis === null || englishVoices.peek().length > 0) return Promise.resolve();
  return new Promise((resolve) => {
    const leftMs = VOICES_PATIENCE_MS - (performance.now() - cameAtMs);
    const timer = setTimeout(resolve, Math.max(0, leftMs));
    const stop = englishVoices.subscribe((voices) => {
      if (voices.length === 0) return;
      clearTimeout(timer);
      resolve();
      queueMicrotask(() => {
        stop();
      });
    });
  });
}

/**
 * The voice asked for by name, else the browser's own choice among those that speak on this device:
 * a voice that needs the network falls silent in the air. Null: the browser has none for English.
 */
export function chooseVoice(
  voices: readonly SpeechSynthesisVoice[],
  name: string | null,
): SpeechSynthesisVoice | null {
  const asked = voices.find((voice) => voice.name === name);
  const local = voices.filter((voice) => voice.localService);
  return asked ?? local.find((voice) => voice.default) ?? local[0] ?? null;
}

/** Speaks with a voice of the browser. */
export function browserVoice(voice: SpeechSynthesisVoice): Voice {
  return { prepare: () => undefined, speak: (sentence, manner) => say(voice, sentence, manner) };
}

function say(voice: SpeechSynthesisVoice, sentence: string, manner: Manner): Speaking {
  const utterance = new SpeechSynthesisUtterance(sentence);
  utterance.voice = voice;
  utterance.lang = voice.lang;
  utterance.rate = manner.rate;
  utterance.volume = manner.volume;
  let isStarted = false;
  let settle: (failure: Error | null) => void = () => undefined;
  const done = new Promise<void>((resolve, reject) => {
    let watchdog: ReturnType<typeof setTimeout> | undefined = undefined;
    settle = (failure): void => {
      clearTimeout(watchdog);
      utterance.onstart = utterance.onend = utterance.onerror = null;
      if (failure === null) resolve();
      else reject(failure);
    };
    // The end event is known to be missed: nobody waits for it longer than twice the sentence.
    watchdog = setTimeout(
      () => {
        synthesis?.cancel();
        settle(isStarted ? null : new Error('The voice of the browser did not start.'));
      },
      2 * lengthMs(sentence, manner.rate),
    );
    utterance.onstart = (): void => {
      isStarted = true;
    };
    utterance.onend = (): void => {
      settle(null);
    };
    utterance.onerror = (event): void => {
      const isOurs = event.error === 'canceled' || event.error === 'interrupted';
      settle(isOurs ? null : new Error(`The voice of the browser failed (${event.error}).`));
    };
    if (synthesis?.speaking === true || synthesis?.pending === true) synthesis.cancel();
    synthesis?.resume();
    setTimeout(() => synthesis?.speak(utterance), BREATH_MS);
  });
  return {
    done,
    stop: () => {
      settle(null);
      synthesis?.cancel();
    },
  };
}
