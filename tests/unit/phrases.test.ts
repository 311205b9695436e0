import { describe, expect, it } from 'vitest';
import { milesWords, wayWords } from '../../src/procedure/phrases.ts';
import type { WhichWay } from '../../src/track/guidance.ts';
import { guidance } from './ocean-legs.ts';

const DECIMAL = { decimalWord: 'decimal' } as const;

describe('a distance in miles (common practice, no source)', () => {
  it.each([
    [0.12, 'a tenth of a mile'],
    [0.5, 'half a mile'],
    [0.9, 'niner tenths of a mile'],
    [0.96, 'one mile'],
    [1.04, 'one mile'],
    [1.1, 'one decimal one miles'],
    [99.94, 'niner niner decimal niner miles'],
    [99.96, 'one zero zero miles'],
    [150, 'one five zero miles'],
  ])('of %f is spoken "%s"', (nm, words) => {
    expect(milesWords(nm, DECIMAL)).toBe(words);
  });
});

describe('the heading to fly', () => {
  const way: WhichWay = { ...guidance().whichWay, thenHeadingDeg: 97 };

  it('has no turn to it while no heading has been read', () => {
    expect(wayWords(way, false)).toBe('Fly heading zero niner seven.');
    expect(wayWords({ ...way, turn: 'none', turnDeg: 0 }, false)).toMatch(/^Fly heading/);
  });

  it('is held until the next reading where the second one is more than three minutes away', () => {
    const far = { ...guidance().whichWay, holdS: 410 };
    expect(wayWords(far)).toBe(
      'Turn left one five degrees, heading zero niner seven. Hold it until the next reading.',
    );
    const straight = { ...far, turn: 'none', turnDeg: 0 } as const;
    expect(wayWords(straight)).toBe('Hold heading zero niner seven until the next reading.');
    expect(wayWords({ ...far, holdS: 180 })).toContain('Hold three minutes, then heading');
  });

  it('keeps its second heading then', () => {
    expect(wayWords(guidance().whichWay, false)).toBe(
      'Fly heading zero niner seven, one minute one five seconds, then heading one zero eight.',
    );
  });
});
