import { describe, expect, it } from 'vitest';
import { get, serve } from './serve.ts';

const { port } = await serve();

describe('GET /api/ident/QEV.wav', () => {
  it('is a mono WAV of 16-bit samples at the rate asked for (RIFF WAVE header, format 1)', async () => {
    const { status, headers, bytes } = await get(port, '/api/ident/QEV.wav?sampleRateHz=8000');
    expect(status).toBe(200);
    expect(headers['content-type']).toBe('audio/wav');
    expect(bytes.toString('latin1', 0, 4)).toBe('RIFF');
    expect(bytes.readUInt32LE(4)).toBe(bytes.length - 8);
    expect(bytes.toString('latin1', 8, 16)).toBe('WAVEfmt ');
    expect(bytes.readUInt16LE(20)).toBe(1);
    expect(bytes.readUInt16LE(22)).toBe(1);
    expect(bytes.readUInt32LE(24)).toBe(8000);
    expect(bytes.readUInt16LE(34)).toBe(16);
    expect(bytes.readUInt32LE(40)).toBe(bytes.length - 44);
  });

  it('lasts as long as ITU-R M.1677-1 says: E once at 12 wpm is one dot of 0.1 s', async () => {
    const { bytes } = await get(port, '/api/ident/E.wav?wpm=12&repeats=1&sampleRateHz=8000');
    const samples = Array.from({ length: (bytes.length - 44) / 2 }, (_, index) =>
      Math.abs(bytes.readInt16LE(44 + 2 * index)),
    );
    const half = Math.max(...samples) / 2;
    const seconds =
      (samples.findLastIndex((each) => each > half) - samples.findIndex((each) => each > half)) /
      8000;
    // The edges rise within 12 ms about the true start and end.
    expect(seconds).toBeCloseTo(0.1, 2);
  });

  it('takes small letters as the same ident', async () => {
    const small = await get(port, '/api/ident/qev.wav?repeats=1');
    expect(small.bytes.equals((await get(port, '/api/ident/QEV.wav?repeats=1')).bytes)).toBe(true);
  });

  it.each([
    ['/api/ident/QEV.wav?wpm=0', 'wpm'],
    ['/api/ident/QEV.wav?wpm=fast', 'wpm'],
    ['/api/ident/QEV.wav?wpm=', 'wpm'],
    ['/api/ident/QEV.wav?wpm=7&wpm=8', 'wpm'],
    ['/api/ident/QEV.wav?toneHz=1e9', 'toneHz'],
    ['/api/ident/QEV.wav?repeats=1000000', 'repeats'],
    ['/api/ident/QEV.wav?repeats=1.5', 'repeats'],
    ['/api/ident/QEV.wav?sampleRateHz=1', 'sampleRateHz'],
    ['/api/ident/QEV.wav?speed=7', 'speed'],
    ['/api/ident/QEVQEV.wav', 'ident'],
    ['/api/ident/Q-V.wav', 'ident'],
  ])('%s is refused by its field %s', async (at, field) => {
    const { status, json } = await get(port, at);
    expect(status).toBe(422);
    expect(json).toMatchObject({ errors: [{ field }] });
  });

  it('a file of another kind is not there', async () => {
    expect((await get(port, '/api/ident/QEV.mp3')).status).toBe(404);
  });
});
