import { describe, expect, it } from 'vitest';
import { addEvent, addEvents, emptyFold, foldFlight } from '../../src/flight/fold.ts';
import type { FlightEvent } from '../../src/flight/event.ts';
import { AIRCRAFT, DATE_ISO, INBOUND, OUTBOUND, XUN } from './ocean-legs.ts';

const PLAN: FlightEvent = {
  id: 'A0',
  atMs: 0,
  kind: 'plan',
  name: 'Over the ocean',
  legs: [INBOUND, OUTBOUND],
  aircraft: AIRCRAFT,
  forecastWind: { fromDegTrue: 330, speedKt: 15 },
  dateIso: DATE_ISO,
};

type Given = Partial<Extract<FlightEvent, { kind: 'reading' }>>;

function reading(id: string, atS: number, given: Given): FlightEvent {
  return { id, atMs: atS * 1000, kind: 'reading', ...given };
}

const FIRST = reading('B1', 60, { headingDeg: 112, needleDots: -1.5, flag: 'to', dmeNm: 11.2 });
const SECOND = reading('B2', 120, { headingDeg: 97, needleDots: -1, dmeNm: 9.7 });

describe('a reading in a flight', () => {
  it('is answered', () => {
    const state = foldFlight([PLAN, FIRST]);
    expect(state.readings).toHaveLength(1);
    expect(state.advice).not.toBeNull();
    expect(state.readings[0]?.advice).toEqual(state.advice);
    expect(state.estimate?.readings).toHaveLength(1);
  });

  it('takes the course set from the leg, and the flag as it was read last', () => {
    const state = foldFlight([PLAN, FIRST, SECOND]);
    expect(state.readings[1]?.reading).toMatchObject({ courseSetDeg: 112, flag: 'to' });
    const off = reading('B3', 180, { flag: 'off' });
    const next = reading('B4', 200, { dmeNm: 7 });
    const later = foldFlight([PLAN, FIRST, off, next]);
    expect(later.readings.at(-1)?.reading.flag).toBe('off');
  });

  it('keeps a course set until another one is read', () => {
    const twisted = reading('B3', 180, { courseSetDeg: 109, needleDots: 0.5 });
    const state = foldFlight([PLAN, FIRST, twisted, reading('B4', 200, { needleDots: 0 })]);
    expect(state.readings.at(-1)?.reading.courseSetDeg).toBe(109);
  });

  it('takes the flag from the direction of the leg when it was never read', () => {
    expect(foldFlight([PLAN, reading('B1', 60, { dmeNm: 11 })]).readings[0]?.reading.flag).toBe(
      'to',
    );
  });

  it('of another station changes neither flag nor course of the leg', () => {
    const across = reading('B3', 180, {
      station: XUN,
      courseSetDeg: 310,
      flag: 'from',
      needleDots: 0,
    });
    const state = foldFlight([PLAN, FIRST, across, reading('B4', 200, { needleDots: 0 })]);
    expect(state.readings.at(-1)?.reading).toMatchObject({ flag: 'to', courseSetDeg: 112 });
    expect(state.legIndex).toBe(0);
  });

  it('that no panel can show stays in the log, counts for nothing and says why', () => {
    const wild = reading('B2', 120, { needleDots: -9 });
    const state = foldFlight([PLAN, FIRST, wild]);
    expect(state.readings[1]?.problem[0]?.field).toBe('reading.needleDots');
    expect(state.readings[1]?.advice).toBeNull();
    expect(state.estimate).toEqual(foldFlight([PLAN, FIRST]).estimate);
    expect(state.advice).toEqual(foldFlight([PLAN, FIRST]).advice);
  });

  it('with nothing in it counts for nothing', () => {
    const state = foldFlight([PLAN, FIRST, reading('B2', 120, {})]);
    expect(state.readings[1]?.problem[0]?.got).toBe('nothing');
    expect(state.estimate?.readings).toHaveLength(1);
  });

  it('before the plan is kept and has no answer', () => {
    const state = foldFlight([{ ...FIRST, atMs: -1 }, PLAN]);
    expect(state.readings[0]).toMatchObject({ advice: null, problem: [{ field: 'plan' }] });
    expect(state.advice).toBeNull();
  });

  it('on a day that the magnetic model does not reach names the date', () => {
    const state = foldFlight([{ ...PLAN, dateIso: '1999-07-01' }, FIRST]);
    expect(state.readings[0]?.problem[0]?.field).toBe('dateIso');
  });

  it('starts the leg when nothing else has', () => {
    expect(foldFlight([PLAN, FIRST]).legs[0]?.startedAtMs).toBe(60_000);
    const started: FlightEvent = { id: 'A1', atMs: 10_000, kind: 'leg-started', legIndex: 0 };
    expect(foldFlight([PLAN, started, FIRST]).legs[0]?.startedAtMs).toBe(10_000);
  });
});

