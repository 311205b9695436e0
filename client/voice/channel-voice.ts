import type { BundledVoice } from './bundled-voice.ts';

/** Invented: what a station may broadcast on its frequency, over its ident. */
const BROADCAST =
  'Open ocean information kilo. Wind two four zero degrees, one two knots. Visibility one zero kilometres. ' +
  'Cloud broken at two thousand five hundred feet. Temperature one one, dew point eight. ' +
  'Q N H one zero one three. Acknowledge kilo on first contact.';

const PAUSE_S = 2;

let kept: Promise<BundledVoice> | null = null;

/**
 * A voice that speaks on a station's channel, again and again: mono samples at `rateHz`, so many seconds of
 * them. It is the bundled voice, which is fetched once; rejects with a sentence where that cannot be.
 */
export async function channelVoice(
  lengthS: number,
  rateHz: number,
): Promise<Float32Array<ArrayBuffer>> {
  kept ??= import('./bundled-voice.ts').then(({ startBundledVoice }) =>
    startBundledVoice(() => undefined),
  );
  try {
    const { samples, rateHz: spokenHz } = await (await kept).sound(BROADCAST);
    return repeated(samples, spokenHz, lengthS, rateHz);
  } catch (reason) {
    kept = null;
    throw new Error('The voice for the channel could not be loaded: is the server gone?', {
      cause: reason,
    });
  }
}

function repeated(
  spoken: Float32Array,
  spokenHz: number,
  lengthS: number,
  rateHz: number,
): Float32Array<ArrayBuffer> {
  const all = new Float32Array(Math.ceil(lengthS * rateHz));
  const period = spoken.length + PAUSE_S * spokenHz;
  return all.map((_, index) => spoken[Math.floor((index * spokenHz) / rateHz) % period] ?? 0);
}
