import { describe, expect, test } from 'vitest';
import type { Heard } from '../../src/speech/heard.ts';
import { hear } from '../../src/speech/vocabulary.ts';

function readingOf(heard: Heard): unknown {
  return heard.kind === 'heard' ? heard.reading : heard.reason;
}

function reasonOf(sentence: string): string {
  const heard = hear(sentence);
  return heard.kind === 'rejected' ? heard.reason : `heard: ${heard.text}`;
}

describe('the phrases of the vocabulary as they are taught', () => {
  test.each([
    ['heading one two five', { headingDeg: 125 }],
    ['heading zero niner tree', { headingDeg: 93 }],
    ['heading fower fife', 'heading needs three figures, like zero four five'],
    ['radial three one zero', { radialDeg: 310 }],
    ['distance seven decimal two', { dmeNm: 7.2 }],
    ['distance one one decimal two', { dmeNm: 11.2 }],
    ['distance one zero fower point fife', { dmeNm: 104.5 }],
    ['needle one and a half left', { needleDots: -1.5 }],
    ['needle half right', { needleDots: 0.5 }],
    ['needle two right', { needleDots: 2 }],
    ['needle centred', { needleDots: 0 }],
    ['needle full scale left', { needleDots: -5 }],
    ['needle full scale right', { needleDots: 5 }],
    ['flag to', { flag: 'to' }],
    ['flag shows from', { flag: 'from' }],
    ['flag off', { flag: 'off' }],
    ['course one one two', { courseSetDeg: 112 }],
  ])('"%s" gives %o', (sentence, reading) => {
    expect(readingOf(hear(sentence))).toEqual(reading);
  });

  test.each([
    ['how far to go', 'how-far'],
    ['which way to turn', 'which-way'],
    ['say again', 'say-again'],
    ['next step', 'next-step'],
    ['ident confirmed', 'ident-confirmed'],
    ['correction', 'correction'],
    ['why', 'why'],
  ])('"%s" is the command %s and is repeated as it was said', (sentence, command) => {
    expect(hear(sentence)).toEqual({ kind: 'heard', text: sentence, command, confidence: 1 });
  });
});

describe('short forms, figures and other spellings', () => {
  test.each([
    ['hdg 125', { headingDeg: 125 }],
    ['HEADING 125.', { headingDeg: 125 }],
    ['heading: 125°', { headingDeg: 125 }],
    ['heading 1 2 5', { headingDeg: 125 }],
    ['heading one twenty five', { headingDeg: 125 }],
    ['heading oh four five degrees', { headingDeg: 45 }],
    ['obs 112', { courseSetDeg: 112 }],
    ['dme 14', { dmeNm: 14 }],
    ['7.2 miles', { dmeNm: 7.2 }],
    ['distance twenty one decimal five', { dmeNm: 21.5 }],
    ['distance .5', { dmeNm: 0.5 }],
    ['point five miles', { dmeNm: 0.5 }],
    ['one and a half left', { needleDots: -1.5 }],
    ['one and a half dots to the left', { needleDots: -1.5 }],
    ['1.5 l', { needleDots: -1.5 }],
    ['1.5l', { needleDots: -1.5 }],
    ['1½ left', { needleDots: -1.5 }],
    ['1 1/2 left', { needleDots: -1.5 }],
    ['1 and a half left', { needleDots: -1.5 }],
    ['½ r', { needleDots: 0.5 }],
    ['half a dot right', { needleDots: 0.5 }],
    ['one decimal five left', { needleDots: -1.5 }],
    ['needle left two', { needleDots: -2 }],
    ['needle centered', { needleDots: 0 }],
    ['centred', { needleDots: 0 }],
    ['needle 0', { needleDots: 0 }],
    ['full-scale left', { needleDots: -5 }],
    ['from', { flag: 'from' }],
  ])('"%s" gives %o', (sentence, reading) => {
    expect(readingOf(hear(sentence))).toEqual(reading);
  });

  test.each([
    ['how far?', 'how-far'],
    ['how far to', 'how-far'],
    ['which way', 'which-way'],
    ['next', 'next-step'],
    ['Why?', 'why'],
  ])('"%s" is the command %s', (sentence, command) => {
    expect(hear(sentence)).toMatchObject({ kind: 'heard', command });
  });

  test('the "to" of a question is not taken for the flag', () => {
    expect(hear('how far to')).not.toHaveProperty('reading');
    expect(hear('which way to')).not.toHaveProperty('reading');
  });

  test('north is 0 whether it is given as 360 or as 000', () => {
    expect(readingOf(hear('heading 360'))).toEqual({ headingDeg: 0 });
    expect(readingOf(hear('radial zero zero zero'))).toEqual({ radialDeg: 0 });
  });
});

