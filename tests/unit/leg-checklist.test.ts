import { describe, expect, it } from 'vitest';
import { checkCounts, checklistFor, nextItem } from '../../src/procedure/checklist.ts';
import type { CheckContext, CheckLine, CheckProgress } from '../../src/procedure/checklist.ts';
import type { Leg } from '../../src/leg/leg.ts';
import type { Station } from '../../src/station/station.ts';
import { AIRCRAFT, DATE_ISO, INBOUND, OUTBOUND, XUN } from './ocean-legs.ts';

const CONTEXT: CheckContext = {
  aircraft: AIRCRAFT,
  dateIso: DATE_ISO,
  manner: { decimalWord: 'decimal' },
};
const FRESH: CheckProgress = { checks: {}, identConfirmedAtMs: null };
const IDENTIFIED: CheckProgress = { checks: {}, identConfirmedAtMs: 1000 };

const UNTUNED: Station = {
  ident: 'QEV',
  latitudeDeg: 46.5,
  longitudeDeg: -21.25,
  elevationFt: 410,
  declinationDegEast: -7,
  hasDme: true,
};

function lines(
  legs: readonly Leg[],
  legIndex: number,
  progress: readonly CheckProgress[],
  more: Partial<CheckContext> = {},
): readonly CheckLine[] {
  return checklistFor(legs, legIndex, progress, { ...CONTEXT, ...more });
}

function say(item: string, from: readonly CheckLine[]): string {
  return from.find((line) => line.item === item)?.say ?? '(not on the list)';
}

describe('the checklist of a leg', () => {
  it('reads tune, identify, flags, set course, turn, look out', () => {
    expect(lines([INBOUND], 0, [FRESH]).map((line) => line.item)).toEqual([
      'tune',
      'identify',
      'flags',
      'set-course',
      'turn',
      'look-out',
    ]);
  });

  it('speaks each item', () => {
    const list = lines([INBOUND], 0, [FRESH]);
    expect(say('tune', list)).toBe('Tune one one three decimal three five.');
    expect(say('identify', list)).toBe('Identify Quebec Echo Victor. Listen to the Morse.');
    expect(say('flags', list)).toContain('D M E');
    expect(say('set-course', list)).toBe(
      'Set course one one two on the O B S. Check the flag shows TO.',
    );
    expect(say('look-out', list)).toBe('Look out.');
  });

  it('shows the same in figures', () => {
    const list = lines([INBOUND], 0, [FRESH]);
    expect(list.map((line) => line.show).slice(0, 4)).toEqual([
      'Tune 113.35',
      'Identify QEV',
      'Flags: needle alive, DME showing',
      'OBS 112, flag TO',
    ]);
  });

  it('speaks no figures and no abbreviations', () => {
    for (const line of [...lines([INBOUND], 0, [FRESH]), ...lines([OUTBOUND], 0, [FRESH])]) {
      expect(line.say).not.toMatch(/[0-9]|\b(DME|OBS)\b|undefined|null/);
    }
  });

  it('says so when no frequency is known', () => {
    const list = lines([{ ...INBOUND, station: UNTUNED }], 0, [FRESH]);
    expect(say('tune', list)).toBe(
      'Tune Quebec Echo Victor. I have no frequency: take it from the chart.',
    );
  });

  it('does not ask for the DME of a station that has none', () => {
    const list = lines([{ ...INBOUND, station: XUN }], 0, [FRESH]);
    expect(say('flags', list)).toBe('Check the flags: needle alive.');
  });

  it('has no lines outside the plan', () => {
    expect(lines([INBOUND], 1, [FRESH])).toEqual([]);
    expect(lines([], 0, [])).toEqual([]);
  });
});

describe('the heading of the turn', () => {
  // Station declination 7 W, variation at the place about 7 W too: course 112 is about 105 true.
  it('is the course itself in no wind, and says that none is known', () => {
    const words = say('turn', lines([INBOUND], 0, [FRESH]));
    expect(words).toMatch(/^Turn onto heading one one [0-9a-z]+\. No wind known yet\.$/);
  });

  it('leans into a wind from the left', () => {
    // 15 kt square from the left at 95 kt: asin(15/95) = 9.1 degrees to the left.
    const still = headingShown(lines([INBOUND], 0, [FRESH]));
    const wind = { fromDegTrue: 15, speedKt: 15 };
    const lean = headingShown(lines([INBOUND], 0, [FRESH], { wind })) - still;
    // Both headings are shown to a whole degree, so their difference may be one off.
    expect(Math.abs(lean + 9.1)).toBeLessThanOrEqual(1);
  });

  it('names the side and size of the turn when the heading is known', () => {
    const words = say('turn', lines([INBOUND], 0, [FRESH], { headingNowDeg: 82 }));
    expect(words).toMatch(/^Turn right (two|three) [a-z]+ degrees, heading one one/);
  });

  it('is held when it is flown already', () => {
    const headingNowDeg = headingShown(lines([INBOUND], 0, [FRESH]));
    expect(say('turn', lines([INBOUND], 0, [FRESH], { headingNowDeg }))).toMatch(/^Hold heading/);
  });

  it('is not invented in a wind too strong for the airspeed, nor on a day outside the model', () => {
    const wind = { fromDegTrue: 15, speedKt: 120 };
    expect(say('turn', lines([INBOUND], 0, [FRESH], { wind }))).toContain('cannot tell');
    expect(say('turn', lines([INBOUND], 0, [FRESH], { dateIso: '1999-01-01' }))).toContain(
      'cannot tell',
    );
  });
});

