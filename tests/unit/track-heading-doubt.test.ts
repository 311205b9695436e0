import { describe, expect, it } from 'vitest';
import { advise } from '../../src/procedure/advise.ts';
import type { Advice } from '../../src/procedure/advice.ts';
import type { Reading } from '../../src/track/reading.ts';
import { AIRCRAFT, INBOUND } from './ocean-legs.ts';

const COURSE = INBOUND.courseDeg;

/** Straight in on the radial at 96 knots; `minute` 0 to 10 with 20 to 4 NM to go. */
function onRadial(minute: number, more: Partial<Reading> = {}): Reading {
  return {
    atMs: minute * 60_000,
    headingDeg: COURSE,
    courseSetDeg: COURSE,
    needleDots: 0,
    flag: 'to',
    dmeNm: Math.round((20 - 1.6 * minute) * 10) / 10,
    ...more,
  };
}

const TEN = Array.from({ length: 10 }, (_, minute) => onRadial(minute));

function answerTo(readings: readonly Reading[]): Advice {
  const dateIso = '2026-11-25';
  const answer = advise({
    leg: INBOUND,
    aircraft: AIRCRAFT,
    dateIso,
    readings,
    identConfirmed: true,
  });
  if (!answer.ok) throw new Error(JSON.stringify(answer.problem));
  return answer.value;
}

const asksOf = ({ alerts }: Advice): readonly string[] => alerts.map(({ ask }) => ask);

describe('a heading that was misheard', () => {
  it.each([12, 32, 92, 132, 212, 292])(
    '(%i on a straight flight on 112) is said back, asked for again, and moves nothing',
    (headingDeg) => {
      const answer = answerTo([...TEN, onRadial(10, { headingDeg })]);
      const figures = String(headingDeg).padStart(3, '0');
      expect(asksOf(answer)).toEqual([
        `I understood heading ${figures}. It does not fit: please read it again.`,
      ]);
      expect(answer.estimate.crossTrackNm).toBeCloseTo(0, 1);
      expect(answer.whichWay.turnDeg).toBeLessThan(5);
      expect(Math.abs(answer.whichWay.headingDeg - COURSE)).toBeLessThan(5);
    },
  );

  it('is said as a heading is said, with three figures', () => {
    const { say } = answerTo([...TEN, onRadial(10, { headingDeg: 12 })]);
    expect(say).toContain('I understood heading zero one two.');
  });

  it('is no reason to blame the readings after it', () => {
    const wrong = onRadial(10, { headingDeg: 12 });
    const later = [10.5, 11, 11.5].map((minute) => onRadial(minute));
    for (const count of [1, 2, 3]) {
      const answer = answerTo([...TEN, wrong, ...later.slice(0, count)]);
      expect(asksOf(answer).filter((ask) => ask.startsWith('I understood'))).toEqual([]);
      expect(answer.phase).not.toBe('lost');
      expect(answer.estimate.crossTrackNm).toBeCloseTo(0, 1);
    }
  });

  it('that is read a second time was meant', () => {
    const again = [10, 10.5].map((minute) => onRadial(minute, { headingDeg: 92 }));
    expect(asksOf(answerTo([...TEN, ...again])).join(' ')).not.toContain('heading 092');
  });

  it('is not suspected of a pilot who has turned and whose needle shows it', () => {
    // Forty degrees right for a minute at 96 knots: about a mile to the right, ten NM out.
    const turned = onRadial(6, { headingDeg: COURSE + 40, needleDots: -2.5, dmeNm: 10.7 });
    const answer = answerTo([...TEN.slice(0, 6), turned]);
    expect(asksOf(answer).join(' ')).not.toContain('understood heading');
    expect(answer.estimate.crossTrackNm).toBeGreaterThan(0.4);
  });
});
