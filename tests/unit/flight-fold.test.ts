import { describe, expect, it } from 'vitest';
import { addEvent, addEvents, emptyFlight, emptyFold, foldFlight } from '../../src/flight/fold.ts';
import type { FlightEvent } from '../../src/flight/event.ts';
import { FIRST, PLAN, SECOND, readingAt } from './ocean-flight.ts';
import { XUN } from './ocean-legs.ts';

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
  });

  it('with a needle and no flag means the last TO or FROM, since OFF has no needle', () => {
    const off = readingAt('B3', 180, { flag: 'off' });
    const needle = readingAt('B4', 185, { needleDots: 1 });
    const state = foldFlight([PLAN, FIRST, off, needle]);
    expect(state.readings.at(-1)?.reading).toMatchObject({ flag: 'to', needleDots: 1 });
  });

  it('keeps OFF for the distance that is said right after it, and no longer', () => {
    const off = readingAt('B3', 180, { flag: 'off' });
    const flagAt = (atS: number): string | undefined =>
      foldFlight([PLAN, FIRST, off, readingAt('B4', atS, { dmeNm: 7 })]).readings.at(-1)?.reading
        .flag;
    expect(flagAt(190)).toBe('off');
    expect(flagAt(240)).toBe('to');
  });

  it('with another course set holds it for itself only, since the answer tells to set it back', () => {
    const centred = readingAt('B3', 180, { courseSetDeg: 295, needleDots: 0, flag: 'from' });
    const state = foldFlight([PLAN, FIRST, centred, readingAt('B4', 200, { needleDots: 0 })]);
    expect(state.readings[1]?.reading).toMatchObject({ courseSetDeg: 295, flag: 'from' });
    expect(state.readings[1]?.advice?.say).toContain('Set course one one two again.');
    expect(state.readings[2]?.reading).toMatchObject({ courseSetDeg: 112, flag: 'to' });
  });

  it('takes the flag from the direction of the leg when it was never read', () => {
    expect(foldFlight([PLAN, readingAt('B1', 60, { dmeNm: 11 })]).readings[0]?.reading.flag).toBe(
      'to',
    );
  });

  it('of another station changes neither flag nor course of the leg', () => {
    const across = readingAt('B3', 180, {
      station: XUN,
      courseSetDeg: 310,
      flag: 'from',
      needleDots: 0,
    });
    const state = foldFlight([PLAN, FIRST, across, readingAt('B4', 200, { needleDots: 0 })]);
    expect(state.readings.at(-1)?.reading).toMatchObject({ flag: 'to', courseSetDeg: 112 });
    expect(state.legIndex).toBe(0);
  });

  it('that no panel can show stays in the log, counts for nothing and says why', () => {
    const wild = readingAt('B2', 120, { needleDots: -9 });
    const state = foldFlight([PLAN, FIRST, wild]);
    expect(state.readings[1]?.problem[0]?.field).toBe('reading.needleDots');
    expect(state.readings[1]?.advice).toBeNull();
    expect(state.estimate).toEqual(foldFlight([PLAN, FIRST]).estimate);
    expect(state.advice).toEqual(foldFlight([PLAN, FIRST]).advice);
  });

  it('with nothing in it counts for nothing', () => {
    const state = foldFlight([PLAN, FIRST, readingAt('B2', 120, {})]);
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
    const stamp = { id: 'B3', atMs: 50_000, legIndex: 0 };
    const done: readonly FlightEvent[] = [
      { ...stamp, kind: 'ident', outcome: 'confirmed', by: 'ear' },
      { ...stamp, kind: 'check', item: 'tune', outcome: 'done' },
      { ...stamp, kind: 'leg-started' },
    ];
    const back: FlightEvent = { id: 'C3', atMs: 150_000, kind: 'taken-back', eventId: 'B3' };
    for (const event of done) {
      expect(foldFlight([PLAN, event]).legs).not.toEqual(foldFlight([PLAN]).legs);
      expect(foldFlight([PLAN, event, back]).legs).toEqual(foldFlight([PLAN]).legs);
    }
  });
});

describe('correcting', () => {
  const wrong = readingAt('B2', 120, { headingDeg: 97, needleDots: 1, dmeNm: 9.7 });
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

describe('the log itself', () => {
  it('of nothing is a flight of which nothing is known', () => {
    expect(foldFlight([])).toEqual(emptyFlight);
    expect(emptyFlight).toMatchObject({ plan: null, advice: null, readings: [], undoable: null });
  });

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
