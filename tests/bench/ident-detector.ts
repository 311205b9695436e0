// How well idents are heard: npx tsx tests/bench/ident-detector.ts --clips 500 --seed 7001 [--line awgn-16] [--more] [--json]
import { boundCurve, gapDb } from './ident-bound.ts';
import { DOUBTFUL_LINES, EMPTY_CONDITIONS, MORE_LINES, STATION_LINES } from './ident-lines.ts';
import { inWords } from './ident-figure.ts';
import type { IdentFigure } from './ident-figure.ts';
import type { Line } from './ident-lines.ts';
import { whyNoVoice } from './ident-air-voice.ts';
import { tallyEmpty, tallyStation } from './ident-tally.ts';
import type { Tally } from './ident-tally.ts';
import { isAsked, option } from './track-options.ts';

const BOUND_CLIPS = 2000;

/** Says loudly why a condition cannot be made here; true when it can. */
export function canMake(condition: string): boolean {
  const hasVoice = /^(voice|all0|none_speech|none_mix)/.test(condition);
  const why = hasVoice ? whyNoVoice() : null;
  if (why !== null) console.error(`NOT RUN: ${condition}, because ${why}`);
  return why === null;
}

/** The figures of a line with a station. `print` gets what there is to say besides. */
export function stationFigures(
  line: Line,
  clips: number,
  seed: number,
  print: (text: string) => void,
): readonly IdentFigure[] {
  const tally = tallyStation(line, clips, seed);
  for (const each of tally.remarks) print(`  ${each}`);
  const { goals } = line;
  const part = (what: string, count: number, of: number): IdentFigure => ({
    name: `${line.name}: ${what}`,
    value: (100 * count) / of,
    unit: '%',
    n: of,
  });
  const atLeast = (goal: number | undefined): object =>
    goal === undefined ? {} : { goalAtLeast: goal };
  const atMost = (goal: number | undefined): object => (goal === undefined ? {} : { goal });
  const false_ = tally.near.confirmed + tally.wrong.confirmed;
  return [
    { ...part('whole idents right', tally.whole, clips), ...atLeast(goals.whole) },
    ...boundFigures(line, tally),
    part('a wrong ident told', tally.saidWrong, clips),
    part('no ident told', tally.saidNothing, clips),
    { ...part('true ident confirmed', tally.true.confirmed, clips), ...atLeast(goals.confirmed) },
    {
      ...part('true ident called different', tally.true.different, clips),
      ...atMost(goals.rejected),
    },
    { ...part('near or wrong ident confirmed', false_, 2 * clips), ...atMost(0.033) },
    part('near ident called different', tally.near.different, clips),
    part('wrong ident called different', tally.wrong.different, clips),
    { ...part('worst possible wrong ident confirmed', tally.worstCase, clips), ...atMost(0.5) },
  ];
}

/** For white noise: the bound at this noise, and how much more signal was needed for the same share. */
function boundFigures(line: Line, tally: Tally): readonly IdentFigure[] {
  const db = /^awgn(-\d+)$/.exec(line.condition)?.[1];
  if (db === undefined) return [];
  const curve = boundCurve(line.repeats, BOUND_CLIPS, 1);
  const snr3kDb = Number(db);
  const bound = curve.find((each) => each.snr3kDb === snr3kDb);
  const gap = gapDb(curve, snr3kDb, tally.whole / tally.clips);
  const figure = { n: BOUND_CLIPS };
  return [
    { ...figure, name: `${line.name}: bound`, value: 100 * (bound?.accuracy ?? NaN), unit: '%' },
    ...(gap === null
      ? []
      : [{ ...figure, name: `${line.name}: gap to the bound`, value: gap, unit: 'dB', goal: 2 }]),
  ];
}

/** The figures of air without a station. */
export function emptyFigures(
  condition: string,
  clips: number,
  seed: number,
  trials: number,
  print: (text: string) => void,
): readonly IdentFigure[] {
  const tally = tallyEmpty(condition, clips, seed, trials);
  for (const each of tally.remarks) print(`  ${each}`);
  const asked = tally.wrong.asked;
  return [
    {
      name: `${condition}: random ident confirmed`,
      value: tally.wrong.confirmed,
      unit: `of ${asked}`,
      n: asked,
      goal: 0,
    },
    {
      name: `${condition}: random ident called different`,
      value: (100 * tally.wrong.different) / asked,
      unit: '%',
      n: asked,
      goal: 2,
    },
    {
      name: `${condition}: clips in which any ident of three letters is confirmed`,
      value: (100 * tally.worstCase) / clips,
      unit: '%',
      n: clips,
      goal: 0.3,
    },
    {
      name: `${condition}: clips in which an ident is told`,
      value: (100 * tally.saidWrong) / clips,
      unit: '%',
      n: clips,
    },
  ];
}

function word(name: string): string | null {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? null : (process.argv[at + 1] ?? null);
}

if (process.argv[1]?.endsWith('ident-detector.ts') === true) {
  const clips = option('clips', 100);
  const seed = option('seed', 1);
  const only = word('line')?.split(',') ?? null;
  const isWanted = (...names: string[]): boolean =>
    only === null || names.some((each) => only.includes(each));
  const print = (text: string): void => {
    if (!isAsked('quiet')) console.error(text);
  };
  const show = (figures: readonly IdentFigure[]): void => {
    for (const each of figures) {
      console.log(isAsked('json') ? JSON.stringify(each) : inWords(each));
    }
  };
  const more = isAsked('more') || only !== null ? [...MORE_LINES, ...DOUBTFUL_LINES] : [];
  for (const each of [...STATION_LINES, ...more]) {
    if (isWanted(each.name, each.condition) && canMake(each.condition)) {
      show(stationFigures(each, clips, seed, print));
    }
  }
  for (const each of EMPTY_CONDITIONS) {
    if (isWanted(each, 'none') && canMake(each)) {
      show(emptyFigures(each, clips, seed, option('trials', 20), print));
    }
  }
}
