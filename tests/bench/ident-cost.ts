// What listening for an ident costs, and how soon it is told: npx tsx tests/bench/ident-cost.ts [--clips 40] [--seed 1]
import { decodeIdent } from '../../src/ident/decode.ts';
import { frontEndStep, startFrontEnd } from '../../src/ident/front-end.ts';
import { heardSoFar, listenOn, startListening } from '../../src/ident/listening.ts';
import { endOf } from './ident-air-keying.ts';
import { makeClip } from './ident-air.ts';
import type { Clip } from './ident-air.ts';
import { inWords } from './ident-figure.ts';
import type { IdentFigure } from './ident-figure.ts';
import { clipSeed } from './ident-tally.ts';
import { median } from './report.ts';
import { option, quantile } from './track-options.ts';

/** Samples that an AudioWorklet gets at once. */
const QUANTUM = 128;
/** Sound that is posted to the worker at once, seconds. */
const BLOCK_S = 0.02;
const REPEATS = 3;

/** Seconds of processor time of this program: other programs on the machine do not count. */
function processorS(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

/** A stretch as in flight: three idents in cabin noise at 48 kHz, about half a minute. */
function stretch(seed: number): Clip {
  return makeClip({ seed, condition: 'cabin0', repeats: REPEATS, sampleRateHz: 48_000 });
}

/** How many times faster than the sound a recording is read. */
function batchFigure(clips: readonly Clip[]): IdentFigure {
  const ratios = clips.map((clip) => {
    const startS = processorS();
    decodeIdent(clip);
    const tookS = processorS() - startS;
    return clip.samples.length / clip.sampleRateHz / tookS;
  });
  const name = 'a recording is read faster than its sound by a factor of';
  return { name, value: median(ratios), unit: '', n: ratios.length, goalAtLeast: 40 };
}

/** Share of one core that the filter before the detector takes, in quanta as in an AudioWorklet. */
function frontEndFigure(clips: readonly Clip[]): IdentFigure {
  const shares = clips.map(({ samples, sampleRateHz }) => {
    const state = startFrontEnd(sampleRateHz);
    const output = new Float32Array(2 * QUANTUM);
    const startS = processorS();
    for (let at = 0; at + QUANTUM <= samples.length; at += QUANTUM) {
      frontEndStep(state, samples.subarray(at, at + QUANTUM), output);
    }
    return (processorS() - startS) / (samples.length / sampleRateHz);
  });
  const name = 'AudioWorklet at 48 kHz, share of a core';
  return { name, value: 100 * median(shares), unit: '%', n: shares.length, goal: 2 };
}

/** One clip heard live. Seconds of computing in all, and from the last mark to the verdict. */
interface Live {
  readonly computeS: number;
  readonly soundS: number;
  /** With the time that the last block took; null: not confirmed. */
  readonly verdictS: number | null;
}

function live(clip: Clip): Live {
  const frontEnd = startFrontEnd(clip.sampleRateHz);
  const listening = startListening({
    sampleRateHz: frontEnd.taps.outRateHz,
    expected: clip.ident,
  });
  const size = Math.round(BLOCK_S * clip.sampleRateHz);
  const output = new Float32Array(2 * size);
  let [computeS, verdictS]: [number, number | null] = [0, null];
  for (let at = 0; at < clip.samples.length; at += size) {
    const count = frontEndStep(frontEnd, clip.samples.subarray(at, at + size), output);
    const startS = processorS();
    listenOn(listening, output.slice(0, 2 * count));
    const { confirmation } = heardSoFar(listening);
    const tookS = processorS() - startS;
    computeS += tookS;
    if (confirmation?.verdict === 'confirmed') {
      verdictS ??= (at + size) / clip.sampleRateHz + tookS - endOf(clip.marks);
    }
  }
  return { computeS, soundS: clip.samples.length / clip.sampleRateHz, verdictS };
}

function workerFigure(clips: readonly Clip[]): IdentFigure {
  const shares = clips.map((clip) => {
    const { computeS, soundS } = live(clip);
    return computeS / soundS;
  });
  const name = 'worker, share of a core';
  return { name, value: 100 * median(shares), unit: '%', n: shares.length, goal: 5 };
}

/** From the end of the last mark of the only ident to the verdict, of those that were confirmed. */
function delayFigures(clips: number, seed: number): readonly IdentFigure[] {
  const delays = Array.from({ length: clips }, (_, index) => {
    const plan = { seed: clipSeed(seed, index), condition: 'cabin0', wpm: 7 };
    return live(makeClip(plan)).verdictS;
  });
  const known = delays.filter((each) => each !== null);
  const figure = { unit: 's', n: known.length };
  return [
    { ...figure, name: 'verdict after the last mark, median', value: median(known), goal: 1.2 },
    { ...figure, name: 'verdict after the last mark, 95 %', value: quantile(known, 0.95) },
    {
      name: 'confirmed live within the clip',
      value: (100 * known.length) / clips,
      unit: '%',
      n: clips,
    },
  ];
}

/** All figures of cost. */
export function identCostFigures(clips: number, seed: number): readonly IdentFigure[] {
  const stretches = Array.from({ length: 5 }, (_, index) => stretch(clipSeed(seed, index)));
  return [
    batchFigure(stretches),
    frontEndFigure(stretches),
    workerFigure(stretches),
    ...delayFigures(clips, seed),
  ];
}

if (process.argv[1]?.endsWith('ident-cost.ts') === true) {
  for (const each of identCostFigures(option('clips', 40), option('seed', 1))) {
    console.log(inWords(each));
  }
}
