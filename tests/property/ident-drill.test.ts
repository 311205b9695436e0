import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { align, EVEN_COSTS } from '../../src/ident/drill/align.ts';
import type { Answer, PracticeEvent, Question } from '../../src/ident/drill/event.ts';
import { judge, keyedLetters } from '../../src/ident/drill/judge.ts';
import { recallAt } from '../../src/ident/drill/letter-strength.ts';
import { LETTERS } from '../../src/ident/drill/letters.ts';
import { confusionChance } from '../../src/ident/drill/pairs.ts';
import { nextQuestion } from '../../src/ident/drill/next-question.ts';
import { practiceOf, withEvent, type Practice } from '../../src/ident/drill/practice.ts';
import { readPracticeLog, writePracticeLog } from '../../src/ident/drill/read-log.ts';
import { NOISE_STEPS, VOICE_STEPS } from '../../src/ident/drill/staircase.ts';

const NOON_MS = Date.UTC(2026, 10, 25, 12);

const letter = fc.constantFrom(...LETTERS);
const ident = fc.array(letter, { minLength: 1, maxLength: 4 }).map((each) => each.join(''));
const answer: fc.Arbitrary<Answer> = fc.oneof(
  fc.constantFrom<Answer>({ kind: 'yes' }, { kind: 'no' }, { kind: 'not-identified' }),
  ident.map((letters): Answer => ({ kind: 'letters', letters })),
);

/** A pilot of some skill who answers what the drill asks; some answers are nonsense. */
const pilot = fc.record({
  seed: fc.integer(),
  about: fc.constantFrom('letters', 'mixed', 'noise'),
  pace: fc.constantFrom('way-in', 'on-air'),
  groups: fc.integer({ min: 1, max: 4 }),
  route: fc.array(ident, { maxLength: 3 }),
  answers: fc.array(fc.tuple(fc.boolean(), answer), { minLength: 1, maxLength: 40 }),
});

type Pilot = typeof pilot extends fc.Arbitrary<infer Each> ? Each : never;

const idAt = (index: number): string => `01${String(index).padStart(24, '0')}`;

/** The log of one session of this pilot. */
function practised(given: Pilot): { events: PracticeEvent[]; asked: Question[] } {
  const events: PracticeEvent[] = [];
  const asked: Question[] = [];
  let practice = practiceOf([]);
  const add = (make: (id: string, atMs: number) => PracticeEvent): void => {
    const event = make(idAt(events.length), NOON_MS + events.length * 20_000);
    events.push(event);
    practice = withEvent(practice, event);
  };
  add((id, atMs) => ({ id, atMs, kind: 'opened', groups: given.groups }));
  const { about, pace } = given;
  add((id, atMs) => ({ id, atMs, kind: 'started', about, pace, length: 20 }));
  for (const [knows, guess] of given.answers) {
    const session = practice.sessions.at(-1);
    if (session === undefined) throw new Error('no session');
    const around = { route: given.route, near: [] };
    const atMs = NOON_MS + events.length * 20_000;
    const seed = given.seed + events.length;
    const question = nextQuestion(practice, session, around, { atMs, seed, hasVoice: true });
    asked.push(question);
    add((id, at) => ({ id, atMs: at, kind: 'asked', question }));
    const questionId = events.at(-1)?.id ?? '';
    const said = knows ? rightAnswer(question) : guess;
    add((id, at) => ({
      id,
      atMs: at,
      kind: 'answered',
      questionId,
      answer: said,
      tookS: 1,
      plays: 1,
    }));
  }
  return { events, asked };
}

function rightAnswer({ sent, plate }: Question): Answer {
  if (sent.kind !== 'ident') return { kind: 'not-identified' };
  if (plate === null) return { kind: 'letters', letters: sent.ident };
  return { kind: sent.ident === plate ? 'yes' : 'no' };
}

const firsts = ({ sent, plate }: Question): readonly string[] =>
  [keyedLetters(sent), plate ?? ''].map((each) => each.charAt(0)).filter((each) => each !== '');

