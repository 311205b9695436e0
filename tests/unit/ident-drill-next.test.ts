import { describe, expect, test } from 'vitest';
import { nextQuestion } from '../../src/ident/drill/next-question.ts';
import type { About, Pace, Question } from '../../src/ident/drill/event.ts';
import { practiceOf, withEvent } from '../../src/ident/drill/practice.ts';
import { copy, logFrom, written, type LogMaker } from './practice-log.ts';

const NOON_MS = Date.UTC(2026, 10, 25, 12);
const NOWHERE = { route: [], near: [] };

/** Asks and answers everything right; gives what was asked. */
function rightThrough(
  log: LogMaker,
  many: number,
  around: { readonly route: readonly string[]; readonly near: readonly string[] } = NOWHERE,
  hasVoice = true,
): readonly Question[] {
  let practice = practiceOf(log.events);
  let taken = log.events.length;
  return Array.from({ length: many }, (_, index) => {
    practice = log.events.slice(taken).reduce(withEvent, practice);
    taken = log.events.length;
    const session = practice.sessions.at(-1);
    if (session === undefined) throw new Error('no session');
    const atMs = log.events.at(-1)?.atMs ?? NOON_MS;
    const question = nextQuestion(practice, session, around, {
      atMs,
      seed: 7 * index + 1,
      hasVoice,
    });
    const { sent, plate } = question;
    if (sent.kind !== 'ident') log.answer(question, { kind: 'not-identified' });
    else if (plate === null) log.answer(question, written(sent.ident));
    else log.answer(question, { kind: sent.ident === plate ? 'yes' : 'no' });
    return question;
  });
}

function begun(about: About, pace: Pace, groups: number): LogMaker {
  const log = logFrom(NOON_MS);
  if (groups > 1) log.open(groups);
  log.start(about, pace);
  return log;
}

describe('what comes next', () => {
  test('a new pilot first hears the letters of the first group one by one', () => {
    const asked = rightThrough(begun('letters', 'way-in', 1), 18);
    const single = asked.filter(({ plate }) => plate === null);
    for (const { sent } of single) {
      expect(sent.kind === 'ident' ? sent.ident : '').toMatch(/^[ETANIM]$/);
    }
    expect(new Set(single.map(({ sent }) => (sent.kind === 'ident' ? sent.ident : ''))).size).toBe(
      6,
    );
  });

  test('then idents of three of these letters', () => {
    const asked = rightThrough(begun('letters', 'way-in', 1), 60);
    const last = asked
      .slice(-20)
      .filter(({ plate, sent }) => plate === null && sent.kind === 'ident');
    for (const { sent } of last)
      expect(sent.kind === 'ident' && sent.ident).toMatch(/^[ETANIM]{3}$/);
  });

  test('every third question is about the plate', () => {
    const asked = rightThrough(begun('mixed', 'on-air', 2), 30);
    expect(asked.filter((_, index) => index % 3 === 2).every(({ plate }) => plate !== null)).toBe(
      true,
    );
    expect(asked.filter((_, index) => index % 3 !== 2).every(({ plate }) => plate === null)).toBe(
      true,
    );
  });

  test('the ident of the planned flight comes first among idents', () => {
    const log = begun('letters', 'on-air', 4);
    const around = { route: ['QEV'], near: [] };
    const plates = rightThrough(log, 3, around).flatMap(({ plate }) => plate ?? []);
    expect(plates).toEqual(['QEV']);
  });

  test('an ident of the flight with letters not taken up yet is asked on the plate only', () => {
    const log = begun('letters', 'on-air', 1);
    const around = { route: ['QEV'], near: [] };
    const asked = rightThrough(log, 60, around);
    expect(asked.some(({ plate }) => plate === 'QEV')).toBe(true);
    const copied = asked.filter(({ plate }) => plate === null);
    expect(copied.some(({ sent }) => sent.kind === 'ident' && sent.ident === 'QEV')).toBe(false);
  });

  test('a letter taken wrong comes back sooner than one taken right', () => {
    const log = begun('letters', 'on-air', 4);
    rightThrough(log, 200);
    for (let time = 0; time < 6; time += 1) log.answer(copy('K'), written('D'));
    log.wait(60);
    const asked = rightThrough(log, 40).filter(
      ({ plate, sent }) => plate === null && sent.kind === 'ident',
    );
    const timesOf = (letter: string): number =>
      asked.filter(({ sent }) => sent.kind === 'ident' && sent.ident.includes(letter)).length;
    const others = Array.from('ABCDEFGHIJLMNOPQRSTUVWXYZ').map(timesOf);
    const mean = others.reduce((sum, each) => sum + each, 0) / others.length;
    expect(timesOf('K')).toBeGreaterThan(mean);
  });

  test('an ident to find is not always there, once the pilot has begun', () => {
    const asked = rightThrough(begun('letters', 'on-air', 4), 400);
    expect(asked.slice(0, 12).every(({ sent }) => sent.kind === 'ident')).toBe(true);
    const share = asked.filter(({ sent }) => sent.kind !== 'ident').length / asked.length;
    expect(share).toBeGreaterThan(0.06);
    expect(share).toBeLessThan(0.17);
    expect(new Set(asked.map(({ sent }) => sent.kind))).toEqual(
      new Set(['ident', 'test', 'nothing', 'dme-only']),
    );
  });

  test('a DME alone is heard on 1350 Hz, a VOR within 50 Hz of 1020 Hz (AIM 1-1-7 f; Annex 10, from memory)', () => {
    for (const { sent, toneHz } of rightThrough(begun('letters', 'on-air', 4), 300)) {
      if (sent.kind === 'dme-only') expect(toneHz).toBe(1350);
      else expect(Math.abs(toneHz - 1020)).toBeLessThanOrEqual(50);
    }
  });
});

