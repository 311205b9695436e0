import { availableParallelism } from 'node:os';
import type { Worker } from 'node:worker_threads';
import type { Heard, Hearing } from './hearing.ts';
import { refusal } from './problems.ts';
import { startWorker } from './start-worker.ts';

/** Decodes recordings beside the event loop, so that everything else is answered meanwhile. */
export interface HearingPool {
  /** Answers in its turn; rejects with a refusal when it cannot. Once nobody waits for it, it is passed over. */
  hear(hearing: Hearing, isGone: () => boolean): Promise<Heard>;
  /** Whether so much is waiting that no more is taken in. */
  isFull(): boolean;
  /** Ends the workers; what is waiting is refused. */
  close(): Promise<void>;
}

interface Job {
  readonly hearing: Hearing;
  readonly bytes: number;
  isGone(): boolean;
  answer(heard: Heard): void;
  refuse(error: Error): void;
}

interface Hand {
  readonly worker: Worker;
  job: Job | null;
  timer: NodeJS.Timeout | null;
}

/** A core is left to the rest of the server where there are more than two. */
const MOST_HANDS = Math.max(2, Math.min(4, availableParallelism() - 1));

const MOST_WAITING_BYTES = 256_000_000;
const MOST_WAITING = 200;
const LONGEST_JOB_MS = 120_000;

/** A pool whose workers start when they are first needed. */
export function openHearingPool(): HearingPool {
  const hands: Hand[] = [];
  let waiting: Job[] = [];
  let isClosed = false;

  const next = (): void => {
    for (const job of waiting.filter((each) => each.isGone())) job.refuse(busy(GONE));
    waiting = waiting.filter((each) => !each.isGone());
    if (waiting.length === 0) return;
    const free =
      hands.find(({ job }) => job === null) ?? (hands.length < MOST_HANDS ? engage() : null);
    const job = free && waiting.shift();
    if (!free || !job) return;
    free.job = job;
    free.timer = setTimeout(() => {
      dismiss(free, busy('The recording took too long to decode. Send a shorter one.'));
    }, LONGEST_JOB_MS);
    free.worker.postMessage(job.hearing, [job.hearing.wav.buffer]);
  };

  const engage = (): Hand => {
    const hand: Hand = { worker: startWorker('hearing-worker'), job: null, timer: null };
    hand.worker.on('message', (heard: Heard) => {
      const { job } = hand;
      if (hand.timer !== null) clearTimeout(hand.timer);
      hand.job = null;
      job?.answer(heard);
      next();
    });
    hand.worker.on('error', (error) => {
      console.error('decoding a recording:', error);
      dismiss(hand, refusal(500, 'decoding failed'));
    });
    hand.worker.on('exit', () => {
      dismiss(hand, refusal(500, 'decoding ended'));
    });
    // A server with nothing else to do may end.
    hand.worker.unref();
    hands.push(hand);
    return hand;
  };

  const dismiss = (hand: Hand, why: Error): void => {
    const at = hands.indexOf(hand);
    if (at < 0) return;
    hands.splice(at, 1);
    if (hand.timer !== null) clearTimeout(hand.timer);
    void hand.worker.terminate();
    hand.job?.refuse(why);
    if (!isClosed) next();
  };

  return {
    hear: (hearing, isGone) =>
      new Promise((answer, refuse) => {
        if (isClosed) {
          refuse(busy(ENDING));
          return;
        }
        waiting.push({ hearing, bytes: hearing.wav.byteLength, isGone, answer, refuse });
        next();
      }),
    isFull: () =>
      waiting.length >= MOST_WAITING ||
      waiting.reduce((sum, { bytes }) => sum + bytes, 0) > MOST_WAITING_BYTES,
    close: async () => {
      isClosed = true;
      const given = waiting;
      waiting = [];
      for (const job of given) job.refuse(busy(ENDING));
      const workers = hands.map(({ worker }) => worker);
      for (const hand of [...hands]) dismiss(hand, busy(ENDING));
      await Promise.all(workers.map((worker) => worker.terminate()));
    },
  };
}

const GONE = 'Nobody waits for the answer any more.';
const ENDING = 'The server is ending. Send the recording again later.';

/** A refusal that it cannot be done now (503). */
export function busy(detail: string): Error {
  return refusal(503, detail, [{ field: 'body', expected: 'a recording later', got: 'one now' }]);
}
