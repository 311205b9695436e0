import { computed, effect, signal, untracked, type ReadonlySignal } from '@preact/signals';
import { changeSettings, settings } from '../settings/settings.ts';
import { audioOutput } from '../sound/audio-output.ts';
import { isSoundClaimed } from '../sound/claim.ts';
import { hasGesture } from '../sound/gesture.ts';
import { browserVoices } from './browser-voice.ts';
import {
  getReady,
  loadProgress,
  voiceDidWell,
  voiceFailed,
  voiceNow,
  voiceProblem,
  voiceState,
  type VoiceState,
} from './ready-voice.ts';
import {
  begin,
  dropLate,
  enqueue,
  sentencesOf,
  setAside,
  type Changed,
  type Channel,
  type Queue,
  type Utterance,
} from './speech-queue.ts';
import { noteLine, noteOutcome, spoken, type SpokenLine, type SpokenOutcome } from './text-log.ts';
import type { Speaking, Voice } from './voice.ts';

export type { SpokenLine } from './text-log.ts';

/** How something is to be said. */
interface SayOptions {
  /** A new `answer` (or `checklist` item) takes the place of an older one. Default: `notice`. */
  readonly channel?: Channel;
  /** Said once: a second time with the same key is ignored (a page that draws itself again). */
  readonly key?: string;
  /** `urgent` goes before everything that waits and cuts off what is not urgent. */
  readonly urgency?: 'normal' | 'urgent';
  /** Not begun later than this, seconds. Default: answer 20, call 8, checklist 60, notice 30. */
  readonly validForS?: number;
}

