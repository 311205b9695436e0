import { describe, expect, test } from 'vitest';
import { decimalYear } from '../../src/earth/calendar-date.ts';
import { variationDegEast } from '../../src/earth/variation.ts';

const place = { latitudeDeg: 46.5, longitudeDeg: -21.25 };

function year(dateIso: string): number | null {
  const result = decimalYear(dateIso);
  return result.ok ? result.value : null;
}

describe('a day as decimal year', () => {
  test.each([
    ['2025-01-01', 2025],
    ['2025-12-31', 2025 + 364 / 365],
    ['2026-02-01', 2026 + 31 / 365],
    ['2028-02-29', 2028 + 59 / 366],
    ['2028-03-01', 2028 + 60 / 366],
    ['2028-12-31', 2028 + 365 / 366],
  ])('%s', (dateIso, expected) => {
    expect(year(dateIso)).toBeCloseTo(expected, 9);
  });

  test('agrees with the calendar of the platform on every day of 2028', () => {
    const start = Date.UTC(2028, 0, 1);
    for (let day = 0; day < 366; day++) {
      const dateIso = new Date(start + day * 86_400_000).toISOString().slice(0, 10);
      expect(year(dateIso), dateIso).toBeCloseTo(2028 + day / 366, 9);
    }
  });

  test.each(['2026-02-29', '2026-13-01', '2026-00-10', '2026-04-31', '2026-1-1', '25.11.2026', ''])(
    '"%s" is no day of the calendar',
    (dateIso) => {
      expect(decimalYear(dateIso)).toMatchObject({
        ok: false,
        problem: [{ field: 'dateIso', got: dateIso }],
      });
    },
  );
});

describe('variation', () => {
  test.each(['2024-12-31', '2030-01-01', '1999-06-01'])('%s is refused: not the model’s', (day) => {
    const result = variationDegEast(place, day);
    expect(result).toMatchObject({ ok: false, problem: [{ field: 'dateIso', got: day }] });
    expect(result.ok ? '' : result.problem[0]?.expected).toContain('2029-12-31');
  });

  test.each(['2025-01-01', '2029-12-31'])('%s is accepted', (day) => {
    expect(variationDegEast(place, day).ok).toBe(true);
  });

  test('does not come from the clock: the same day gives the same figure, another day another', () => {
    const first = variationDegEast(place, '2025-03-01');
    expect(variationDegEast(place, '2025-03-01')).toEqual(first);
    expect(variationDegEast(place, '2029-03-01')).not.toEqual(first);
  });

  test('a place off the globe is refused by name', () => {
    expect(variationDegEast({ latitudeDeg: NaN, longitudeDeg: 0 }, '2026-01-01')).toMatchObject({
      problem: [{ field: 'latitudeDeg' }],
    });
    expect(variationDegEast({ latitudeDeg: 0, longitudeDeg: 400 }, '2026-01-01')).toMatchObject({
      problem: [{ field: 'longitudeDeg' }],
    });
  });
});
