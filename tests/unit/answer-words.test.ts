import { describe, expect, it } from 'vitest';
import type { Alert, Phase } from '../../src/track/guidance.ts';
import { OUTBOUND, QEV, dated, guidance } from './ocean-legs.ts';
import { NOTHING_FAR, NO_WIND, STILL, adviceWith, say } from './said-answer.ts';

describe('the answer in words', () => {
  it('says turn, heading, how long, how far and the wind, in this order', () => {
    expect(say()).toBe(
      'Turn left one five degrees, heading zero niner seven. ' +
        'Hold one minute one five seconds, then heading one zero eight. ' +
        'One one decimal one miles to go, six minutes four zero seconds. ' +
        'Wind three four zero, one five knots, give or take six.',
    );
  });

  it('says point where the pilot says point', () => {
    expect(say({}, { manner: { decimalWord: 'point' } })).toContain('One one point one miles');
  });

  it('calls north three six zero, as heading and as wind', () => {
    const words = say({
      whichWay: { ...STILL, headingDeg: 359.8, thenHeadingDeg: 359.8 },
      seen: { ...guidance().seen, wind: { fromDegMag: 2, speedKt: 20, sdKt: 4 } },
    });
    expect(words).toContain('Hold heading three six zero.');
    expect(words).toContain('Wind three six zero, two zero knots');
    expect(words).not.toContain('zero zero zero');
  });

  it('has nothing turned for a degree or two', () => {
    const words = say({ whichWay: { ...STILL, turn: 'right', turnDeg: 2 } });
    expect(words).toMatch(/^Hold heading one one two\./);
  });

  it('puts the second heading into one sentence when the first is being held', () => {
    const words = say({ whichWay: { ...STILL, holdS: 45, thenHeadingDeg: 118 } });
    expect(words).toMatch(
      /^Hold heading one one two, four five seconds, then heading one one eight\./,
    );
  });

  it('says one mile for a mile', () => {
    expect(say({ howFar: { ...guidance().howFar, toGoNm: 1.02 } })).toContain('One mile to go');
  });

  it('leaves the time out where it is unknown', () => {
    const words = say({ howFar: { ...guidance().howFar, toGoS: null } });
    expect(words).toContain('One one decimal one miles to go.');
  });

  it('admits that it cannot tell the distance and the wind', () => {
    const words = say({ howFar: NOTHING_FAR, seen: NO_WIND });
    expect(words).toContain('I cannot tell the distance yet.');
    expect(words).toContain('I cannot tell the wind yet.');
  });

  it('says nothing of a distance to go where the leg has no end', () => {
    const endless = { station: QEV, direction: 'from', courseDeg: 140, altitudeFt: 4500 } as const;
    const words = say({ phase: 'outbound', howFar: NOTHING_FAR }, { leg: dated(endless) });
    expect(words).not.toMatch(/distance|to go/);
  });

  it('says how sure the distance is only when that matters', () => {
    expect(say()).not.toContain('Distance give');
    const unsure = say({ howFar: { ...guidance().howFar, sdNm: 1.2 } });
    expect(unsure).toContain('Distance give or take one decimal two miles.');
  });

  it('calls a wind light when it cannot have a direction', () => {
    const light = { fromDegMag: 100, speedKt: 4, sdKt: 6 };
    const words = say({ seen: { ...guidance().seen, wind: light } });
    expect(words).toContain('Wind light, give or take six knots.');
    expect(words).not.toContain('one zero zero');
  });

  it('ends with the reading that is needed most', () => {
    expect(say({}, { question: 'read-dme' })).toMatch(/Read the D M E\.$/);
  });
});

describe('the OBS', () => {
  it('goes back to the course after a reading with another one set', () => {
    expect(say({}, { courseSetDeg: 109 })).toMatch(/Set course one one two again\.$/);
    expect(say({}, { courseSetDeg: 113 })).not.toContain('again');
    expect(say({ phase: 'lost', whichWay: STILL }, { courseSetDeg: 300 })).not.toContain('again');
  });

  it('is turned for a test at the next reading, so the running flight does not hear of it twice', () => {
    const question = 'turn-obs-three-left';
    expect(say({}, { question })).toContain('Next reading with the O B S three degrees left.');
    expect(say({}, { question, previous: adviceWith({}) })).not.toContain('O B S');
  });
});

describe('what has not changed since the answer before', () => {
  it('is not said again of the wind', () => {
    expect(say({}, { previous: adviceWith({}) })).not.toContain('Wind');
  });

  it('is said again when it has changed', () => {
    const wind = { fromDegMag: 338, speedKt: 25, sdKt: 6 };
    const previous = adviceWith({ seen: { ...guidance().seen, wind } });
    expect(say({}, { previous })).toContain('Wind three four zero');
  });

  it('is said when the phase before did not speak of it', () => {
    expect(say({}, { previous: adviceWith({ phase: 'near-station' }) })).toContain('Wind');
  });

  it('never leaves out the heading or the distance', () => {
    const words = say({}, { previous: adviceWith({}) });
    expect(words).toContain('heading zero niner seven');
    expect(words).toContain('miles to go');
  });
});

