import { execFileSync } from 'node:child_process';
import { existsSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { chromium, type Browser } from 'playwright-core';
import { afterEach } from 'vitest';
import { writeWav } from '../../src/ident/wav.ts';
import { makeClip, type ClipPlan } from '../bench/ident-air.ts';
import { LAUNCH, ownDir } from './stage.ts';

/** Recordings and browsers that hear them, gone after the tests. */
export interface Sounds {
  /** A WAV file of a clip of the bench: its generator shares no code with the detector. */
  clip(name: string, plan: ClipPlan): string;
  /** A WAV file of samples. */
  wav(name: string, samples: Float32Array, sampleRateHz: number): string;
  /** The same sound in another format, written by sox. */
  convert(file: string, name: string, ...format: string[]): string;
  readonly dir: string;
  /** A Chromium whose microphone plays a WAV file once; null: it has none to allow. */
  browser(microphone: string | null, ...flags: string[]): Promise<Browser>;
}

/** Prepares sounds for the tests of a file. */
export function setSounds(): Sounds {
  const dir = ownDir();
  const browsers: Browser[] = [];
  afterEach(async () => {
    for (const browser of browsers.splice(0)) await browser.close();
  });
  const wav = (name: string, samples: Float32Array, sampleRateHz: number): string => {
    const file = path.join(dir, `${name}.wav`);
    if (!existsSync(file)) writeFileSync(file, writeWav(samples, sampleRateHz));
    return file;
  };
  return {
    dir,
    wav,
    clip: (name, plan) => {
      const { samples, sampleRateHz } = makeClip({ sampleRateHz: 48_000, ...plan });
      return wav(name, samples, sampleRateHz);
    },
    convert: (file, name, ...format) => {
      const to = path.join(dir, `${name}.wav`);
      execFileSync('sox', [file, ...format, to]);
      return to;
    },
    browser: async (microphone, ...flags) => {
      const fake =
        microphone === null
          ? []
          : [
              '--use-fake-device-for-media-stream',
              `--use-file-for-fake-audio-capture=${microphone}%noloop`,
            ];
      const browser = await chromium.launch({
        ...LAUNCH,
        args: [...LAUNCH.args, ...fake, ...flags],
      });
      browsers.push(browser);
      return browser;
    },
  };
}

/** The browser says yes when the page asks for the microphone. */
export const ALLOWED = '--use-fake-ui-for-media-stream';
