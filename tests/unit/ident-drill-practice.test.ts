import { describe, expect, test } from 'vitest';
import { isMastered, NEW_LETTER, recallAt } from '../../src/ident/drill/letter-strength.ts';
import { confusionChance, mixedPairs } from '../../src/ident/drill/pairs.ts';
import { practiceOf, type Practice } from '../../src/ident/drill/practice.ts';
import { summaryOf } from '../../src/ident/drill/session-summary.ts';
import { copy, logFrom, onPlate, written, type LogMaker } from './practice-log.ts';

const NOON_MS = Date.UTC(2026, 10, 25, 12);
const DAY_MS = 86_400_000;

const letterIn = (practice: Practice, letter: string) => practice.letters.get(letter) ?? NEW_LETTER;

function afterOne(isRight: boolean, tookS: number, plays = 1): Practice {
  const log = logFrom(NOON_MS);
  log.start();
  log.answer(copy('E'), written(isRight ? 'E' : 'T'), tookS, plays);
  return practiceOf(log.events);
}

describe('the half-life of a letter', () => {
  test('starts at half a day and doubles when right and fast', () => {
    expect(letterIn(afterOne(true, 1), 'E').halfLifeDays).toBeCloseTo(1, 9);
  });

  test('grows by a fifth when right and slow, or heard again', () => {
    expect(letterIn(afterOne(true, 5), 'E').halfLifeDays).toBeCloseTo(0.6, 9);
    expect(letterIn(afterOne(true, 1, 2), 'E').halfLifeDays).toBeCloseTo(0.6, 9);
  });

  test('falls to two fifths when wrong', () => {
    expect(letterIn(afterOne(false, 1), 'E').halfLifeDays).toBeCloseTo(0.2, 9);
  });

  test('does not grow again within ten minutes: that shows nothing new', () => {
    const log = logFrom(NOON_MS);
    log.start();
    log.answer(copy('E'), written('E'));
    log.answer(copy('E'), written('E'));
    expect(letterIn(practiceOf(log.events), 'E').halfLifeDays).toBeCloseTo(1, 9);
    log.wait(10);
    log.answer(copy('E'), written('E'));
    expect(letterIn(practiceOf(log.events), 'E').halfLifeDays).toBeCloseTo(2, 9);
  });

  test('is the time after which the letter is known half the time', () => {
    const letter = letterIn(afterOne(true, 1), 'E');
    expect(recallAt(letter, (letter.lastAtMs ?? 0) + DAY_MS)).toBeCloseTo(0.5, 9);
    expect(recallAt(NEW_LETTER, NOON_MS)).toBe(0);
  });
});

describe('a group of letters', () => {
  function practised(log: LogMaker, times: number, wrongOfM: number): void {
    for (let time = 0; time < times; time += 1) {
      for (const letter of 'ETANIM') {
        const isWrong = letter === 'M' && time < wrongOfM;
        log.answer(copy(letter), written(isWrong ? 'N' : letter));
      }
    }
  }

  test('opens the next when 18 of the last 20 of each letter were right', () => {
    const log = logFrom(NOON_MS);
    log.start();
    practised(log, 20, 2);
    expect(practiceOf(log.events).groups).toBe(2);
  });

  test('stays shut while one letter has three wrong', () => {
    const log = logFrom(NOON_MS);
    log.start();
    practised(log, 20, 3);
    expect(practiceOf(log.events).groups).toBe(1);
    log.answer(copy('M'), written('M'));
    expect(isMastered(letterIn(practiceOf(log.events), 'M'))).toBe(true);
    expect(practiceOf(log.events).groups).toBe(2);
  });

  test('stays shut before 20 answers, however right', () => {
    const log = logFrom(NOON_MS);
    log.start();
    practised(log, 19, 0);
    expect(practiceOf(log.events).groups).toBe(1);
  });

  test('is opened by the pilot at once', () => {
    const log = logFrom(NOON_MS);
    log.open(3);
    expect(practiceOf(log.events).groups).toBe(3);
  });

  test('does not open by telling letters from others on a plate', () => {
    const log = logFrom(NOON_MS);
    log.start();
    for (let time = 0; time < 25; time += 1) {
      log.answer(onPlate('TEN', { kind: 'ident', ident: 'TEN' }), { kind: 'yes' });
    }
    expect(letterIn(practiceOf(log.events), 'T').recent).toEqual([]);
  });
});

describe('pairs of letters', () => {
  test('are counted as they are confused, own answers against the prior', () => {
    const log = logFrom(NOON_MS);
    log.start();
    const before = confusionChance(practiceOf(log.events).pairs, 'M', 'N');
    log.answer(copy('MET'), written('NET'));
    log.answer(copy('AIM'), written('AIN'));
    const { pairs } = practiceOf(log.events);
    expect(mixedPairs(pairs)[0]).toEqual({ letters: 'MN', mixed: 2, of: 2 });
    expect(confusionChance(pairs, 'M', 'N')).toBeGreaterThan(before);
    expect(confusionChance(pairs, 'N', 'M')).toBeCloseTo(before, 1);
  });

  test('are neither counted nor held against a letter in noise: three in ten are meant to be wrong', () => {
    const log = logFrom(NOON_MS);
    log.start('noise');
    log.answer(copy('MET', { purpose: 'noise', snrDb: 15 }), written('NET'));
    const practice = practiceOf(log.events);
    expect(mixedPairs(practice.pairs)).toEqual([]);
    expect(practice.letters.size).toBe(0);
  });
});

describe('a session', () => {
  test('sums up what was right, missed and mixed up, and each wrong yes', () => {
    const log = logFrom(NOON_MS);
    log.start();
    log.answer(copy('TEN'), written('TEN'));
    log.answer(copy('MAT'), written('NAT'));
    log.answer(onPlate('TEN', { kind: 'ident', ident: 'TEA' }), { kind: 'yes' });
    log.answer(onPlate('TEN', { kind: 'test' }), { kind: 'yes' });
    const session = practiceOf(log.events).sessions[0];
    expect(session === undefined ? null : summaryOf(session)).toMatchObject({
      answered: 4,
      right: 1,
      missed: ['A', 'M'],
      wrongYes: 2,
      durationS: 8 * 60,
    });
  });

  test('keeps the open question, so that a page loaded again asks the same', () => {
    const log = logFrom(NOON_MS);
    log.start();
    log.answer(copy('TEN'), written('TEN'));
    log.events.push({
      id: 'Z'.repeat(26),
      atMs: NOON_MS * 2,
      kind: 'asked',
      question: copy('MAT'),
    });
    expect(practiceOf(log.events).sessions[0]?.open?.question).toEqual(copy('MAT'));
  });

  test('takes only the first answer to a question', () => {
    const log = logFrom(NOON_MS);
    log.start();
    log.answer(copy('TEN'), written('TEN'));
    const answered = log.events.at(-1);
    if (answered?.kind !== 'answered') throw new Error('no answer');
    const second = { ...answered, id: 'Z'.repeat(26), answer: written('TEA') };
    expect(practiceOf([...log.events, second]).sessions[0]?.answered).toHaveLength(1);
  });

  test('that is left open ends when the next one starts', () => {
    const log = logFrom(NOON_MS);
    log.start();
    log.answer(copy('TEN'), written('TEN'));
    log.start();
    const { sessions } = practiceOf(log.events);
    expect(sessions.map(({ isEnded }) => isEnded)).toEqual([true, false]);
  });
});