describe('several readings in one sentence', () => {
  const all = { headingDeg: 125, needleDots: -1.5, dmeNm: 7.2 };
  test.each([
    ['heading 125, one and a half left, distance 7.2', all],
    ['heading one two five one and a half left distance seven decimal two', all],
    ['distance 7.2 and heading 125 and needle one and a half left', all],
    ['hdg 125 1.5 l dme 7.2 to', { ...all, flag: 'to' }],
    ['hdg125 1.5l dme7.2 to', { ...all, flag: 'to' }],
    ['hdg 125 ½ l', { headingDeg: 125, needleDots: -0.5 }],
    ['heading one twenty, five left', { headingDeg: 120, needleDots: -5 }],
    ['distance seven decimal two one left', { dmeNm: 7.2, needleDots: -1 }],
    ['distance one one, two left', { dmeNm: 11, needleDots: -2 }],
    ['heading 125 heading 125', { headingDeg: 125 }],
  ])('"%s" gives %o', (sentence, reading) => {
    expect(readingOf(hear(sentence))).toEqual(reading);
  });

  test('a reading and a question may share a sentence', () => {
    expect(hear('heading 125, how far to go')).toEqual({
      kind: 'heard',
      text: 'heading one two five, how far to go',
      reading: { headingDeg: 125 },
      command: 'how-far',
      confidence: 1,
    });
  });
});

describe('the text that is given back', () => {
  test.each([
    [
      'hdg 125 1.5 l dme 7.2 to',
      'heading one two five, needle one and a half left, distance seven decimal two, flag to',
    ],
    ['heading zero niner fower', 'heading zero nine four'],
    ['distance 14', 'distance one four decimal zero'],
    ['distance one one point two', 'distance one one decimal two'],
    ['hdg 360', 'heading three six zero'],
    ['½ r', 'needle half right'],
    ['full left', 'needle full scale left'],
    ['five left', 'needle five left'],
    ['flag shows off', 'flag off'],
    ['obs 112', 'course one one two'],
    ['needle centered', 'needle centred'],
  ])('"%s" is repeated as "%s"', (sentence, text) => {
    expect(hear(sentence)).toMatchObject({ kind: 'heard', text });
  });
});

describe('the instrument decides how far the needle goes', () => {
  test('full scale is the full deflection of the instrument', () => {
    expect(readingOf(hear('full scale left', { dotsFullScale: 2.5 }))).toEqual({
      needleDots: -2.5,
    });
  });

  test('more dots than full scale are refused with the full scale', () => {
    expect(hear('three left', { dotsFullScale: 2 })).toEqual({
      kind: 'rejected',
      reason: 'needle 3 dots is past full scale, which is 2',
    });
  });
});

describe('correction', () => {
  test('by itself it is the command that takes the last reading back', () => {
    expect(hear('Correction.')).toMatchObject({ text: 'correction', command: 'correction' });
  });

  test('with a reading after it the sentence is refused, so that none is taken back unseen', () => {
    expect(reasonOf('correction, heading 135')).toBe(
      'correction takes the last reading back; give the right one after that',
    );
  });

  test('within a sentence it replaces what was said before and takes nothing back', () => {
    expect(hear('heading 125, half left, correction, heading 135')).toEqual({
      kind: 'heard',
      text: 'heading one three five, needle half left',
      reading: { headingDeg: 135, needleDots: -0.5 },
      confidence: 1,
    });
  });

  test('of something that was not said it is refused', () => {
    expect(reasonOf('heading 125, correction, distance 7')).toBe(
      'correction: no distance was given before it',
    );
  });

  test('with nothing after it in the sentence it is refused', () => {
    const reason = 'correction: say the right reading after it';
    expect(reasonOf('heading 125 correction')).toBe(reason);
    expect(reasonOf('heading 125 correction heading 135 correction')).toBe(reason);
  });
});

