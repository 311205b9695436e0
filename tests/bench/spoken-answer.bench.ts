// From the tap on Give reading to the first sound of the answer and to its text, in Chromium on the built page,
// with the voice that comes with the tool, already loaded.
/* eslint-disable @typescript-eslint/no-deprecated -- an AudioWorklet would be a script that the page does not let in */
import type { Page } from 'playwright-core';
import { median, report } from './report.ts';
import { withServedPage } from './served-page.ts';

const READINGS = 5;
/** Without sound for this long the voice has ended, milliseconds. */
const QUIET_MS = 2000;

declare global {
  // Moments by the clock of the page, milliseconds; null: not yet since the tap.
  var stopwatch: { tapMs: number; soundMs: number | null; textMs: number | null; lastMs: number };
}

/**
 * Put into the page before anything of it. Sound: the first block of 256 samples (6 ms) that is not silent on its
 * way to the loudspeaker. Text: the first frame after the words of the answer have changed.
 */
function putStopwatch(): void {
  const watch = { tapMs: 0, soundMs: null, textMs: null, lastMs: 0 } as typeof stopwatch;
  globalThis.stopwatch = watch;
  const taps = new WeakMap<BaseAudioContext, ScriptProcessorNode>();
  // eslint-disable-next-line @typescript-eslint/unbound-method
  const connect = AudioNode.prototype.connect as (this: AudioNode, to: AudioNode) => AudioNode;
  const tapOf = (context: BaseAudioContext): ScriptProcessorNode => {
    const found = taps.get(context);
    if (found !== undefined) return found;
    const tap = context.createScriptProcessor(256, 1, 1);
    tap.onaudioprocess = ({ inputBuffer }) => {
      if (!inputBuffer.getChannelData(0).some((sample) => Math.abs(sample) > 0.01)) return;
      watch.lastMs = performance.now();
      watch.soundMs ??= watch.lastMs;
    };
    connect.call(tap, context.destination);
    taps.set(context, tap);
    return tap;
  };
  AudioNode.prototype.connect = function (this: AudioNode, to: AudioNode, ...rest: number[]) {
    if (to instanceof AudioDestinationNode) connect.call(this, tapOf(to.context));
    return Reflect.apply(connect, this, [to, ...rest]) as AudioNode;
  } as typeof AudioNode.prototype.connect;
  const words = (): string => document.querySelector('[aria-label="Answer"]')?.textContent ?? '';
  let wordsAtTap = '';
  const onTap = (event: Event): void => {
    if (!(event.target instanceof Element) || event.target.textContent !== 'Give reading') return;
    wordsAtTap = words();
    Object.assign(watch, { tapMs: event.timeStamp, soundMs: null, textMs: null });
    const look = (): void => {
      if (words() === wordsAtTap) requestAnimationFrame(look);
      else watch.textMs ??= performance.now();
    };
    requestAnimationFrame(look);
  };
  addEventListener('click', onTap, { capture: true });
}

async function quiet(page: Page): Promise<void> {
  await page.waitForFunction(
    (quietMs) => stopwatch.lastMs > 0 && performance.now() - stopwatch.lastMs > quietMs,
    QUIET_MS,
    { timeout: 120_000 },
  );
}

await withServedPage(async (browser, address) => {
  const page = await browser.newPage({ viewport: { width: 1180, height: 820 } });
  // The names that the runner of this file adds to functions mean nothing in the page.
  await page.addInitScript('globalThis.__name = (named) => named');
  await page.addInitScript(putStopwatch);
  await page.addInitScript(() => {
    const settings = { cautionsReadAtMs: 1, voiceName: 'bundled' };
    localStorage.setItem('spoken-radial.settings', JSON.stringify(settings));
  });
  await page.goto(address);
  await page.getByRole('button', { name: 'Fly the demo' }).click();
  // The first item of the checklist is read aloud: from then on the voice is there.
  await quiet(page);
  const soundsMs: number[] = [];
  const textsMs: number[] = [];
  for (let run = 0; run < READINGS; run += 1) {
    await page
      .getByRole('slider', { name: 'Needle' })
      .press(run % 2 === 0 ? 'ArrowLeft' : 'ArrowRight');
    await page.getByRole('button', { name: 'DME less' }).click();
    await page.getByRole('button', { name: 'Give reading' }).click();
    await page.waitForFunction(() => stopwatch.soundMs !== null && stopwatch.textMs !== null);
    const { tapMs, soundMs, textMs } = await page.evaluate(() => stopwatch);
    soundsMs.push((soundMs ?? NaN) - tapMs);
    textsMs.push((textMs ?? NaN) - tapMs);
    await quiet(page);
  }
  report({ name: 'time from tap to spoken answer', value: median(soundsMs), unit: 'ms' });
  report({ name: 'time from tap to the answer as text', value: median(textsMs), unit: 'ms' });
});