describe('taking back', () => {
  const undo: FlightEvent = { id: 'C1', atMs: 130_000, kind: 'taken-back', eventId: 'B2' };
  const redo: FlightEvent = { id: 'C2', atMs: 140_000, kind: 'taken-back', eventId: 'C1' };

  it('keeps the reading in the list and counts it for nothing', () => {
    const state = foldFlight([PLAN, FIRST, SECOND, undo]);
    expect(state.readings.map((record) => record.isTakenBack)).toEqual([false, true]);
    expect(state.readings[1]?.advice).toBeNull();
    expect(state.estimate).toEqual(foldFlight([PLAN, FIRST]).estimate);
    expect(state.advice).toEqual(foldFlight([PLAN, FIRST]).advice);
  });

  it('twice brings the reading back', () => {
    const before = foldFlight([PLAN, FIRST, SECOND]);
    expect(foldFlight([PLAN, FIRST, SECOND, undo, redo])).toEqual(before);
  });

  it('works whichever clock was ahead', () => {
    const early: FlightEvent = { ...undo, atMs: 90_000 };
    expect(foldFlight([PLAN, FIRST, SECOND, early]).readings[1]?.isTakenBack).toBe(true);
  });

  it('of each other cannot cancel both: the later one stands', () => {
    const one: FlightEvent = { id: 'C1', atMs: 130_000, kind: 'taken-back', eventId: 'C2' };
    const two: FlightEvent = { id: 'C2', atMs: 140_000, kind: 'taken-back', eventId: 'C1' };
    expect(foldFlight([PLAN, FIRST, one, two])).toEqual(foldFlight([PLAN, FIRST]));
  });

  it('of something unknown changes nothing', () => {
    const none: FlightEvent = { ...undo, eventId: 'NOT-THERE' };
    expect(foldFlight([PLAN, FIRST, none])).toEqual(foldFlight([PLAN, FIRST]));
  });

  it('of a check, an ident or a start undoes it', () => {
    const ident: FlightEvent = {
      id: 'B3',
      atMs: 50_000,
      kind: 'ident',
      legIndex: 0,
      outcome: 'confirmed',
      by: 'ear',
    };
    const back: FlightEvent = { id: 'C3', atMs: 150_000, kind: 'taken-back', eventId: 'B3' };
    expect(foldFlight([PLAN, ident]).legs[0]?.identConfirmedAtMs).toBe(50_000);
    expect(foldFlight([PLAN, ident, back]).legs).toEqual(foldFlight([PLAN]).legs);
  });
});

describe('correcting', () => {
  const wrong = reading('B2', 120, { headingDeg: 97, needleDots: 1, dmeNm: 9.7 });
  const correction: FlightEvent = {
    id: 'C1',
    atMs: 150_000,
    kind: 'reading-corrected',
    readingId: 'B2',
    headingDeg: 97,
    needleDots: -1,
    dmeNm: 9.7,
  };

  it('gives what the right reading at its own time would have given', () => {
    const corrected = foldFlight([PLAN, FIRST, wrong, correction]);
    const right = foldFlight([PLAN, FIRST, SECOND]);
    expect(corrected.estimate).toEqual(right.estimate);
    expect(corrected.advice).toEqual(right.advice);
    expect(corrected.readings[1]).toEqual({ ...right.readings[1], isCorrected: true });
  });

  it('is undone like anything else', () => {
    const undo: FlightEvent = { id: 'C2', atMs: 160_000, kind: 'taken-back', eventId: 'C1' };
    expect(foldFlight([PLAN, FIRST, wrong, correction, undo])).toEqual(
      foldFlight([PLAN, FIRST, wrong]),
    );
  });

  it('again replaces the correction before', () => {
    const again: FlightEvent = { ...correction, id: 'C2', atMs: 170_000, needleDots: 2 };
    const state = foldFlight([PLAN, FIRST, wrong, correction, again]);
    expect(state.readings[1]?.fields.needleDots).toBe(2);
  });
});