describe('how fast and how loud', () => {
  test('the way in slides from quick letters with long gaps to 7 words a minute in four sessions', () => {
    const log = logFrom(NOON_MS);
    const paces: (readonly [number, number])[] = [];
    for (let session = 0; session < 6; session += 1) {
      log.start('letters', 'way-in');
      const [first] = rightThrough(log, 10);
      if (first !== undefined) paces.push([first.letterWpm, first.wpm]);
      log.end();
    }
    expect(paces).toEqual([
      [12, 5],
      [10, 5.5],
      [9, 6],
      [8, 6.5],
      [7, 7],
      [7, 7],
    ]);
  });

  test('a session broken off early does not move it', () => {
    const log = begun('letters', 'way-in', 1);
    rightThrough(log, 9);
    log.end();
    log.start('letters', 'way-in');
    expect(rightThrough(log, 1)[0]?.letterWpm).toBe(12);
  });

  test('as on the air is 7 words a minute from the first', () => {
    const first = rightThrough(begun('letters', 'on-air', 1), 1)[0];
    expect([first?.letterWpm, first?.wpm]).toEqual([7, 7]);
  });

  test('the noise grows by 2 dB after two right, down to -12 dB and no further', () => {
    const asked = rightThrough(begun('noise', 'on-air', 4), 90);
    const levels = asked.flatMap(({ purpose, snrDb }) => (purpose === 'noise' ? [snrDb] : []));
    expect(levels.slice(0, 6)).toEqual([15, 15, 13, 13, 11, 11]);
    expect(Math.min(...levels.map((each) => each ?? 99))).toBe(-12);
  });

  test('a voice comes on the channel only when the noise threshold is -3 dB or better', () => {
    const asked = rightThrough(begun('noise', 'on-air', 4), 200);
    const firstVoice = asked.findIndex(({ voiceDb }) => voiceDb !== null);
    const noiseBefore = asked.slice(0, firstVoice).filter(({ purpose }) => purpose === 'noise');
    expect(firstVoice).toBeGreaterThan(0);
    expect(noiseBefore.at(-1)?.snrDb).toBe(-12);
    expect(asked[firstVoice]?.voiceDb).toBe(6);
  });

  test('a voice that is not at hand is never asked for', () => {
    const asked = rightThrough(begun('noise', 'on-air', 4), 120, NOWHERE, false);
    expect(asked.every(({ voiceDb }) => voiceDb === null)).toBe(true);
  });

  test('a mixed session brings no noise while the first letters are new', () => {
    const asked = rightThrough(begun('mixed', 'on-air', 1), 15);
    expect(asked.every(({ snrDb }) => snrDb === null)).toBe(true);
  });
});
