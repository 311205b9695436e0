import { describe, expect, test } from 'vitest';
import { identWav, readIdentRequest } from '../../src/ident/ident-request.ts';
import { writeWav } from '../../src/ident/wav.ts';

function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

function tagAt(bytes: Uint8Array, at: number): string {
  return String.fromCharCode(...bytes.slice(at, at + 4));
}

describe('writing a WAV file (RIFF WAVE, PCM)', () => {
  const bytes = writeWav(Float32Array.of(0, 1, -1, 2, -2, Number.NaN, 0.5), 16_000);
  const view = viewOf(bytes);

  test('the header names one channel of 16-bit samples at its rate', () => {
    expect([0, 8, 12, 36].map((at) => tagAt(bytes, at))).toEqual(['RIFF', 'WAVE', 'fmt ', 'data']);
    expect(view.getUint16(20, true)).toBe(1);
    expect(view.getUint16(22, true)).toBe(1);
    expect(view.getUint32(24, true)).toBe(16_000);
    expect(view.getUint32(28, true)).toBe(32_000);
    expect(view.getUint16(32, true)).toBe(2);
    expect(view.getUint16(34, true)).toBe(16);
  });

  test('both lengths match the file', () => {
    expect(view.getUint32(4, true)).toBe(bytes.length - 8);
    expect(view.getUint32(40, true)).toBe(bytes.length - 44);
  });

  test('samples are clipped at full scale and a sample that is no number is silent', () => {
    const samples = Array.from({ length: 7 }, (_, index) => view.getInt16(44 + 2 * index, true));
    expect(samples).toEqual([0, 32_767, -32_767, 32_767, -32_767, 0, 16_384]);
  });

  test('no samples still make a whole file', () => {
    expect(writeWav(new Float32Array(0), 8000)).toHaveLength(44);
  });
});

describe('asking for an ident as sound', () => {
  test('what is left out is as usual for a VOR', () => {
    expect(readIdentRequest('qev', {})).toEqual({
      ok: true,
      value: {
        ident: 'QEV',
        wpm: 7,
        toneHz: 1020,
        repeats: 2,
        intervalS: 10,
        sampleRateHz: 16_000,
      },
    });
  });

  test('settings come as the text of an address', () => {
    const query = { wpm: '10', toneHz: '1350.5', repeats: '3', sampleRateHz: '48000' };
    expect(readIdentRequest('QEV', query)).toMatchObject({
      value: { wpm: 10, toneHz: 1350.5, repeats: 3, sampleRateHz: 48_000 },
    });
  });

  test.each([
    [{ wpm: '3' }, 'wpm', '3'],
    [{ wpm: '21' }, 'wpm', '21'],
    [{ wpm: 'fast' }, 'wpm', 'fast'],
    [{ wpm: '' }, 'wpm', ''],
    [{ wpm: ['7', '8'] }, 'wpm', '["7","8"]'],
    [{ wpm: '1e1' }, 'wpm', '1e1'],
    [{ toneHz: '299' }, 'toneHz', '299'],
    [{ toneHz: '3001' }, 'toneHz', '3001'],
    [{ toneHz: Number.NaN }, 'toneHz', 'null'],
    [{ repeats: '0' }, 'repeats', '0'],
    [{ repeats: '21' }, 'repeats', '21'],
    [{ repeats: '1.5' }, 'repeats', '1.5'],
    [{ repeats: '-1' }, 'repeats', '-1'],
    [{ sampleRateHz: '7999' }, 'sampleRateHz', '7999'],
    [{ sampleRateHz: '48001' }, 'sampleRateHz', '48001'],
    [{ sampleRateHz: '16000.5' }, 'sampleRateHz', '16000.5'],
    [{ intervalS: '31' }, 'intervalS', '31'],
    [{ volume: '1' }, 'volume', '1'],
    [{ constructor: '1' }, 'constructor', '1'],
  ])('%o is refused at its field', (query, field, got) => {
    expect(readIdentRequest('QEV', query)).toMatchObject({
      ok: false,
      problem: [{ field, got }],
    });
  });

  test.each(['', 'QEVAX', 'Q V', '..'])('"%s" is not an ident', (ident) => {
    expect(readIdentRequest(ident, {})).toMatchObject({ ok: false, problem: [{ field: 'ident' }] });
  });

  test('every problem is named, not only the first', () => {
    const result = readIdentRequest('', { wpm: '0', toneHz: '0', pitch: '0' });
    const fields = result.ok ? [] : result.problem.map((each) => each.field);
    expect(fields).toEqual(['ident', 'pitch', 'wpm', 'toneHz']);
  });

  test('a sound longer than four minutes is refused at its repeats', () => {
    expect(readIdentRequest('0000', { wpm: '4', repeats: '20' })).toMatchObject({
      ok: false,
      problem: [{ field: 'repeats', expected: 'a sound of at most 240 seconds in all' }],
    });
    expect(readIdentRequest('QEV', { repeats: '20' })).toMatchObject({ ok: true });
  });

  test('the sound has a word gap of quiet at both ends and all repeats between', () => {
    const request = readIdentRequest('E', { repeats: '3', intervalS: '4', sampleRateHz: '8000' });
    const bytes = request.ok ? identWav(request.value) : new Uint8Array();
    const unitS = 1.2 / 7;
    const lengthS = (bytes.length - 44) / 2 / 8000;
    expect(lengthS).toBeCloseTo(7 * unitS + 8 + unitS + 7 * unitS, 3);
    const quiet = bytes.slice(44, 44 + 2 * Math.floor((7 * unitS - 0.01) * 8000));
    expect(quiet.every((each) => each === 0)).toBe(true);
  });
});