describe('what is not understood is refused with the words that were not', () => {
  test.each([
    ['', 'nothing was said'],
    [' , ', 'nothing was said'],
    ['banana', '"banana" is not understood'],
    ['constructor 125', '"constructor" is not understood'],
    ['heading 125 banana', '"banana" is not understood'],
    ['heading 125 true', '"true" is not understood'],
    ['heading', 'heading needs three figures, like zero four five'],
    ['heading 45', 'heading needs three figures, 045 and not 45'],
    ['heading 1257', 'heading needs three figures, not 1257'],
    ['heading 125½ left', '"½" is not understood'],
    [
      'heading one twenty zero',
      '"zero" could be anything: heading, distance, or needle left or right?',
    ],
    ['heading 12 5', 'heading needs three figures, 012 and not 12'],
    ['heading one two', 'heading needs three figures, like zero four five'],
    ['heading one, two five', 'heading needs three figures, like zero four five'],
    ['heading 400', 'heading 400 is not on the compass'],
    ['radial tree six one', 'radial 361 is not on the compass'],
    ['course 112.5', 'course is read in whole degrees'],
    ['heading one two five decimal two', 'heading is read in whole degrees'],
    [
      'one two five',
      '"one two five" could be anything: heading, distance, or needle left or right?',
    ],
    [
      'heading one two five seven',
      '"seven" could be anything: heading, distance, or needle left or right?',
    ],
    ['distance', 'distance needs its figures, like one one decimal two'],
    ['distance seven decimal', 'distance needs its figures, like one one decimal two'],
    ['distance 7.25', 'distance is read to a tenth of a mile, not 7.25'],
    ['distance 250', 'distance 250 is farther than a DME shows (200 miles)'],
    ['dme 7 2', '"2" could be anything: heading, distance, or needle left or right?'],
    ['needle', 'needle: how many dots, and left or right?'],
    ['needle two', 'needle: left or right?'],
    ['one and a half', 'needle: left or right?'],
    ['full scale', 'needle: left or right?'],
    ['left', 'needle left: by how many dots?'],
    ['needle six left', 'needle 6 dots is past full scale, which is 5'],
    ['needle 1.3 left', 'needle is read in half dots, not 1.3'],
    ['needle -1.5', '"-": no signs; the needle is left or right'],
    ['flag', 'flag: to, from or off?'],
    ['how far to the station', '"station" is not understood'],
    ['how far, which way', 'one thing at a time: how far to go, or which way to turn?'],
  ])('"%s": %s', (sentence, reason) => {
    expect(reasonOf(sentence)).toBe(reason);
  });

  test.each([
    ['heading 125 heading 130', 'two headings: heading one two five, or heading one three zero?'],
    ['flag to flag from', 'two flags: flag to, or flag from?'],
    ['needle centred, half left', 'two needle readings: needle centred, or needle half left?'],
    [
      'distance 7.2 7.3 miles',
      'two distances: distance seven decimal two, or distance seven decimal three?',
    ],
  ])('two values for one instrument are refused: "%s"', (sentence, reason) => {
    expect(reasonOf(sentence)).toBe(reason);
  });

  test.each([
    [
      'distance one one two left',
      'distance needs its decimal when more follows, like one one decimal two',
    ],
    ['distance seven to', 'distance needs its decimal when more follows, like one one decimal two'],
    ['heading one twenty five left', 'needle left: by how many dots?'],
    ['heading 125,2 left', '"125,2": write tenths with a point, and a blank after a comma'],
    ['distance 7,2', '"7,2": write tenths with a point, and a blank after a comma'],
    ['distance 7.2.5 left', '"7.2.5": write tenths with a point, and a blank after a comma'],
    ['distance 7 ½ left', 'needle left: by how many dots?'],
  ])('what could be read in two ways is refused: "%s"', (sentence, reason) => {
    expect(reasonOf(sentence)).toBe(reason);
  });

  test('a sentence longer than any reading is refused', () => {
    expect(reasonOf('heading 125 '.repeat(30))).toBe('too long: one sentence at a time');
  });
});
