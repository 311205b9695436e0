import { describe, expect, it } from 'vitest';
import type { Advice } from '../../src/procedure/advice.ts';
import type { Alert, AlertKind } from '../../src/track/guidance.ts';
import { OUTBOUND, dated, guidance } from './ocean-legs.ts';
import { NOTHING_FAR, NO_WIND, STILL, adviceWith, say } from './said-answer.ts';

describe('at the end', () => {
  it('neither counts zero miles nor zero seconds', () => {
    const howFar = { ...guidance().howFar, toGoNm: 0, toGoS: 0 };
    expect(say({ phase: 'arriving', howFar }, { leg: dated(OUTBOUND) })).toContain(
      'You are there.',
    );
    expect(say({ phase: 'near-station', howFar })).toMatch(/^Station now\./);
  });
});

describe('past the end', () => {
  const past = (pastEndNm: number): string =>
    say(
      { phase: 'arriving', howFar: { ...guidance().howFar, toGoNm: 0, toGoS: 0, pastEndNm } },
      { leg: dated(OUTBOUND) },
    );

  it('says how long ago the end was passed, and no DME that has gone by', () => {
    expect(past(2.2)).toContain('You passed it two decimal two miles ago.');
    expect(past(0.4)).toContain('You passed it four tenths of a mile ago.');
    expect(past(2.2)).not.toMatch(/there|D M E/);
  });

  it('is there while it is only a moment past', () => {
    expect(past(0.2)).toContain('You are there.');
    expect(past(0.2)).not.toContain('D M E');
  });
});

describe('OFF', () => {
  const FLAG_OFF: Alert = { kind: 'flag-off', ask: 'The flag shows OFF: check the frequency.' };

  it('with an unknown distance may be the cone or a lost signal, and both are said', () => {
    for (const phase of ['track', 'near-station', 'passage'] as const) {
      expect(
        say(
          { phase, whichWay: STILL, howFar: NOTHING_FAR },
          { flag: 'off', alerts: [FLAG_OFF], readingCount: 2 },
        ),
      ).toBe(
        'Flag OFF: over the station, or the signal is lost. Hold heading one one two. Check the ident.',
      );
    }
  });

  it('with a lost picture asks for nothing that a dead needle cannot show', () => {
    const lost = { phase: 'lost', whichWay: STILL, nextQuestion: 'centre-needle-from' } as const;
    expect(say(lost, { flag: 'off' })).toBe(
      'I have lost the picture. Hold heading one one two. Check frequency, ident and altitude.',
    );
    expect(say(lost, { flag: 'off', alerts: [FLAG_OFF] })).toBe(
      'The flag shows OFF: check the frequency. ' +
        'I have lost the picture. Hold heading one one two.',
    );
  });
});

describe('a heading that nobody has read', () => {
  it('leaves the size of the turn unsaid', () => {
    expect(say({}, { isHeadingRead: false, readingCount: 1 })).toMatch(
      /^Fly heading zero niner seven, one minute/,
    );
  });
});

describe('a wind too strong for the airspeed', () => {
  it('is said instead of a distance, and no heading is told to keep the course', () => {
    const words = say({ howFar: NOTHING_FAR, whichWay: STILL, isWindTooStrong: true });
    expect(words).toMatch(
      /^Hold heading one one two\. The wind is too strong to hold this course at niner five knots\./,
    );
    expect(words).not.toContain('distance');
  });
});

describe('a wind that nobody has seen', () => {
  const unseen = (readingCount: number, previous?: Advice): string =>
    say({ seen: NO_WIND }, { readingCount, ...(previous === undefined ? {} : { previous }) });
  const UNSEEN_BEFORE = adviceWith({ seen: NO_WIND });

  it('is missed from the third reading on, since nobody expects one before', () => {
    expect(unseen(1)).not.toContain('wind');
    expect(unseen(2, UNSEEN_BEFORE)).not.toContain('wind');
    expect(unseen(3)).toContain('I cannot tell the wind yet.');
  });

  it('is missed once', () => {
    expect(unseen(3, UNSEEN_BEFORE)).toContain('I cannot tell the wind yet.');
    expect(unseen(4, UNSEEN_BEFORE)).not.toContain('wind');
    expect(unseen(7, adviceWith({}))).toContain('I cannot tell the wind yet.');
  });
});

describe('alerts in the answer', () => {
  const alert = (kind: AlertKind): Alert => ({ kind, ask: `Check for ${kind}.` });

  it.each([
    'flag-off',
    'reverse-sensing',
    'wrong-station',
    'readings-disagree',
    'needle-not-moving',
    'dme-not-moving',
    'dme-disagrees',
    'heading-indicator-disagrees',
  ] as const)('puts the check for %s before the turn', (kind) => {
    expect(say({}, { alerts: [alert(kind)] })).toMatch(
      new RegExp(`^Check for ${kind}\\. Turn left`),
    );
  });

  it('puts the check for outside-reception after the turn, and says it once', () => {
    const alerts = [alert('outside-reception')];
    expect(say({}, { alerts })).toMatch(/^Turn left.*Check for outside-reception/);
    expect(say({}, { alerts, previous: { ...adviceWith({}), alerts } })).not.toContain('Check');
  });

  it('speaks a question that is written with figures and abbreviations', () => {
    const ask =
      'I understood needle 1.5 left, distance 1.9. Turn the OBS 10 degrees; check the DME.';
    const alerts: Alert[] = [{ kind: 'readings-disagree', ask }];
    expect(say({}, { alerts })).toMatch(
      /^I understood needle one and a half dots left, distance one decimal niner\. Turn the O B S one zero degrees; check the D M E\. Turn left/,
    );
  });

  it('asks one thing at a time', () => {
    const words = say({}, { question: 'read-dme', alerts: [alert('wrong-station')] });
    expect(words).not.toContain('Read the D M E');
  });

  it('says ident not confirmed last, also when nothing else has changed', () => {
    const alerts = [alert('ident-not-confirmed')];
    expect(say({}, { alerts, previous: adviceWith({}) })).toMatch(/Ident not confirmed\.$/);
  });
});