function headingShown(list: readonly CheckLine[]): number {
  const show = list.find((line) => line.item === 'turn')?.show ?? '';
  return Number(show.replace('Heading ', ''));
}

describe('a leg on from the station just passed', () => {
  const passed: CheckProgress = { ...IDENTIFIED, passageAtMs: 5000 };

  it('begins with the course, since the station is tuned and identified', () => {
    const list = lines([INBOUND, OUTBOUND], 1, [passed, IDENTIFIED]);
    expect(list.map((line) => line.item)).toEqual(['set-course', 'turn', 'look-out']);
    expect(say('set-course', list)).toContain(
      'one four zero on the O B S. Check the flag shows FROM.',
    );
  });

  it('starts the clock with the turn unless the passage has started it', () => {
    const unpassed = lines([INBOUND, OUTBOUND], 1, [IDENTIFIED, IDENTIFIED]);
    expect(say('turn', unpassed)).toContain('Start the clock.');
    const list = lines([INBOUND, OUTBOUND], 1, [passed, IDENTIFIED]);
    expect(say('turn', list)).not.toContain('clock');
  });

  it('still identifies when nobody has, or when another station is next', () => {
    const unheard = lines([INBOUND, OUTBOUND], 1, [{ ...FRESH, passageAtMs: 5000 }, FRESH]);
    expect(unheard.map((line) => line.item)).toContain('identify');
    const other = lines([INBOUND, { ...INBOUND, station: XUN }], 1, [passed, FRESH]);
    expect(other.map((line) => line.item)).toContain('tune');
  });
});

describe('going through the list', () => {
  it('comes to the first item that is neither done nor skipped', () => {
    const checks = {
      tune: { outcome: 'done', atMs: 1 },
      flags: { outcome: 'skipped', atMs: 2, reason: 'no flag on this one' },
    } as const;
    const list = lines([INBOUND], 0, [{ checks, identConfirmedAtMs: 3 }]);
    expect(nextItem(list)?.item).toBe('set-course');
    expect(list.find((line) => line.item === 'flags')).toMatchObject({
      state: 'skipped',
      reason: 'no flag on this one',
    });
  });

  it('ends', () => {
    const done = { outcome: 'done', atMs: 1 } as const;
    const checks = { 'set-course': done, turn: done, 'look-out': done, tune: done, flags: done };
    expect(nextItem(lines([INBOUND], 0, [{ checks, identConfirmedAtMs: 3 }]))).toBeNull();
  });
});

describe('identify is a gate', () => {
  it('is not done by a tick, only by an ident that was heard', () => {
    const checks = { identify: { outcome: 'done', atMs: 1 } } as const;
    const ticked = lines([INBOUND], 0, [{ checks, identConfirmedAtMs: null }]);
    expect(ticked.find((line) => line.item === 'identify')?.state).toBe('open');
    const heard = lines([INBOUND], 0, [IDENTIFIED]);
    expect(heard.find((line) => line.item === 'identify')?.state).toBe('done');
  });

  it('marks the one item that needs the ident', () => {
    const needing = lines([INBOUND], 0, [FRESH]).filter((line) => line.needsIdent);
    expect(needing.map((line) => line.item)).toEqual(['identify']);
  });

  it('is skipped only with a reason', () => {
    expect(checkCounts('identify', 'skipped', undefined, false)).toBe(false);
    expect(checkCounts('identify', 'skipped', '  ', false)).toBe(false);
    expect(checkCounts('identify', 'skipped', 'ident off the air', false)).toBe(true);
    expect(checkCounts('identify', 'done', undefined, false)).toBe(false);
    expect(checkCounts('identify', 'done', undefined, true)).toBe(true);
  });

  it('leaves every other item free', () => {
    expect(checkCounts('flags', 'skipped', undefined, false)).toBe(true);
    expect(checkCounts('tune', 'done', undefined, false)).toBe(true);
    expect(checkCounts('identify', 'reopened', undefined, false)).toBe(true);
  });
});
