import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSettings } from '../../client/settings/read-settings.ts';
import { defaultSettings, type Settings } from '../../client/settings/settings-record.ts';

const read = (part: Readonly<Record<string, unknown>>): ReturnType<typeof readSettings> =>
  readSettings(JSON.stringify(part), defaultSettings);

describe('settings stored on the device', () => {
  it('come back as they were stored', () => {
    const stored: Settings = {
      ...defaultSettings,
      aircraft: [
        {
          name: 'Two seats',
          trueAirspeedKt: 84,
          degreesPerDot: 2.5,
          dotsFullScale: 4,
          airspeedFrom: { calibratedAirspeedKt: 80, pressureAltitudeFt: 3_000 },
        },
      ],
      chosenAircraft: 'Two seats',
      decimalWord: 'point',
      voiceName: 'bundled',
      cautionsReadAtMs: 1_795_600_000_000,
    };
    expect(readSettings(JSON.stringify(stored), defaultSettings)).toEqual({
      ok: true,
      value: stored,
    });
  });

  it('take the default for a setting that an older edition did not have', () => {
    expect(read({ rate: 0.8 })).toEqual({ ok: true, value: { ...defaultSettings, rate: 0.8 } });
  });

  it('leave behind a setting that is not known any more', () => {
    expect(read({ colour: 'green' })).toEqual({ ok: true, value: defaultSettings });
  });

  it.each<[string, Readonly<Record<string, unknown>>]>([
    ['rate', { rate: 9 }],
    ['rate', { rate: '1' }],
    ['volume', { volume: -0.1 }],
    ['palette', { palette: 'dusk' }],
    ['decimalWord', { decimalWord: 'dot' }],
    ['aircraft', { aircraft: [] }],
    ['aircraft', { aircraft: [{ name: 'No speed', degreesPerDot: 2, dotsFullScale: 5 }] }],
    ['aircraft', { aircraft: [{ ...defaultSettings.aircraft[0], trueAirspeedKt: -95 }] }],
    [
      'aircraft',
      {
        aircraft: [{ ...defaultSettings.aircraft[0], airspeedFrom: { calibratedAirspeedKt: 90 } }],
      },
    ],
    ['identWpm', { identWpm: null }],
    ['identAgainMin', { identAgainMin: -5 }],
    ['cautionsReadAtMs', { cautionsReadAtMs: 'yesterday' }],
  ])('are refused with the name of what is impossible: %s', (name, part) => {
    const answer = read(part);
    expect(answer.ok).toBe(false);
    if (!answer.ok) expect(answer.problem).toContain(`"${name}"`);
  });

  it('never stop the page, whatever text is stored', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        const answer = readSettings(text, defaultSettings);
        expect(answer.ok ? answer.value.aircraft.length : answer.problem.length).toBeGreaterThan(0);
      }),
    );
  });
});
