import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Heard, HeardReading } from '../../src/speech/heard.ts';
import { spokenBearing, spokenDistance } from '../../src/speech/numbers.ts';
import { sayReading } from '../../src/speech/read-back.ts';
import { hear } from '../../src/speech/vocabulary.ts';

const SCALE = { dotsFullScale: 5 };
const MANNERS = [{ decimalWord: 'decimal' }, { decimalWord: 'point' }] as const;

const bearing = fc.integer({ min: 0, max: 359 });
const reading: fc.Arbitrary<HeardReading> = fc
  .record(
    {
      headingDeg: bearing,
      courseSetDeg: bearing,
      radialDeg: bearing,
      needleDots: fc
        .integer({ min: -10, max: 10 })
        .map((halves) => (halves === 0 ? 0 : halves / 2)),
      flag: fc.constantFrom('to', 'from', 'off'),
      dmeNm: fc.integer({ min: 0, max: 2000 }).map((tenths) => tenths / 10),
    },
    { requiredKeys: [] },
  )
  .filter((each) => Object.keys(each).length > 0);

function readingOf(heard: Heard): unknown {
  return heard.kind === 'heard' ? heard.reading : heard.reason;
}

describe('what is said is heard as the same reading', () => {
  test('for every bearing', () => {
    for (let deg = 0; deg < 360; deg += 1) {
      expect(readingOf(hear(`heading ${spokenBearing(deg)}`))).toEqual({ headingDeg: deg });
      expect(readingOf(hear(`radial ${String(deg).padStart(3, '0')}`))).toEqual({ radialDeg: deg });
    }
  });

  test('for every distance to 200 miles, with either word for the decimal', () => {
    for (let tenths = 0; tenths <= 2000; tenths += 1) {
      const dmeNm = tenths / 10;
      for (const manner of MANNERS) {
        expect(readingOf(hear(`distance ${spokenDistance(dmeNm, manner)}`))).toEqual({ dmeNm });
      }
      expect(readingOf(hear(`dme ${dmeNm}`))).toEqual({ dmeNm });
    }
  });

  test('for every half dot of every usual instrument', () => {
    for (const dotsFullScale of [1, 2, 2.5, 4, 5, 8, 10, 12]) {
      for (let halves = -2 * dotsFullScale; halves <= 2 * dotsFullScale; halves += 1) {
        const needleDots = halves === 0 ? 0 : halves / 2;
        const said = sayReading({ needleDots }, { dotsFullScale });
        expect(readingOf(hear(said, { dotsFullScale }))).toEqual({ needleDots });
      }
    }
  });

  test('for any reading read back in one sentence', () => {
    fc.assert(
      fc.property(reading, fc.constantFrom(...MANNERS), (given, manner) => {
        expect(readingOf(hear(sayReading(given, SCALE, manner), SCALE))).toEqual(given);
      }),
    );
  });

  test('also without commas, as a recogniser writes it', () => {
    fc.assert(
      fc.property(reading, (given) => {
        const said = sayReading(given, SCALE).replaceAll(',', '');
        expect(readingOf(hear(said, SCALE))).toEqual(given);
      }),
    );
  });

  test('and the text given back is heard as the same again', () => {
    fc.assert(
      fc.property(reading, (given) => {
        const first = hear(sayReading(given, SCALE), SCALE);
        const text = first.kind === 'heard' ? first.text : '';
        expect(hear(text, SCALE)).toEqual(first);
      }),
    );
  });
});

const WORDS = [
  ...'heading hdg course obs radial distance dme needle flag full scale centred left right l r'.split(
    ' ',
  ),
  ...'half a and to from off one two tree fower five six seven eight niner zero twenty ten'.split(
    ' ',
  ),
  ...'decimal point miles dots correction how far which way say again next why , . 7.2 125 360 ½'.split(
    ' ',
  ),
  ...'1½ 1/2 400 -1 7,2 NaN Infinity constructor __proto__ 1e9 0.5'.split(' '),
];

const PHRASES = [
  ...['heading one two five', 'hdg 360', 'radial 090', 'obs 112', 'course zero zero fife'],
  ...['distance one one decimal two', 'dme 7.2', 'distance seven', 'seven miles', 'dme 14'],
  ...[
    'needle one and a half left',
    '1.5 l',
    '½ right',
    'needle centred',
    'full left',
    'two dots right',
  ],
  ...[
    'flag to',
    'from',
    'flag shows off',
    'how far',
    'which way to turn',
    'correction',
    'why',
    ',',
  ],
  ...['heading 45', 'one two', 'left'],
];

/** Some of these, one after the other. */
function jumble(
  words: readonly string[],
  between: string,
  maxLength: number,
): fc.Arbitrary<string> {
  return fc.array(fc.constantFrom(...words), { maxLength }).map((each) => each.join(between));
}

const WHOLE_DEGREES = ['headingDeg', 'courseSetDeg', 'radialDeg'] as const;

function isInRange(given: HeardReading): boolean {
  const { needleDots = 0, dmeNm = 0, flag = 'to' } = given;
  return (
    WHOLE_DEGREES.every((name) => {
      const deg = given[name] ?? 0;
      return Number.isInteger(deg) && deg >= 0 && deg < 360;
    }) &&
    Math.abs(needleDots) <= SCALE.dotsFullScale &&
    Number.isInteger(needleDots * 2) &&
    dmeNm >= 0 &&
    dmeNm <= 200 &&
    ['to', 'from', 'off'].includes(flag)
  );
}

function holds(heard: Heard): boolean {
  if (heard.kind === 'rejected') return heard.reason.length > 0;
  const { reading: given, command } = heard;
  const hasContent = given !== undefined || command !== undefined;
  return hasContent && heard.text.length > 0 && isInRange(given ?? {});
}

describe('whatever is said, no reading is out of range and nothing breaks', () => {
  test('for words of the vocabulary in any order', () => {
    fc.assert(
      fc.property(jumble(WORDS, ' ', 14), (said) => {
        expect(holds(hear(said, SCALE))).toBe(true);
      }),
      { numRuns: 5000 },
    );
  });

  test('for words of the vocabulary run together', () => {
    fc.assert(
      fc.property(jumble(WORDS, '', 8), (said) => {
        expect(holds(hear(said, SCALE))).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  test('for whole phrases and odd words in any order', () => {
    fc.assert(
      fc.property(jumble([...PHRASES, ...WORDS.slice(0, 20)], ' ', 5), (said) => {
        expect(holds(hear(said, SCALE))).toBe(true);
      }),
      { numRuns: 5000 },
    );
  });

  test('for any text at all', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 400 }), (said) => {
        expect(holds(hear(said, SCALE))).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('what is understood', () => {
  test('is understood the same when its text is said again', () => {
    let understood = 0;
    fc.assert(
      fc.property(jumble(PHRASES, ' ', 4), (said) => {
        const heard = hear(said, SCALE);
        if (heard.kind === 'rejected') return;
        understood += 1;
        expect(hear(heard.text, SCALE)).toEqual(heard);
      }),
      { numRuns: 2000 },
    );
    expect(understood).toBeGreaterThan(200);
  });

  test('never depends on case, nor on more blanks between the words', () => {
    fc.assert(
      fc.property(jumble(PHRASES, ' ', 4), (said) => {
        expect(hear(`  ${said.toUpperCase().replaceAll(' ', '  ')} `, SCALE)).toEqual(
          hear(said, SCALE),
        );
      }),
    );
  });
});
