import { describe, expect, it } from 'vitest';
import { howFarReply, whichWayReply } from '../../client/parts/replies.ts';
import type { HowFar, WhichWay } from '../../src/track/guidance.ts';

const far: HowFar = {
  toGoNm: 11.1,
  toGoS: 402,
  groundSpeedKt: 99,
  sdNm: 0.2,
  sdS: 20,
  sdKt: 4,
  pastEndNm: null,
};
const way: WhichWay = {
  turn: 'left',
  turnDeg: 15,
  headingDeg: 97,
  holdS: 75,
  thenHeadingDeg: 108,
};
const decimal = { decimalWord: 'decimal' } as const;

describe('the reply to "how far to go"', () => {
  it('is a sentence with distance and time', () => {
    const words = howFarReply(far, decimal);
    expect(words).toMatch(/^One one decimal one miles to go, .*\.$/);
  });

  it('gives the time with its band, the groundspeed and the drift', () => {
    expect(howFarReply(far, decimal, -8.7)).toBe(
      'One one decimal one miles to go, six minutes four zero seconds, give or take two zero seconds. ' +
        'Groundspeed niner niner knots, drift niner degrees left.',
    );
    expect(howFarReply(far, decimal, null)).toMatch(/Groundspeed niner niner knots\.$/);
  });

  it('leaves out a time that is not known', () => {
    expect(howFarReply({ ...far, toGoS: null, groundSpeedKt: null }, decimal)).toBe(
      'One one decimal one miles to go.',
    );
  });

  it('says so when the distance is not known', () => {
    expect(howFarReply(null, decimal)).toBe('I cannot tell the distance yet.');
    expect(howFarReply({ ...far, toGoNm: null }, decimal)).toBe('I cannot tell the distance yet.');
  });
});

describe('the reply to "which way to turn"', () => {
  it('is the turn, with what is left of the hold', () => {
    const words = whichWayReply(way, 30, true);
    expect(words).toMatch(/^Turn left one five degrees, heading zero niner seven\. Hold /);
    expect(words).toContain('four five seconds');
  });

  it('is the second heading once the first has been held', () => {
    expect(whichWayReply(way, 80, true)).toBe('Hold heading one zero eight.');
  });

  it('names no turn while no heading has been read', () => {
    expect(whichWayReply({ ...way, holdS: 0 }, 0, false)).toBe('Fly heading zero niner seven.');
  });
});
