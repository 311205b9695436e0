import { describe, expect, it } from 'vitest';
import {
  begin,
  dropLate,
  enqueue,
  sentencesOf,
  setAside,
  type Queue,
  type Utterance,
} from '../../client/voice/speech-queue.ts';

// How the voice of a cockpit aid ought to behave: common practice, no source.

const EMPTY: Queue = { current: null, waiting: [] };

function utterance(id: number, differing: Partial<Utterance> = {}): Utterance {
  const text = `Sentence ${id}.`;
  return {
    id,
    text,
    channel: 'notice',
    urgency: 'routine',
    atMs: 0,
    untilMs: 10_000,
    sentences: [text],
    ...differing,
  };
}

const queued = (...all: readonly Utterance[]): Queue =>
  all.reduce((queue, each) => enqueue(queue, each).queue, EMPTY);

describe('the queue of the voice', () => {
  it('drops an answer that waits when a newer answer comes', () => {
    const older = utterance(1, { channel: 'answer' });
    const { queue, dropped } = enqueue(queued(older), utterance(2, { channel: 'answer' }));
    expect(dropped).toEqual([older]);
    expect(queue.waiting.map(({ id }) => id)).toEqual([2]);
  });

  it('stops an answer that is being spoken when a newer answer comes', () => {
    const speaking = begin(queued(utterance(1, { channel: 'answer' })));
    const changed = enqueue(speaking, utterance(2, { channel: 'answer' }));
    expect(changed.mustStop).toBe(true);
    expect(changed.queue.current).toBeNull();
    expect(begin(changed.queue).current?.id).toBe(2);
  });

  it('lets every call be heard: a newer one does not replace an older one', () => {
    const queue = queued(utterance(1, { channel: 'call' }), utterance(2, { channel: 'call' }));
    expect(queue.waiting.map(({ id }) => id)).toEqual([1, 2]);
  });

  it('begins the most urgent first, and the oldest of the same urgency', () => {
    let queue = queued(
      utterance(1),
      utterance(2, { urgency: 'soon' }),
      utterance(3, { urgency: 'now' }),
      utterance(4, { urgency: 'soon' }),
    );
    const order: (number | undefined)[] = [];
    while (queue.waiting.length > 0) {
      queue = begin({ ...queue, current: null });
      order.push(queue.current?.id);
    }
    expect(order).toEqual([3, 2, 4, 1]);
  });

  it('cuts off a routine sentence for an urgent one and goes on with it afterwards', () => {
    const speaking = begin(queued(utterance(1)));
    const cut = enqueue(speaking, utterance(2, { urgency: 'now' }));
    expect(cut.mustStop).toBe(true);
    expect(cut.dropped).toEqual([]);
    const urgent = begin(cut.queue);
    expect(urgent.current?.id).toBe(2);
    expect(begin({ ...urgent, current: null }).current?.id).toBe(1);
  });

  it('does not cut off an urgent sentence for another urgent one', () => {
    const speaking = begin(queued(utterance(1, { urgency: 'now' })));
    const changed = enqueue(speaking, utterance(2, { urgency: 'now' }));
    expect(changed.mustStop).toBe(false);
    expect(changed.queue.current?.id).toBe(1);
  });

  it('drops what has waited past its time, and not a moment earlier', () => {
    const queue = queued(utterance(1, { untilMs: 1000 }), utterance(2, { untilMs: 2000 }));
    expect(dropLate(queue, 1000).dropped).toEqual([]);
    expect(dropLate(queue, 1001).dropped.map(({ id }) => id)).toEqual([1]);
  });

  it('keeps what an ident interrupts at the front', () => {
    const speaking = begin(queued(utterance(1), utterance(2)));
    const aside = setAside(speaking);
    expect(aside.current).toBeNull();
    expect(aside.waiting.map(({ id }) => id)).toEqual([1, 2]);
  });

  it('begins nothing while something is being said', () => {
    const speaking = begin(queued(utterance(1), utterance(2, { urgency: 'now' })));
    expect(begin(speaking)).toBe(speaking);
  });

  it('splits words into sentences, but not a figure at its point', () => {
    expect(sentencesOf('Tune 113.35. Set course one one two.  Look out!')).toEqual([
      'Tune 113.35.',
      'Set course one one two.',
      'Look out!',
    ]);
  });
});
