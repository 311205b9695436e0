import './quiet-tone.ts';
import { Gain } from 'tone/build/esm/core/context/Gain.js';
import { Context } from 'tone/build/esm/core/context/Context.js';
import { setContext } from 'tone/build/esm/core/context/GlobalContext.js';
import { Oscillator } from 'tone/build/esm/source/oscillator/Oscillator.js';
import type { Mark } from '../../src/ident/timeline.ts';

/** How long the tone takes to rise and to fall: keyed any harder it clicks. */
const EDGE_S = 0.005;

/** Between the order and the first mark: time for the output to take the whole schedule. */
const LEAD_S = 0.12;

/** A keyed tone, or samples, that are sounding. */
export interface KeyedTone {
  /** Seconds since its start, by the clock of the sound; negative before it. */
  nowS(): number;
  stop(): void;
}

let kept: Context | null = null;

/**
 * The one context of Tone for the page. Its own clock worker is not used (everything is scheduled
 * ahead), so that the page's security policy needs no exception for scripts made on the spot.
 */
async function output(): Promise<Context> {
  if (kept === null) {
    kept = new Context({ clockSource: 'timeout', lookAhead: 0, latencyHint: 'interactive' });
    // Else Tone makes a second one for itself, with that worker.
    setContext(kept);
  }
  await kept.resume();
  return kept;
}

/** Keys marks on a tone. All marks are on the schedule of the sound output before the first sounds. */
export async function keyTone(
  marks: readonly Mark[],
  toneHz: number,
  volume: number,
): Promise<KeyedTone> {
  const context = await output();
  const startS = context.immediate() + LEAD_S;
  const gain = new Gain({ context, gain: 0 }).connect(context.destination);
  const tone = new Oscillator({ context, frequency: toneHz, type: 'sine' }).connect(gain);
  for (const mark of marks) {
    const onS = startS + mark.startS;
    const offS = onS + mark.durationS;
    gain.gain.setValueAtTime(0, onS);
    gain.gain.linearRampToValueAtTime(volume, onS + EDGE_S);
    gain.gain.setValueAtTime(volume, offS - EDGE_S);
    gain.gain.linearRampToValueAtTime(0, offS);
  }
  tone.start(startS);
  return {
    nowS: () => context.immediate() - startS,
    stop: () => {
      const nowS = context.immediate();
      gain.gain.cancelScheduledValues(nowS);
      gain.gain.linearRampTo(0, EDGE_S, nowS);
      tone.stop(nowS + 2 * EDGE_S);
      // After the fall: an oscillator taken away at once clicks.
      setTimeout(() => {
        tone.dispose();
        gain.dispose();
      }, 200);
    },
  };
}

/** Sounds samples (mono, -1 to 1) as they are. */
export async function soundSamples(
  samples: Float32Array<ArrayBuffer>,
  sampleRateHz: number,
  volume: number,
): Promise<KeyedTone> {
  const context = await output();
  const startS = context.immediate() + LEAD_S;
  const gain = new Gain({ context, gain: volume }).connect(context.destination);
  const buffer = context.createBuffer(1, Math.max(1, samples.length), sampleRateHz);
  buffer.copyToChannel(samples, 0);
  const source = context.createBufferSource();
  source.buffer = buffer;
  source.connect(gain.input);
  source.start(startS);
  return {
    nowS: () => context.immediate() - startS,
    stop: () => {
      const nowS = context.immediate();
      gain.gain.linearRampTo(0, EDGE_S, nowS);
      source.stop(nowS + 2 * EDGE_S);
      setTimeout(() => {
        source.disconnect();
        gain.dispose();
      }, 200);
    },
  };
}
