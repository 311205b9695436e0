import { describe, expect, test } from 'vitest';
import { identTimeline, repeatedTimeline, timelineLengthS } from '../../src/ident/timeline.ts';

describe('keying an ident once', () => {
  test('each mark knows its letter and its element', () => {
    expect(
      identTimeline('AE', { wpm: 12 }).map((mark) => [mark.letterIndex, mark.element]),
    ).toEqual([
      [0, 'dot'],
      [0, 'dash'],
      [1, 'dot'],
    ]);
  });

  test('marks follow each other with their gaps', () => {
    const unitS = 0.1; // 12 words a minute
    const starts = identTimeline('AE', { wpm: 12 }).map((mark) => Math.round(mark.startS / unitS));
    expect(starts).toEqual([0, 2, 8]);
  });
});

describe('keying an ident again and again', () => {
  test('each repeat starts one interval after the one before', () => {
    const marks = repeatedTimeline('E', { repeats: 3, intervalS: 10 });
    expect(marks.map((mark) => mark.startS)).toEqual([0, 10, 20]);
  });

  test('an ident longer than its interval still leaves two seconds of quiet', () => {
    const once = timelineLengthS(identTimeline('0000', { wpm: 20 }));
    const second = repeatedTimeline('0000', { wpm: 20, repeats: 2, intervalS: 2 })[20];
    expect(once).toBeGreaterThan(2);
    expect((second?.startS ?? 0) - once).toBeGreaterThanOrEqual(2);
  });

  test('nothing to key gives no marks and no length', () => {
    expect(timelineLengthS(repeatedTimeline('', { repeats: 2 }))).toBe(0);
  });
});
