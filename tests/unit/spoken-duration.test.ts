import { describe, expect, test } from 'vitest';
import {
  roundedDurationS,
  spokenAngle,
  spokenAltitude,
  spokenDuration,
  spokenMiles,
  spokenSpeed,
} from '../../src/speech/numbers.ts';

describe('lengths of time (common practice, no source)', () => {
  test.each([
    [0, 'zero seconds'],
    [1, 'one second'],
    [45.4, 'four five seconds'],
    [59.6, 'one minute'],
    [75, 'one minute one five seconds'],
    [120, 'two minutes'],
    [402, 'six minutes four zero seconds'],
    [598, 'one zero minutes'],
    [1260, 'two one minutes'],
    [3600, 'one hour'],
    [4500, 'one hour one five minutes'],
    [-3, 'zero seconds'],
  ])('%f seconds is spoken %s', (durationS, spoken) => {
    expect(spokenDuration(durationS)).toBe(spoken);
  });

  test('the rounded time is the one that is spoken, for the page to show', () => {
    expect(roundedDurationS(402)).toBe(400);
    expect(roundedDurationS(59.4)).toBe(59);
    expect(roundedDurationS(629)).toBe(600);
    expect(roundedDurationS(631)).toBe(660);
  });
});

describe('units in the singular and the odd cases', () => {
  test('one of a unit is not spoken in the plural', () => {
    expect(spokenAngle(1)).toBe('one degree');
    expect(spokenMiles(1.2)).toBe('one mile');
    expect(spokenSpeed(1)).toBe('one knot');
  });

  test('a turn is spoken without its sign', () => {
    expect(spokenAngle(-15)).toBe('one five degrees');
  });

  test('an altitude not in whole hundreds is spoken figure by figure', () => {
    expect(spokenAltitude(410)).toBe('four one zero');
    expect(spokenAltitude(4550)).toBe('four five five zero');
  });

  test('an altitude below sea level begins with minus', () => {
    expect(spokenAltitude(-200)).toBe('minus two hundred');
    expect(spokenAltitude(-30)).toBe('minus three zero');
    expect(spokenAltitude(0)).toBe('zero');
  });
});