describe('each phase in its own words', () => {
  it('near the station gives the seconds and takes the eyes off the needle', () => {
    const howFar = { ...guidance().howFar, toGoS: 40 };
    expect(say({ phase: 'near-station', whichWay: STILL, howFar })).toBe(
      'Station in four zero seconds. Hold heading one one two. Ignore the needle.',
    );
  });

  it('near the station without a known time invents none', () => {
    const words = say({ phase: 'near-station', whichWay: STILL, howFar: NOTHING_FAR });
    expect(words).toBe('Close to the station. Hold heading one one two. Ignore the needle.');
  });

  it('with the station behind on the way to it tells that, and no heading away from it', () => {
    const howFar = { ...guidance().howFar, toGoNm: 0, toGoS: 0, pastEndNm: 14.4 };
    const words = say({ reverseSensing: 'station-behind', whichWay: STILL, howFar });
    expect(words).toBe('The station is one four decimal four miles behind.');
  });

  it('overhead calls the passage', () => {
    expect(say({ phase: 'passage', whichWay: STILL }, { flag: 'from' })).toBe(
      'Station passage. Hold heading one one two.',
    );
  });

  it('arriving says what the DME will read there', () => {
    const words = say(
      { phase: 'arriving', howFar: { ...guidance().howFar, toGoNm: 1.8, toGoS: 65 } },
      { leg: dated(OUTBOUND) },
    );
    expect(words).toContain('One decimal eight miles to go, one minute five seconds.');
    expect(words).toContain('D M E will read one four decimal zero.');
    expect(words).not.toContain('Wind');
    const previous = { ...adviceWith({ phase: 'arriving' }), say: words };
    expect(say({ phase: 'arriving' }, { leg: dated(OUTBOUND), previous })).not.toContain('D M E');
  });

  it('lost asks one thing only', () => {
    const alerts: Alert[] = [{ kind: 'readings-disagree', ask: 'Please read the panel again.' }];
    expect(say({ phase: 'lost', whichWay: STILL }, { alerts })).not.toContain('again');
  });

  it('lost says so and asks for the one reading that finds the place', () => {
    expect(say({ phase: 'lost', whichWay: STILL, nextQuestion: 'centre-needle-from' })).toBe(
      'I have lost the picture. Hold heading one one two. ' +
        'Centre the needle with FROM and read the O B S.',
    );
  });

  it('before any reading gives the heading along the course and asks for the first', () => {
    const words = say(
      {
        phase: 'intercept',
        whichWay: STILL,
        howFar: NOTHING_FAR,
        seen: { ...NO_WIND, crossTrackNm: null },
      },
      { readingCount: 0, flag: null, courseSetDeg: null, question: 'centre-needle-from' },
    );
    expect(words).toBe(
      'Hold heading one one two. No reading yet. Centre the needle with FROM and read the O B S.',
    );
  });

  it('over the station with the flag off waits for FROM before it calls the passage', () => {
    const words = say({ phase: 'passage', whichWay: STILL }, { flag: 'off' });
    expect(words).toMatch(/^Over the station\. .*Say when the flag shows FROM\.$/);
    expect(words).not.toContain('passage');
  });

  it('calls the passage once', () => {
    const previous = { ...adviceWith({ phase: 'passage' }), say: 'Station passage. Hold heading.' };
    const words = say({ phase: 'passage', whichWay: STILL }, { flag: 'from', previous });
    expect(words).toMatch(/^Past the station\./);
    const howFar = { ...guidance().howFar, toGoNm: 0, pastEndNm: 1.4 };
    const later = { ...previous, say: words };
    expect(
      say({ phase: 'passage', whichWay: STILL, howFar }, { flag: 'from', previous: later }),
    ).toMatch(/^Past the station by one decimal four miles\./);
  });

  it('close to the station outbound does not take the time to the destination for that to it', () => {
    const words = say(
      { phase: 'near-station', whichWay: STILL },
      { leg: dated(OUTBOUND), courseSetDeg: 140 },
    );
    expect(words).toBe('Close to the station. Hold heading one one two. Ignore the needle.');
  });
});

describe('what a voice can read out', () => {
  const phases: readonly Phase[] = [
    'intercept',
    'track',
    'near-station',
    'passage',
    'outbound',
    'arriving',
    'lost',
  ];

  it.each(phases)(
    'has neither a figure nor an abbreviation that is read as a word in %s',
    (phase) => {
      const words = say({ phase }, { question: 'turn-obs-three-left', leg: dated(OUTBOUND) });
      expect(words).not.toMatch(/[0-9]/);
      expect(words).not.toMatch(/\b(DME|OBS|NM|kt|VOR)\b/);
      expect(words).not.toMatch(/undefined|null|NaN/);
    },
  );
});