/** The one voice of the page. */
export interface Speaker {
  say(text: string, options?: SayOptions): void;
  /** Says what was said last once more, however old it is. */
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

const VALID_S: Readonly<Record<Channel, number>> = {
  answer: 20,
  call: 8,
  checklist: 60,
  notice: 30,
};

const isSpeaking = signal(false);
const isMuted = computed(() => !settings.value.voiceOn);
const saidKeys = new Set<string>();
let queue: Queue = { current: null, waiting: [] };
let speaking: Speaking | null = null;
/** Grows whenever the voice begins or is stopped: what belongs to an older turn has nothing to say. */
let turn = 0;
let lastId = 0;
let lastSaid: Utterance | null = null;

function silence(): void {
  turn += 1;
  speaking?.stop();
  speaking = null;
  isSpeaking.value = false;
}

function apply(changed: Changed, outcome: SpokenOutcome): void {
  const before = queue.current;
  queue = changed.queue;
  if (changed.mustStop) {
    silence();
    if (before !== null) noteOutcome(before.id, 'waiting');
  }
  for (const { id } of changed.dropped) noteOutcome(id, outcome);
}

/** Forgets everything that waits or is being said. */
function clear(outcome: SpokenOutcome): void {
  const all = [...(queue.current === null ? [] : [queue.current]), ...queue.waiting];
  apply({ queue: { current: null, waiting: [] }, dropped: all, mustStop: true }, outcome);
}

/** Begins the next thing when the voice is free, allowed and ready. */
function pump(): void {
  apply(dropLate(queue, Date.now()), 'too-late');
  if (queue.current !== null || queue.waiting.length === 0) return;
  if (!hasGesture.peek() || isSoundClaimed.peek()) return;
  const voice = voiceNow();
  if (voice === null) {
    void getReady().then((isReady) => {
      if (isReady) pump();
      else clear('no-voice');
    });
    return;
  }
  queue = begin(queue);
  if (queue.current !== null) void speakOut(voice, queue.current);
}

async function speakOut(voice: Voice, utterance: Utterance): Promise<void> {
  const mine = (turn += 1);
  lastSaid = utterance;
  isSpeaking.value = true;
  noteOutcome(utterance.id, 'speaking');
  const { sentences } = utterance;
  for (const [index, sentence] of sentences.entries()) {
    queue = { ...queue, current: { ...utterance, sentences: sentences.slice(index) } };
    const { rate, volume } = settings.peek();
    const next = sentences[index + 1];
    speaking = voice.speak(sentence, { rate, volume });
    if (next !== undefined) voice.prepare(next, { rate, volume });
    try {
      await speaking.done;
    } catch (reason) {
      if (turn === mine) stumble(reason);
      return;
    }
    if (turn !== mine) return;
    voiceDidWell();
  }
  queue = { ...queue, current: null };
  silence();
  noteOutcome(utterance.id, 'spoken');
  fetchIdentSound();
  pump();
}

/** Now that sound is asked for, the sound of idents is fetched too: the server may be gone by then. */
function fetchIdentSound(): void {
  import('../sound/keyed-tone.ts').catch(() => undefined);
}

/** The voice failed in the middle: the sentence is tried again, by another voice if need be. */
function stumble(reason: unknown): void {
  voiceFailed(reason);
  const stumbled = queue.current;
  queue = setAside(queue);
  silence();
  if (stumbled !== null) noteOutcome(stumbled.id, 'waiting');
  pump();
}

function ask(wanted: Omit<Utterance, 'id' | 'atMs' | 'sentences'>): void {
  const atMs = Date.now();
  const utterance = { ...wanted, id: (lastId += 1), atMs, sentences: sentencesOf(wanted.text) };
  noteLine({ id: utterance.id, text: utterance.text, atMs, outcome: 'waiting' });
  if (isMuted.peek()) {
    lastSaid = utterance;
    noteOutcome(utterance.id, 'muted');
    return;
  }
  apply(enqueue(queue, utterance), 'replaced');
  pump();
  // So that the log tells it when its time has passed without a voice.
  setTimeout(pump, utterance.untilMs - atMs + 1);
}

function say(text: string, options: SayOptions = {}): void {
  const { channel = 'notice', key } = options;
  if (text.trim() === '' || (key !== undefined && saidKeys.has(key))) return;
  if (key !== undefined) saidKeys.add(key);
  const isReply = channel === 'answer' || channel === 'call';
  const usual = isReply ? 'soon' : 'routine';
  ask({
    text,
    channel,
    urgency: options.urgency === 'urgent' ? 'now' : usual,
    untilMs: Date.now() + 1000 * (options.validForS ?? VALID_S[channel]),
  });
}

function sayAgain(): void {
  if (lastSaid === null) return;
  const { id, text, channel } = lastSaid;
  // It may be what is being said just now: it starts afresh.
  if (queue.current?.id === id) {
    apply(
      { queue: { ...queue, current: null }, dropped: [queue.current], mustStop: true },
      'replaced',
    );
  }
  ask({ text, channel, urgency: 'now', untilMs: Date.now() + 1000 * VALID_S[channel] });
}

effect(() => {
  if (isMuted.value)
    untracked(() => {
      clear('muted');
    });
});

effect(() => {
  const isClaimed = isSoundClaimed.value;
  untracked(() => {
    if (!isClaimed) pump();
    else if (queue.current !== null) {
      noteOutcome(queue.current.id, 'waiting');
      queue = setAside(queue);
      silence();
    }
  });
});

effect(() => {
  if (!hasGesture.value) return;
  untracked(() => {
    // Some tablets wake their sound only inside the tap itself.
    if (queue.waiting.length > 0 && browserVoices.peek().length === 0) {
      audioOutput().catch(() => undefined);
    }
    pump();
  });
});

/** The one voice of the page. */
export const speaker: Speaker = {
  say,
  sayAgain,
  hush: () => {
    clear('replaced');
  },
  mute: () => {
    changeSettings({ voiceOn: false });
  },
  unmute: () => {
    changeSettings({ voiceOn: true });
  },
  isMuted,
  isSpeaking,
  spoken,
  voiceState,
  loadProgress,
  voiceProblem,
  voiceNames: computed(() => browserVoices.value.map((voice) => voice.name)),
  prepare: async () => {
    await getReady();
    pump();
  },
};
