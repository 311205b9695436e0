import { describe, expect, test } from 'vitest';
import { readPracticeLog, writePracticeLog } from '../../src/ident/drill/read-log.ts';
import { copy, logFrom, onPlate, written } from './practice-log.ts';

function someLog(): ReturnType<typeof logFrom> {
  const log = logFrom(Date.UTC(2026, 10, 25, 12));
  log.start('mixed', 'way-in');
  log.answer(copy('TEN'), written('TEN'));
  log.answer(onPlate('TEN', { kind: 'test' }), { kind: 'not-identified' });
  log.answer(copy('TEN', { purpose: 'noise', snrDb: -12 }), written(''));
  log.end();
  log.open(2);
  return log;
}

describe('the file of a practice log', () => {
  test('reads back as it was written', () => {
    const { events } = someLog();
    expect(readPracticeLog(writePracticeLog(events))).toEqual({ ok: true, value: events });
  });

  test('of an empty log reads back empty', () => {
    expect(readPracticeLog(writePracticeLog([]))).toEqual({ ok: true, value: [] });
  });

  test.each([
    ['no JSON', 'ident,right\nTEN,1', 'file'],
    ['another JSON', '{"flights": []}', 'file'],
    ['a later edition', '{"about":"ident practice","edition":2,"events":[]}', 'edition'],
  ])('is refused when it is %s', (_name, text, field) => {
    const read = readPracticeLog(text);
    expect(read.ok ? null : read.problem[0]?.field).toBe(field);
  });

  test.each([
    ['an unknown kind', { kind: 'guessed' }],
    ['no time', { atMs: null }],
    ['a time that is no number', { atMs: 'noon' }],
    ['an id of another make', { id: '7' }],
    ['a length of no questions', { length: 0 }],
  ])('is refused as a whole, with its line, for %s', (_name, part) => {
    const events = someLog().events.map((event, index) =>
      index === 0 ? { ...event, ...part } : event,
    );
    const text = JSON.stringify({ about: 'ident practice', edition: 1, events });
    const read = readPracticeLog(text);
    expect(read.ok ? null : read.problem[0]?.field).toBe('events.0');
  });

  test('is refused for a question that could not have been asked', () => {
    const log = logFrom(0);
    log.start();
    log.answer(copy('TEN', { wpm: 0 }), written('TEN'));
    expect(readPracticeLog(writePracticeLog(log.events)).ok).toBe(false);
  });
});