describe('the questions of any session', () => {
  test('never begin with the same letter twice in a row, on the air or on the plate', () => {
    fc.assert(
      fc.property(pilot, (given) => {
        const { asked } = practised(given);
        for (const [index, question] of asked.entries()) {
          const before = asked[index - 1];
          if (before === undefined) continue;
          for (const first of firsts(question)) expect(firsts(before)).not.toContain(first);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('a plate question sends the plate, one element beside it, or no ident at all', () => {
    fc.assert(
      fc.property(pilot, (given) => {
        for (const { sent, plate } of practised(given).asked) {
          if (plate === null || sent.kind !== 'ident') continue;
          const differing = Array.from(sent.ident).filter((each, at) => each !== plate.charAt(at));
          expect(sent.ident).toHaveLength(plate.length);
          expect(differing.length).toBeLessThanOrEqual(1);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('keep noise and voice within their steps, the speed between 5 and 12 words a minute', () => {
    fc.assert(
      fc.property(pilot, (given) => {
        for (const { snrDb, voiceDb, wpm, letterWpm } of practised(given).asked) {
          expect(snrDb ?? 0).toBeGreaterThanOrEqual(NOISE_STEPS.hardestDb);
          expect(snrDb ?? 0).toBeLessThanOrEqual(NOISE_STEPS.easiestDb);
          expect(Math.abs(voiceDb ?? 0)).toBeLessThanOrEqual(VOICE_STEPS.easiestDb);
          expect(wpm).toBeGreaterThanOrEqual(5);
          expect(letterWpm).toBeLessThanOrEqual(12);
          expect(wpm).toBeLessThanOrEqual(letterWpm);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('have a right answer that is judged right, and yes to a wrong station never is', () => {
    fc.assert(
      fc.property(pilot, (given) => {
        for (const question of practised(given).asked) {
          expect(judge(question, rightAnswer(question)).isRight).toBe(true);
          const { sent, plate } = question;
          const isSame = sent.kind === 'ident' && sent.ident === plate;
          expect(judge(question, { kind: 'yes' }).isRight).toBe(isSame);
        }
      }),
      { numRuns: 60 },
    );
  });
});

/** A practice as plain data, to be compared. */
const plain = (practice: Practice): unknown => ({
  ...practice,
  letters: [...practice.letters],
  pairs: [...practice.pairs],
});

describe('a practice log', () => {
  test('comes to the same in any order and with lines twice over', () => {
    fc.assert(
      fc.property(
        pilot,
        fc.array(fc.nat(1000), { minLength: 90, maxLength: 90 }),
        (given, places) => {
          const { events } = practised(given);
          const drawn = [...events, ...events.slice(0, 5)].map((event, index) => ({
            event,
            place: places[index] ?? 0,
          }));
          const shuffled = drawn.sort((a, b) => a.place - b.place).map(({ event }) => event);
          expect(plain(practiceOf(shuffled))).toEqual(plain(practiceOf(events)));
        },
      ),
      { numRuns: 40 },
    );
  });

  test('that the drill wrote is always read back whole', () => {
    fc.assert(
      fc.property(pilot, (given) => {
        const { events } = practised(given);
        expect(readPracticeLog(writePracticeLog(events))).toEqual({ ok: true, value: events });
      }),
      { numRuns: 40 },
    );
  });

  test('of anything at all is read or refused, never more', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        const read = readPracticeLog(text);
        expect(read.ok || read.problem.length > 0).toBe(true);
      }),
    );
  });

  test('gives chances between 0 and 1 that add up to 1 for each letter sent', () => {
    fc.assert(
      fc.property(pilot, (given) => {
        const { events } = practised(given);
        const { pairs, letters } = practiceOf(events);
        for (const sent of LETTERS) {
          const sum = LETTERS.reduce((all, each) => all + confusionChance(pairs, sent, each), 0);
          expect(sum).toBeCloseTo(1, 9);
        }
        for (const each of letters.values()) {
          const recall = recallAt(each, NOON_MS + 86_400_000);
          expect(recall >= 0 && recall <= 1).toBe(true);
        }
      }),
      { numRuns: 10 },
    );
  });
});

describe('two rows laid side by side', () => {
  test('give each row back in order, at a cost no greater than replacing all', () => {
    fc.assert(
      fc.property(fc.array(letter), fc.array(letter), (one, other) => {
        const { pairs, cost } = align(one, other, EVEN_COSTS);
        expect(pairs.flatMap((pair) => pair.one ?? [])).toEqual(one);
        expect(pairs.flatMap((pair) => pair.other ?? [])).toEqual(other);
        expect(cost).toBeLessThanOrEqual(Math.max(one.length, other.length));
        expect(cost).toBeGreaterThanOrEqual(Math.abs(one.length - other.length));
      }),
    );
  });
});
