import { describe, expect, test } from 'vitest';
import { markAt } from '../../client/idents/hear-sound.ts';
import { NO_LEVELS, withLevels } from '../../client/listen/ear-state.ts';
import { dotLengthS, placeLetters } from '../../client/listen/mark-letters.ts';
import { identLevelDb, isFlat, toneLevelDb } from '../../client/listen/tone-level.ts';
import { frontEndStep, startFrontEnd } from '../../src/ident/front-end.ts';
import { stationTimeline } from '../../src/ident/interleaved.ts';
import { identTimeline } from '../../src/ident/timeline.ts';

describe('the level of the tone', () => {
  const rateHz = 48_000;

  /** The last block of a held tone after the front end. */
  function blockOf(toneHz: number, amplitude: number): { block: Float32Array; rateHz: number } {
    const frontEnd = startFrontEnd(rateHz);
    const sound = Float32Array.from(
      { length: rateHz / 4 },
      (_, n) => amplitude * Math.sin((2 * Math.PI * toneHz * n) / rateHz),
    );
    const output = new Float32Array(2 * 300);
    const count = frontEndStep(frontEnd, sound, output);
    const outRateHz = frontEnd.taps.outRateHz;
    return { block: output.slice(2 * (count - 32), 2 * count), rateHz: outRateHz };
  }

  test.each([
    [1020, 0.5, -6.02],
    [1350, 0.1, -20],
  ])('of %d Hz at amplitude %d is %d dB', (toneHz, amplitude, levelDb) => {
    const { block, rateHz: outHz } = blockOf(toneHz, amplitude);
    // The filter may ripple by a tenth of a decibel or two.
    expect(Math.abs(toneLevelDb(block, outHz, toneHz) - levelDb)).toBeLessThan(0.3);
  });

  test('of another tone is far down', () => {
    const { block, rateHz: outHz } = blockOf(1350, 0.5);
    expect(toneLevelDb(block, outHz, 1020)).toBeLessThan(-20);
  });

  test.each([975, 1020, 1065, 1350])('of a tone at %d Hz is seen before it is known', (toneHz) => {
    const { block, rateHz: outHz } = blockOf(toneHz, 0.5);
    expect(Math.abs(identLevelDb(block, outHz, null) - -6)).toBeLessThan(2);
  });

  test('is that of the DME while the DME keys', () => {
    const { block, rateHz: outHz } = blockOf(1350, 0.5);
    expect(Math.abs(identLevelDb(block, outHz, 1020) - -6)).toBeLessThan(0.5);
  });

  test('of nothing is the floor, and only that is flat', () => {
    const zeros = new Float32Array(64);
    expect(identLevelDb(zeros, 1000, null)).toBe(-100);
    expect(isFlat(zeros)).toBe(true);
    expect(isFlat(zeros.with(5, 1e-9))).toBe(false);
  });
});

describe('levels that are kept', () => {
  test('go on without a gap, and the oldest go first', () => {
    let track = NO_LEVELS;
    for (let at = 0; at < 1500; at += 1)
      track = withLevels(track, { fromS: 3 * at, stepS: 1, levelsDb: [at, at, at] });
    expect(track.fromS + track.levelsDb.length).toBe(4500);
    expect(track.levelsDb.length).toBe(4000);
    expect(track.levelsDb[0]).toBe(Math.floor(track.fromS / 3));
    expect(track.levelsDb.at(-1)).toBe(1499);
  });

  test('begin anew with a new listening', () => {
    const track = withLevels(
      { fromS: 0, stepS: 1, levelsDb: [1, 2] },
      { fromS: 0, stepS: 1, levelsDb: [3] },
    );
    expect(track.levelsDb).toEqual([3]);
  });
});

describe('letters under their marks', () => {
  test.each(['QEV', 'TEST', 'EIS', 'KFW'])('%s is read where it is keyed', (ident) => {
    const marks = identTimeline(ident);
    const dotS = dotLengthS(marks) ?? Number.NaN;
    // ITU-R M.1677-1; 7 words a minute: a dot of 1.2 / 7 s.
    expect(dotS).toBeCloseTo(1.2 / 7, 6);
    const placed = placeLetters(marks, dotS);
    expect(placed.map(({ letter }) => letter).join('')).toBe(ident);
    expect(placed[0]?.fromS).toBe(0);
  });

  test('marks that are no letter have none', () => {
    const marks = Array.from({ length: 7 }, (_, index) => ({
      startS: index * 0.2,
      durationS: 0.1,
      element: 'dot' as const,
    }));
    expect(placeLetters(marks, 0.1)).toEqual([]);
    expect(dotLengthS([])).toBeNull();
  });
});

describe('the mark that sounds', () => {
  const marks = stationTimeline('QEV');

  test('is counted anew in each ident, and is the VOR’s or the DME’s', () => {
    const perIdent = identTimeline('QEV').length;
    for (const [at, mark] of marks.entries()) {
      const now = markAt(marks, mark.startS + mark.durationS / 2);
      expect(now).toEqual({ index: at % perIdent, of: mark.of });
    }
    expect(marks.at(-1)?.of).toBe('dme');
  });

  test('is none between marks, before the first and after the last', () => {
    const [first] = marks;
    const endS = (first?.startS ?? 0) + (first?.durationS ?? 0);
    expect(markAt(marks, endS + 0.01)).toBeNull();
    expect(markAt(marks, -1)).toBeNull();
    expect(markAt(marks, 1000)).toBeNull();
  });
});
