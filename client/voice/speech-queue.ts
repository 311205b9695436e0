/** What something is said for: a new `answer` or `checklist` item makes the one before it stale. */
export type Channel = 'answer' | 'call' | 'checklist' | 'notice';

/** `now` cuts off what is not; `soon` (what the pilot waits for) goes before `routine`. */
type Urgency = 'now' | 'soon' | 'routine';

/** Something to be said. */
export interface Utterance {
  readonly id: number;
  readonly text: string;
  readonly channel: Channel;
  readonly urgency: Urgency;
  /** When it was asked for. */
  readonly atMs: number;
  /** It is not begun after this moment. */
  readonly untilMs: number;
  /** What is left to say of it. */
  readonly sentences: readonly string[];
}

/** What is being said and what waits, in the order in which it came. */
export interface Queue {
  readonly current: Utterance | null;
  readonly waiting: readonly Utterance[];
}

/** A queue after a change, with what fell out of it. */
export interface Changed {
  readonly queue: Queue;
  readonly dropped: readonly Utterance[];
  /** True: the voice has to stop, what it was saying is not `current` any more. */
  readonly mustStop: boolean;
}

const RANK: Readonly<Record<Urgency, number>> = { now: 0, soon: 1, routine: 2 };

const isSupersededBy = (older: Utterance, newer: Utterance): boolean =>
  older.channel === newer.channel && (newer.channel === 'answer' || newer.channel === 'checklist');

/** Splits what is to be said where the voice may pause or be cut off. */
export function sentencesOf(text: string): readonly string[] {
  return text
    .split(/(?<=[.!?])\s+/)
    .map((sentence) => sentence.trim())
    .filter((sentence) => sentence !== '');
}

/**
 * Puts something in the queue. A newer answer takes the place of an older one, spoken or waiting; what
 * is urgent now cuts off what is not, and that goes on afterwards with the sentence it was in.
 */
export function enqueue(queue: Queue, newer: Utterance): Changed {
  const dropped = queue.waiting.filter((older) => isSupersededBy(older, newer));
  const waiting = queue.waiting.filter((older) => !isSupersededBy(older, newer));
  const { current } = queue;
  if (current !== null && isSupersededBy(current, newer)) {
    return {
      queue: { current: null, waiting: [...waiting, newer] },
      dropped: [...dropped, current],
      mustStop: true,
    };
  }
  const cutsOff = current !== null && newer.urgency === 'now' && current.urgency !== 'now';
  return cutsOff
    ? { queue: { current: null, waiting: [current, ...waiting, newer] }, dropped, mustStop: true }
    : { queue: { current, waiting: [...waiting, newer] }, dropped, mustStop: false };
}

/** Puts what is being said back in front (an ident is about to sound). */
export function setAside(queue: Queue): Queue {
  return queue.current === null
    ? queue
    : { current: null, waiting: [queue.current, ...queue.waiting] };
}

/** Drops what waits and has become too late. */
export function dropLate(queue: Queue, nowMs: number): Changed {
  return {
    queue: { ...queue, waiting: queue.waiting.filter((each) => each.untilMs >= nowMs) },
    dropped: queue.waiting.filter((each) => each.untilMs < nowMs),
    mustStop: false,
  };
}

/** Begins the most urgent of what waits (the oldest of its rank) when nothing is being said. */
export function begin(queue: Queue): Queue {
  if (queue.current !== null) return queue;
  const [next] = queue.waiting.toSorted((one, other) => RANK[one.urgency] - RANK[other.urgency]);
  return {
    current: next ?? null,
    waiting: queue.waiting.filter((each) => each !== next),
  };
}
