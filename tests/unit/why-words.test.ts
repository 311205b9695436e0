import { describe, expect, it } from 'vitest';
import { whyOf } from '../../src/procedure/why.ts';
import type { WhyContext } from '../../src/procedure/answer-context.ts';
import type { Alert, AlertKind, Guidance, Phase, ReverseCause } from '../../src/track/guidance.ts';
import type { Reading } from '../../src/track/reading.ts';
import { AIRCRAFT, INBOUND, QEV, XUN, dated, guidance } from './ocean-legs.ts';

const READ: Reading = { atMs: 0, courseSetDeg: 112, needleDots: -2, flag: 'to', dmeNm: 10 };

const ON_COURSE = {
  turn: 'none',
  turnDeg: 0,
  headingDeg: 55,
  holdS: 90,
  thenHeadingDeg: 55,
} as const;

function why(changes: Partial<Guidance> = {}, more: Partial<WhyContext> = {}): string {
  return whyOf({
    leg: dated(INBOUND),
    guidance: guidance(changes),
    alerts: [],
    readingCount: 3,
    flag: 'to',
    courseSetDeg: 112,
    question: null,
    manner: { decimalWord: 'decimal' },
    aircraft: AIRCRAFT,
    isHeadingRead: true,
    lineHeadingDeg: 108,
    reading: READ,
    ...more,
  });
}

describe('why', () => {
  it('tells the needle as a distance, and the wind as the reason for the heading', () => {
    // Four degrees at ten miles are 0.70 NM (1-in-60: 0.67).
    const seen = {
      crossTrackNm: 0.7,
      crossTrackSdNm: 0.1,
      driftDeg: 5,
      wind: { fromDegMag: 320, speedKt: 20, sdKt: 5 },
    };
    expect(why({ whichWay: ON_COURSE, seen }, { lineHeadingDeg: 57 })).toBe(
      'Two dots left is seven tenths of a mile at one zero miles. ' +
        'The wind is from the north-west, about two zero knots, ' +
        'so zero five five keeps you on it.',
    );
  });

  it('does not give a needle that was kept out as the reason', () => {
    // Four dots are eight degrees: 1.4 NM at ten miles, and not what is believed.
    const seen = { ...guidance().seen, crossTrackNm: 0.04, crossTrackSdNm: 0.1 };
    const reading = { ...READ, needleDots: 4 };
    expect(why({ seen }, { reading })).toContain('You are on the radial.');
    expect(why({ seen }, { reading })).not.toContain('dots right');
  });

  it('does not say of an intercept that it keeps you on the course you are not on', () => {
    const cut = { ...ON_COURSE, headingDeg: 80, thenHeadingDeg: 80 };
    for (const phase of ['intercept', 'track', 'outbound', 'arriving'] as const) {
      expect(why({ phase, whichWay: cut })).toContain('so zero eight zero takes you back to it.');
    }
    const unseen = { ...guidance().seen, wind: null };
    expect(why({ whichWay: cut, seen: unseen })).toContain(
      'I cannot tell the wind yet: zero eight zero takes you back to it.',
    );
  });

  it('promises to keep no course in a wind too strong for it', () => {
    const words = why({ whichWay: ON_COURSE, isWindTooStrong: true });
    expect(words).toContain('more than the airspeed can hold against');
    expect(words).not.toContain('keeps');
  });

  it('tells the causes of reverse sensing apart', () => {
    const alerts: Alert[] = [{ kind: 'reverse-sensing', ask: 'Check.' }];
    const of = (cause: ReverseCause): string => why({ reverseSensing: cause }, { alerts });
    expect(of('needle-backwards')).toMatch(/^The needle moves the wrong way/);
    expect(of('from-before-station')).toMatch(
      /^The flag shows FROM, though nothing shows the station/,
    );
    expect(of('station-behind')).toMatch(/the distance grows .* the station is behind you\./);
    expect(of('station-behind')).not.toContain('keeps you on it');
    expect(of('to-before-station')).toMatch(/^The flag shows TO, so the station is still ahead\./);
    expect(of('flag-against-place')).toMatch(/^The flag does not fit where you should be\./);
    expect(of('obs-reciprocal')).toMatch(
      /^The O B S is set to the other end of the course, so the needle works backwards\./,
    );
  });

  it('explains both headings of an intercept', () => {
    expect(why()).toContain(
      'so zero niner seven brings you back in one minute one five seconds ' +
        'and one zero eight keeps you on it.',
    );
  });

  it('says full scale without claiming to know how far off that is', () => {
    const words = why({}, { reading: { ...READ, needleDots: 5 } });
    expect(words).toContain('Full scale right is one zero degrees or more.');
    expect(words).not.toContain('tenths');
  });

  it('does not read a needle of another course or another station as the distance off', () => {
    for (const reading of [
      { ...READ, courseSetDeg: 109 },
      { ...READ, station: XUN },
      { ...READ, flag: 'off' as const },
    ]) {
      const words = why({}, { reading });
      expect(words).not.toContain('dots');
      expect(words).toContain('You are six tenths of a mile right of course.');
    }
  });

  it('admits an unknown wind', () => {
    const seen = { ...guidance().seen, wind: null };
    expect(why({ seen })).toContain('I cannot tell the wind yet');
  });

  it('near the station tells why the needle is to be ignored, and names the drift', () => {
    const words = why({ phase: 'near-station' });
    expect(words).toContain('the needle swings');
    expect(words).toContain('five degrees of drift to the right');
  });

  it('lost tells what the OBS reading will do', () => {
    expect(why({ phase: 'lost' })).toContain('shows the radial you are on');
  });

  it.each([
    'needle-not-moving',
    'wrong-station',
    'dme-not-moving',
    'dme-disagrees',
    'heading-indicator-disagrees',
    'reverse-sensing',
    'flag-off',
    'outside-reception',
    'readings-disagree',
    'ident-not-confirmed',
  ] as const)('begins with what was noticed for %s', (kind: AlertKind) => {
    const alerts: Alert[] = [{ kind, ask: 'Check.' }];
    const words = why({}, { alerts });
    expect(words.length).toBeGreaterThan(why().length);
    expect(words.endsWith(why())).toBe(true);
    expect(words).not.toMatch(/[0-9]|undefined|null/);
  });

  it.each([
    'intercept',
    'track',
    'outbound',
    'arriving',
    'passage',
    'near-station',
    'lost',
  ] as const)('has no figures and no abbreviations in %s', (phase: Phase) => {
    const words = why({ phase }, { leg: dated({ ...INBOUND, station: QEV }) });
    expect(words).not.toMatch(/[0-9]|\b(DME|OBS|NM)\b|undefined|null|NaN/);
  });

  it('before any reading does not speak of readings that do not fit', () => {
    const seen = { crossTrackNm: null, crossTrackSdNm: null, driftDeg: null, wind: null };
    const words = why({ phase: 'intercept', seen }, { readingCount: 0, reading: null });
    expect(words).toContain('Nothing has been read yet.');
  });
});