describe('what an undo takes back', () => {
  it('is the last thing that was done, in words', () => {
    expect(foldFlight([PLAN, FIRST]).undoable).toEqual({
      eventId: 'B1',
      what: 'reading heading 112, needle 1.5 left, flag TO, DME 11.2',
    });
  });

  it('moves back as things are taken back, and ends at the plan', () => {
    const undo = (id: string, atMs: number, eventId: string): FlightEvent => ({
      id,
      atMs,
      kind: 'taken-back',
      eventId,
    });
    const one = [PLAN, FIRST, SECOND, undo('C1', 130_000, 'B2')];
    expect(foldFlight(one).undoable?.eventId).toBe('B1');
    expect(foldFlight([...one, undo('C2', 140_000, 'B1')]).undoable).toBeNull();
  });
});

describe('the ident', () => {
  const ident = (outcome: 'confirmed' | 'doubted', atS: number, legIndex = 0): FlightEvent => ({
    id: `I${atS}`,
    atMs: atS * 1000,
    kind: 'ident',
    legIndex,
    outcome,
    by: 'tool',
  });
  const hasAlert = (events: readonly FlightEvent[]): boolean =>
    foldFlight(events).advice?.alerts.some((alert) => alert.kind === 'ident-not-confirmed') ??
    false;

  it('is missing from every answer until it is confirmed', () => {
    expect(hasAlert([PLAN, FIRST])).toBe(true);
    expect(foldFlight([PLAN, FIRST]).advice?.say).toMatch(/Ident not confirmed\.$/);
    expect(foldFlight([PLAN, FIRST, SECOND]).advice?.say).toMatch(/Ident not confirmed\.$/);
    expect(hasAlert([PLAN, ident('confirmed', 30), FIRST])).toBe(false);
  });

  it('changes the standing answer when it comes after it, and not the record of what was said', () => {
    const state = foldFlight([PLAN, FIRST, ident('confirmed', 90)]);
    expect(state.advice?.say).not.toContain('Ident not confirmed');
    expect(state.readings[0]?.advice?.say).toContain('Ident not confirmed');
  });

  it('in doubt again is missing again', () => {
    expect(hasAlert([PLAN, ident('confirmed', 30), FIRST, ident('doubted', 90)])).toBe(true);
  });

  it('is not confirmed by skipping it with a reason', () => {
    const skip: FlightEvent = {
      id: 'S1',
      atMs: 30_000,
      kind: 'check',
      legIndex: 0,
      item: 'identify',
      outcome: 'skipped',
      reason: 'no sound in the headset',
    };
    const state = foldFlight([PLAN, skip, FIRST]);
    expect(state.legs[0]?.checks.identify?.outcome).toBe('skipped');
    expect(hasAlert([PLAN, skip, FIRST])).toBe(true);
  });

  it('ticked without having been heard, or skipped without a reason, stays open', () => {
    for (const outcome of ['done', 'skipped'] as const) {
      const tick: FlightEvent = {
        id: 'S1',
        atMs: 30_000,
        kind: 'check',
        legIndex: 0,
        item: 'identify',
        outcome,
      };
      expect(foldFlight([PLAN, tick]).legs[0]?.checks.identify).toBeUndefined();
    }
  });

  it('holds for the next leg on the same station and not for another station', () => {
    const other = { ...PLAN, legs: [INBOUND, { ...OUTBOUND, station: XUN }] } as FlightEvent;
    expect(foldFlight([PLAN, ident('confirmed', 30)]).legs[1]?.identConfirmedAtMs).toBe(30_000);
    expect(foldFlight([other, ident('confirmed', 30)]).legs[1]?.identConfirmedAtMs).toBeNull();
  });
});

