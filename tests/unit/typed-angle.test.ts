import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readAngle, readNumber } from '../../src/earth/typed-angle.ts';

const valueOf = (text: string, side: Parameters<typeof readAngle>[1]): number => {
  const read = readAngle(text, side);
  if (!read.ok) throw new Error(read.problem);
  return read.value;
};

describe('an angle as a pilot types it', () => {
  // 46 30 is a half, 21 15 a quarter, 7 30 36 is 7.51: a reader can redo them.
  it.each([
    ['46.5 N', 'latitude', 46.5],
    ['N 46 30.0', 'latitude', 46.5],
    ['46°30′00″S', 'latitude', -46.5],
    ['46,5n', 'latitude', 46.5],
    ['21 15 00 W', 'longitude', -21.25],
    ['W021 15.0', 'longitude', -21.25],
    ['-21.25', 'longitude', -21.25],
    ['−21.25', 'longitude', -21.25],
    ['+7 30 36', 'declination', 7.51],
    ['7 W', 'declination', -7],
    ['0', 'declination', 0],
  ] as const)('%s (%s) is read', (text, side, expected) => {
    expect(valueOf(text, side)).toBeCloseTo(expected, 9);
  });

  it.each([
    ['21.25', 'longitude', 'E or W?'],
    ['46.5 E', 'latitude', 'N or S?'],
    ['91 N', 'latitude', 'At most 90'],
    ['181 W', 'longitude', 'At most 180'],
    ['46 60 N', 'latitude', 'Write it like'],
    ['46.5 30 N', 'latitude', 'Write it like'],
    ['1 2 3 4 N', 'latitude', 'Write it like'],
    ['north', 'latitude', 'Write it like'],
    ['', 'latitude', 'Write it like'],
  ] as const)('%s (%s) is refused with what would do', (text, side, words) => {
    const read = readAngle(text, side);
    expect(read.ok ? '' : read.problem).toContain(words);
  });

  it('comes back from degrees, minutes and seconds to half a hundredth of a second', () => {
    const whole = fc.record({
      degrees: fc.integer({ min: 0, max: 179 }),
      minutes: fc.integer({ min: 0, max: 59 }),
      hundredths: fc.integer({ min: 1, max: 5999 }),
      letter: fc.constantFrom('E', 'W'),
    });
    fc.assert(
      fc.property(whole, ({ degrees, minutes, hundredths, letter }) => {
        const seconds = (hundredths / 100).toFixed(2);
        const size = degrees + minutes / 60 + hundredths / 360_000;
        const expected = letter === 'E' ? size : -size;
        expect(valueOf(`${degrees} ${minutes} ${seconds} ${letter}`, 'longitude')).toBeCloseTo(
          expected,
          8,
        );
      }),
    );
  });
});

describe('a number as typed', () => {
  it.each([
    ['4500', 4500],
    ['4,500', 4500],
    ['113,35', 113.35],
    [' -7.5 ', -7.5],
    ['−7', -7],
    ['.5', 0.5],
  ])('%s is %f', (text, expected) => {
    expect(readNumber(text)).toBe(expected);
  });

  it.each(['', 'abc', '1.2.3', '4,5,6', '1e3', 'Infinity', '0x10'])('%s is none', (text) => {
    expect(readNumber(text)).toBeNaN();
  });
});
