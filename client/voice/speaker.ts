import { computed, signal, type ReadonlySignal } from '@preact/signals';
import { changeSettings, settings } from '../settings/settings.ts';

/** How something is to be said. */
export interface SayOptions {
  /** A new `answer` takes the place of an older one that waits or is being spoken. Default: `notice`. */
  readonly channel?: 'answer' | 'call' | 'checklist' | 'notice';
  /** Said once: a second time with the same key is ignored (a page that draws itself again). */
  readonly key?: string;
  /** `urgent` goes before everything that waits and interrupts what is not urgent. */
  readonly urgency?: 'normal' | 'urgent';
  /** Not begun later than this. Default: answer 20, call 8, checklist 60, notice 30. */
  readonly validForS?: number;
}

/** What became of a sentence. */
export type SpokenOutcome =
  'waiting' | 'speaking' | 'spoken' | 'muted' | 'replaced' | 'too-late' | 'no-voice';

/** One entry of the text log. */
export interface SpokenLine {
  readonly text: string;
  readonly atMs: number;
  readonly outcome: SpokenOutcome;
}

/** Which voice speaks. `none`: not needed yet, or there is none (then `voiceProblem` says why). */
export type VoiceState = 'browser' | 'bundled-loading' | 'bundled' | 'none';

/** The one voice of the page. */
export interface Speaker {
  say(text: string, options?: SayOptions): void;
  /** Says the last answer or call again, however old it is. */
  sayAgain(): void;
  /** Stops at once and forgets what waits. */
  hush(): void;
  mute(): void;
  unmute(): void;
  readonly isMuted: ReadonlySignal<boolean>;
  readonly isSpeaking: ReadonlySignal<boolean>;
  /** Everything said or muted on this page, oldest first. */
  readonly spoken: ReadonlySignal<readonly SpokenLine[]>;
  readonly voiceState: ReadonlySignal<VoiceState>;
  /** 0 to 1 while the bundled voice is being fetched, else null. */
  readonly loadProgress: ReadonlySignal<number | null>;
  readonly voiceProblem: ReadonlySignal<string | null>;
  /** Names of the browser's English voices, for the settings. */
  readonly voiceNames: ReadonlySignal<readonly string[]>;
  /** Gets the voice ready before it is needed (fetches the bundled one where the browser has none). */
  prepare(): Promise<void>;
}

const spoken = signal<readonly SpokenLine[]>([]);

/** The one voice of the page. */
export const speaker: Speaker = {
  say: (text) => {
    spoken.value = [...spoken.value, { text, atMs: Date.now(), outcome: 'muted' }];
  },
  sayAgain: () => undefined,
  hush: () => undefined,
  mute: () => {
    changeSettings({ voiceOn: false });
  },
  unmute: () => {
    changeSettings({ voiceOn: true });
  },
  isMuted: computed(() => !settings.value.voiceOn),
  isSpeaking: signal(false),
  spoken,
  voiceState: signal('none'),
  loadProgress: signal(null),
  voiceProblem: signal(null),
  voiceNames: signal([]),
  prepare: () => Promise.resolve(),
};
