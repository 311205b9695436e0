import { signal, type ReadonlySignal } from '@preact/signals';
import { claimSound } from '../sound/claim.ts';
import { speaker } from '../voice/speaker.ts';
import { holdEar } from './ear-lock.ts';
import type { FromEar, LevelStretch, ToEar } from './ear-messages.ts';
import { EAR_OFF, NO_LEVELS, withLevels, type EarState } from './ear-state.ts';
import { BROKEN_WORDS, FLAT_WORDS, LOST_WORDS, recordingNote } from './ear-words.ts';
import { refusedUnread } from './file-limits.ts';
import { openMicPath, type MicPath } from './mic-path.ts';

/** Listens for an ident, by microphone or in a recording. */
export interface Ear {
  readonly state: ReadonlySignal<EarState>;
  /** The levels so far. Not a signal: they grow many times a second. */
  levels(): LevelStretch;
  /** Listens to the microphone. Call it from a tap or a key. */
  listen(expected: string | null): void;
  /** Listens to a recording. */
  read(file: File, expected: string | null): void;
  /** Ends listening; what was heard stays. */
  stop(): void;
}

/** No sound for so long: the page is in the background, or the device sleeps. */
const ASLEEP_MS = 5000;

/** A microphone that gives nothing but zeros for so long is switched off, seconds. */
const FLAT_S = 5;

/** An ear that is shut. Stop it when its page goes away. */
export function openEar(): Ear {
  const state = signal<EarState>(EAR_OFF);
  let levels = NO_LEVELS;
  let heardAtMs = 0;
  let letGo: () => void = () => undefined;

  const change = (part: Partial<EarState>): void => {
    state.value = { ...state.peek(), ...part };
  };
  const finish = (part: Partial<EarState> = {}): void => {
    letGo();
    letGo = () => undefined;
    change({ phase: state.peek().view === null ? 'off' : 'over', ...part });
  };
  const begin = (first: Partial<EarState>): void => {
    finish();
    levels = NO_LEVELS;
    state.value = { ...EAR_OFF, ...first };
  };
  const hear = (message: FromEar): void => {
    heardAtMs = performance.now();
    switch (message.kind) {
      case 'heard':
        levels = withLevels(levels, message.levels);
        change({ view: message.view, note: message.flatS >= FLAT_S ? FLAT_WORDS : null });
        break;
      case 'progress':
        levels = message.levels ?? levels;
        change({ fraction: message.fraction });
        break;
      case 'read':
        change({
          lengthS: message.lengthS,
          note: recordingNote(message.lengthS, message.isCutShort),
        });
        break;
      case 'over':
        levels = message.levels;
        finish({ phase: 'over', view: message.view, fraction: 1 });
        break;
      case 'refused':
        finish({ problem: message.problem });
        break;
    }
  };
  const startWorker = (): Worker => {
    const worker = new Worker(new URL('./ear-worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<FromEar>): void => {
      hear(data);
    };
    worker.onerror = (): void => {
      finish({ problem: BROKEN_WORDS });
    };
    return worker;
  };

  const listen = (expected: string | null): void => {
    begin({ phase: 'opening', expected, from: 'the microphone' });
    // Its own voice would be heard too, and its own ident would be confirmed.
    speaker.hush();
    const releaseSound = claimSound();
    const releaseEar = holdEar(() => {
      finish({ problem: LOST_WORDS.taken });
    });
    const worker = startWorker();
    const { port1, port2 } = new MessageChannel();
    let path: MicPath | null = null;
    let isOver = false;
    const watchdog = setInterval(() => {
      const isLate = performance.now() - heardAtMs > ASLEEP_MS;
      if (state.peek().phase === 'listening' && isLate) finish({ problem: LOST_WORDS.asleep });
    }, 1000);
    letGo = (): void => {
      isOver = true;
      clearInterval(watchdog);
      path?.close();
      worker.terminate();
      releaseSound();
      releaseEar();
    };
    openMicPath(port1, (why) => {
      finish({ problem: LOST_WORDS[why] });
    }).then(
      (opened) => {
        if (isOver) {
          opened.close();
          return;
        }
        path = opened;
        heardAtMs = performance.now();
        const { sampleRateHz, name } = opened;
        const message: ToEar = { kind: 'live', blocks: port2, sampleRateHz, expected };
        worker.postMessage(message, [port2]);
        change({ phase: 'listening', from: name });
      },
      (reason: unknown) => {
        if (isOver) return;
        finish({ problem: reason instanceof Error ? reason.message : String(reason) });
      },
    );
  };

  const read = (file: File, expected: string | null): void => {
    const refused = refusedUnread(file);
    begin({ phase: 'reading', expected, from: file.name, fraction: 0 });
    if (refused !== null) {
      finish({ problem: refused });
      return;
    }
    const worker = startWorker();
    letGo = () => {
      worker.terminate();
    };
    const message: ToEar = { kind: 'file', file, expected };
    worker.postMessage(message);
  };

  return { state, levels: () => levels, listen, read, stop: finish };
}
