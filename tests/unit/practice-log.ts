import type { About, Answer, Pace, PracticeEvent, Question } from '../../src/ident/drill/event.ts';

const ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

/** An id of 26 signs that grows with its number, as a ULID does. */
function idOf(number: number): string {
  let left = number;
  let text = '';
  for (let at = 0; at < 26; at += 1) {
    text = (ALPHABET[left % 32] ?? '0') + text;
    left = Math.floor(left / 32);
  }
  return text;
}

/** A copy question for an ident, quiet and as on the air; `part` changes it. */
export function copy(ident: string, part: Partial<Question> = {}): Question {
  return {
    sent: { kind: 'ident', ident },
    plate: null,
    purpose: 'letters',
    letterWpm: 7,
    wpm: 7,
    toneHz: 1020,
    snrDb: null,
    voiceDb: null,
    isUneven: false,
    seed: 1,
    ...part,
  };
}

/** A question whether what is sent is what stands on the plate. */
export function onPlate(plate: string, sent: Question['sent']): Question {
  return copy(plate, { sent, plate, purpose: 'plate' });
}

/** The answer that writes letters down. */
export const written = (letters: string): Answer => ({ kind: 'letters', letters });

/** A practice log that grows by calls, a minute a line. */
export interface LogMaker {
  readonly events: PracticeEvent[];
  start(about?: About, pace?: Pace): void;
  /** Asks and answers; fast unless told how long it took. */
  answer(question: Question, answer: Answer, tookS?: number, plays?: number): void;
  end(): void;
  open(groups: number): void;
  wait(minutes: number): void;
}

/** A practice log that grows by calls, a minute a line. */
export function logFrom(startMs: number): LogMaker {
  const events: PracticeEvent[] = [];
  let atMs = startMs;
  let count = 0;
  const stamp = (): { id: string; atMs: number } => {
    atMs += 60_000;
    count += 1;
    return { id: idOf(atMs * 8 + (count % 8)), atMs };
  };
  return {
    events,
    start(about = 'letters', pace = 'on-air') {
      events.push({ ...stamp(), kind: 'started', about, pace, length: 20 });
    },
    answer(question, answer, tookS = 1, plays = 1) {
      const asked = stamp();
      events.push({ ...asked, kind: 'asked', question });
      events.push({ ...stamp(), kind: 'answered', questionId: asked.id, answer, tookS, plays });
    },
    end() {
      events.push({ ...stamp(), kind: 'ended' });
    },
    open(groups) {
      events.push({ ...stamp(), kind: 'opened', groups });
    },
    wait(minutes) {
      atMs += minutes * 60_000;
    },
  };
}
