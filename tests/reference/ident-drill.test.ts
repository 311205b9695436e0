import { describe, expect, test } from 'vitest';
import { chanceFrom } from '../../src/ident/drill/chance.ts';
import { LETTER_GROUPS } from '../../src/ident/drill/letters.ts';
import { ALIKE_PAIRS, pairsByDistance, similarity } from '../../src/ident/drill/similarity.ts';
import { spacedTimeline } from '../../src/ident/drill/spaced.ts';
import {
  answerOn,
  NOISE_STEPS,
  startStaircase,
  thresholdDb,
  type Staircase,
} from '../../src/ident/drill/staircase.ts';
import { identTimeline, timelineLengthS } from '../../src/ident/timeline.ts';

describe('listening data of 598 people (Rothkopf 1957, as published with open statistics packages)', () => {
  test('23 of the 32 closest pairs are among the 60 closest of 325 by their elements alone', () => {
    const closest = new Set(pairsByDistance().slice(0, 60));
    const found = ALIKE_PAIRS.filter(
      (pair) => closest.has(pair) || closest.has(pair.charAt(1) + pair.charAt(0)),
    );
    expect(pairsByDistance()).toHaveLength(325);
    expect(found.length).toBeGreaterThanOrEqual(23);
  });

  test('come before every pair that they do not name', () => {
    const named = ALIKE_PAIRS.map((pair) => similarity(pair.charAt(0), pair.charAt(1)));
    const others = pairsByDistance()
      .filter(
        (pair) =>
          !ALIKE_PAIRS.includes(pair) && !ALIKE_PAIRS.includes(pair.charAt(1) + pair.charAt(0)),
      )
      .map((pair) => similarity(pair.charAt(0), pair.charAt(1)));
    expect(Math.min(...named)).toBeGreaterThan(Math.max(...others));
  });
});

describe('the letters of the alphabet', () => {
  test('are each taken up once', () => {
    expect(LETTER_GROUPS.flat().toSorted().join('')).toBe('ABCDEFGHIJKLMNOPQRSTUVWXYZ');
  });
});

describe('spaced keying (J. Bloom, QEX, April 1990: formula and PARIS, from memory)', () => {
  /** PARIS with the word gap after it, seconds; the word gap is 7/3 of the letter gap. */
  function wordS(letterWpm: number, wpm: number): number {
    const marks = spacedTimeline('PARIS', { letterWpm, wpm });
    const next = marks.find((mark) => mark.letterIndex === 1);
    const lastOfFirst = marks.findLast((mark) => mark.letterIndex === 0);
    if (next === undefined || lastOfFirst === undefined) throw new Error('no letters');
    const gapS = next.startS - lastOfFirst.startS - lastOfFirst.durationS;
    return timelineLengthS(marks) + (7 / 3) * gapS;
  }

  test.each([
    [12, 5],
    [10, 5.5],
    [9, 6],
    [8, 6.5],
    [7, 7],
    [18, 10],
  ])('at %d in the letters and %d over all, that many words fit a minute', (letterWpm, wpm) => {
    expect(60 / wordS(letterWpm, wpm)).toBeCloseTo(wpm, 9);
  });

  test('leaves the letters themselves as they are keyed at their own speed', () => {
    const spaced = spacedTimeline('Q', { letterWpm: 12, wpm: 5 });
    expect(spaced).toEqual(identTimeline('Q', { wpm: 12 }));
  });
});

describe('two down, one up (Levitt 1971, J. Acoust. Soc. Am. 49, 467: settles at 70.7 %; from memory)', () => {
  /** A listener who is right this often at a level: half-way at `middleDb`. */
  const rightAt = (levelDb: number, middleDb: number): number =>
    1 / (1 + Math.exp(-(levelDb - middleDb) / 1.5));

  function levelsHeard(middleDb: number, seed: number): readonly Staircase[] {
    const chance = chanceFrom(seed);
    const all: Staircase[] = [];
    let now = startStaircase(NOISE_STEPS);
    for (let answer = 0; answer < 400; answer += 1) {
      now = answerOn(now, chance() < rightAt(now.levelDb, middleDb), NOISE_STEPS);
      all.push(now);
    }
    return all;
  }

  test.each([4, 0, -4])(
    'a listener half right at %d dB gets a threshold at 70.7 %% right',
    (middleDb) => {
      // ln(0.707 / 0.293) = 0.881 slopes of 1.5 dB above the middle.
      const expectedDb = middleDb + 1.5 * Math.log(0.7071 / 0.2929);
      const means = Array.from({ length: 40 }, (_, seed) => {
        const thresholds = levelsHeard(middleDb, 1000 + seed).slice(100);
        const known = thresholds.flatMap((each) => thresholdDb(each) ?? []);
        return known.reduce((sum, each) => sum + each, 0) / known.length;
      });
      const mean = means.reduce((sum, each) => sum + each, 0) / means.length;
      // Half a step: turns are counted in steps of 2 dB.
      expect(Math.abs(mean - expectedDb)).toBeLessThan(1);
    },
  );

  test('gives no threshold before four turns', () => {
    let now = startStaircase(NOISE_STEPS);
    const known: (number | null)[] = [];
    for (const isRight of [true, true, false, true, true, false, true, true]) {
      now = answerOn(now, isRight, NOISE_STEPS);
      known.push(thresholdDb(now));
    }
    expect(known).toEqual([null, null, null, null, null, null, null, 14]);
  });

  test('a perfect listener gets the hardest level', () => {
    let now = startStaircase(NOISE_STEPS);
    for (let answer = 0; answer < 60; answer += 1) now = answerOn(now, true, NOISE_STEPS);
    expect(thresholdDb(now)).toBe(NOISE_STEPS.hardestDb);
  });
});