describe('the checklist in the log', () => {
  const check = (
    id: string,
    atS: number,
    outcome: 'done' | 'skipped' | 'reopened',
  ): FlightEvent => ({
    id,
    atMs: atS * 1000,
    kind: 'check',
    legIndex: 0,
    item: 'flags',
    outcome,
  });

  it('keeps what was done, and opens it again', () => {
    expect(foldFlight([PLAN, check('D1', 5, 'done')]).legs[0]?.checks.flags).toEqual({
      outcome: 'done',
      atMs: 5000,
    });
    const reopened = foldFlight([PLAN, check('D1', 5, 'done'), check('D2', 6, 'reopened')]);
    expect(reopened.legs[0]?.checks).toEqual({});
  });

  it('passes over a leg that is not in the plan', () => {
    const stray = { ...check('D1', 5, 'done'), legIndex: 7 } as FlightEvent;
    expect(foldFlight([PLAN, stray]).legs).toEqual(foldFlight([PLAN]).legs);
  });
});

describe('a plan that replaces another', () => {
  const replan = (changes: Partial<Extract<FlightEvent, { kind: 'plan' }>>): FlightEvent =>
    ({ ...PLAN, ...changes, id: 'P2', atMs: 90_000 });

  it('estimates the leg anew with what it puts right, and leaves given answers alone', () => {
    const faster = { ...AIRCRAFT, trueAirspeedKt: 120 };
    const state = foldFlight([PLAN, FIRST, replan({ aircraft: faster })]);
    const atOnce = foldFlight([{ ...PLAN, aircraft: faster }, FIRST]);
    expect(state.estimate).toEqual(atOnce.estimate);
    expect(state.readings[0]?.advice).toEqual(foldFlight([PLAN, FIRST]).advice);
  });

  it('keeps the progress of a leg that is still the same and drops that of one that is not', () => {
    const ident: FlightEvent = {
      id: 'I1',
      atMs: 30_000,
      kind: 'ident',
      legIndex: 0,
      outcome: 'confirmed',
      by: 'ear',
    };
    const same = foldFlight([
      PLAN,
      ident,
      FIRST,
      replan({ legs: [{ ...INBOUND, courseDeg: 115 }] }),
    ]);
    expect(same.legs).toHaveLength(1);
    expect(same.legs[0]?.identConfirmedAtMs).toBe(30_000);
    const other = foldFlight([
      PLAN,
      ident,
      FIRST,
      replan({ legs: [{ ...INBOUND, station: XUN }] }),
    ]);
    expect(other.legs[0]?.identConfirmedAtMs).toBeNull();
    expect(other.estimate?.readings).toEqual([]);
  });

  it('without legs leaves nothing to answer and loses nothing', () => {
    const state = foldFlight([PLAN, FIRST, replan({ legs: [] }), SECOND]);
    expect(state.readings).toHaveLength(2);
    expect(state.readings[1]?.problem[0]?.field).toBe('legs');
  });
});

describe('the log itself', () => {
  it('keeps an event of an unknown kind and folds as if it were not there', () => {
    const later = {
      id: 'Z1',
      atMs: 70_000,
      kind: 'from-a-later-version',
    } as unknown as FlightEvent;
    const fold = addEvents(emptyFold(), [PLAN, FIRST, later, SECOND]);
    expect(fold.events).toContain(later);
    expect(fold.state).toEqual(foldFlight([PLAN, FIRST, SECOND]));
  });

  it('gives the very same fold back for an event that it has', () => {
    const fold = addEvents(emptyFold(), [PLAN, FIRST]);
    expect(addEvent(fold, { ...FIRST })).toBe(fold);
  });

  it('keeps notes and the end of the flight', () => {
    const state = foldFlight([
      PLAN,
      { id: 'N1', atMs: 5, kind: 'note', text: 'rain ahead' },
      { id: 'F1', atMs: 9, kind: 'finished' },
    ]);
    expect(state.notes).toEqual([{ eventId: 'N1', atMs: 5, text: 'rain ahead' }]);
    expect(state.finishedAtMs).toBe(9);
  });

  it('steps on for a new event instead of folding anew', () => {
    const fold = addEvents(emptyFold(), [PLAN, FIRST]);
    const longer = addEvent(fold, SECOND);
    expect(longer.steps.slice(0, 2)).toEqual(fold.steps);
    expect(longer.steps[1]).toBe(fold.steps[1]);
  });
});
