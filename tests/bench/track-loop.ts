import { DEG_PER_RAD } from '../../src/base/angle.ts';
import { PLAIN_AIR } from './track-air.ts';
import type { Start, Truth } from './track-air.ts';
import { flyOnce } from './track-flight.ts';
import type { FlightPlan, FlightResult } from './track-flight.ts';
import { bracketingAdviser, oracleAdviser, toolAdviser } from './track-pilots.ts';
import type { Adviser } from './track-pilots.ts';

const args = process.argv.slice(2);
const option = (name: string, fallback: number): number => {
  const at = args.indexOf(`--${name}`);
  return at < 0 ? fallback : Number(args[at + 1]);
};
const flights = option('flights', 100);
const seed = option('seed', 1);
const isJson = args.includes('--json');

const CELLS: readonly Start[] = [
  { direction: 'to', kind: 'near', hasDme: true },
  { direction: 'to', kind: 'icpt', hasDme: true },
  { direction: 'from', kind: 'near', hasDme: true },
  { direction: 'from', kind: 'icpt', hasDme: true },
];

/** One figure of a cell from its flights. */
interface Cell {
  readonly rmsDeg: number;
  readonly rmsNm: number;
  readonly establishedNm: number;
  readonly establish90Min: number;
  readonly changesPer10Min: number;
  readonly miss95Nm: number | null;
  readonly overshootMeanDeg: number;
  readonly overshoot95Deg: number;
  readonly nees: number | null;
  readonly neesPassedShare: number;
}

function quantile(values: readonly number[], part: number): number {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? 0;
}

/** Squared error of place and wind in the filter's own spread (4 numbers: ideal 4). */
function neesOf(truth: Truth, adviser: Adviser): number | null {
  const estimate = adviser.estimate();
  if (!estimate?.isPlaced) return null;
  const { mean, covariance } = estimate.belief;
  const turn = mean.bearingRad - Math.atan2(truth.x, truth.y);
  const error = [
    mean.lnRange - Math.log(Math.hypot(truth.x, truth.y)),
    turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI)),
    mean.windEastKt - truth.windX,
    mean.windNorthKt - truth.windY,
  ];
  const a = [0, 1, 2, 3].map((row) => [
    ...[0, 1, 2, 3].map((column) => covariance[row * 7 + column] ?? 0),
    error[row] ?? 0,
  ]);
  for (let k = 0; k < 4; k += 1) {
    for (let row = k + 1; row < 4; row += 1) {
      const factor = (a[row]?.[k] ?? 0) / (a[k]?.[k] ?? 1);
      for (let column = k; column < 5; column += 1) {
        const target = a[row];
        if (target) target[column] = (target[column] ?? 0) - factor * (a[k]?.[column] ?? 0);
      }
    }
  }
  const solution = [0, 0, 0, 0];
  for (let row = 3; row >= 0; row -= 1) {
    let sum = a[row]?.[4] ?? 0;
    for (let column = row + 1; column < 4; column += 1)
      sum -= (a[row]?.[column] ?? 0) * (solution[column] ?? 0);
    solution[row] = sum / (a[row]?.[row] ?? 1);
  }
  return error.reduce((sum, each, index) => sum + each * (solution[index] ?? 0), 0);
}

function flyCell(
  start: Start,
  intervalS: number,
  adviser: FlightPlan['adviser'],
  from: number,
  more: Partial<FlightPlan> = {},
): Cell {
  const results: FlightResult[] = [];
  const nees: number[] = [];
  for (let index = 0; index < flights; index += 1) {
    results.push(
      flyOnce({
        start,
        air: PLAIN_AIR,
        intervalS,
        seed: from * 100_003 + index,
        adviser,
        watch: (truth, who) => {
          const value = Math.hypot(truth.x, truth.y) > 2 ? neesOf(truth, who) : null;
          if (value !== null) nees.push(value);
        },
        ...more,
      }),
    );
  }
  const sum = (pick: (each: FlightResult) => number): number =>
    results.reduce((total, each) => total + pick(each), 0);
  const misses = results.flatMap((each) => (each.missNm === null ? [] : [each.missNm]));
  const overshoots = results.map((each) => each.overshootDeg);
  return {
    rmsDeg: Math.sqrt(sum((each) => each.lateDeg2) / sum((each) => each.lateS)),
    rmsNm: Math.sqrt(sum((each) => each.lateNm2) / sum((each) => each.lateS)),
    establishedNm: Math.sqrt(
      sum((each) => each.establishedNm2) /
        Math.max(
          1,
          sum((each) => each.establishedS),
        ),
    ),
    establish90Min: quantile(
      results.map((each) => each.establishMin),
      0.9,
    ),
    changesPer10Min: (10 * sum((each) => each.changes)) / sum((each) => each.minutes),
    miss95Nm: misses.length > 0 ? quantile(misses, 0.95) : null,
    overshootMeanDeg: overshoots.reduce((a, b) => a + b, 0) / overshoots.length,
    overshoot95Deg: quantile(overshoots, 0.95),
    nees: nees.length > 0 ? nees.reduce((a, b) => a + b, 0) / nees.length : null,
    neesPassedShare: nees.filter((each) => each > 18.5).length / Math.max(1, nees.length),
  };
}

const print = (line: string): void => {
  if (!isJson) console.log(line);
};
const figures: { name: string; value: number; goal: number | null }[] = [];
const mean = (values: readonly number[]): number =>
  values.reduce((a, b) => a + b, 0) / values.length;
const geometric = (values: readonly number[]): number =>
  Math.exp(mean(values.map((each) => Math.log(each))));
const only = option('interval', 0);
const GOALS = {
  30: [0.8, 2, 1.5, 0.13],
  60: [0.95, 2.3, 1.55, 0.16],
  120: [1.25, 3.2, 1.65, 0.22],
} as const;
const isQuick = args.includes('--quick');

for (const intervalS of [30, 60, 120] as const) {
  if (only && only !== intervalS) continue;
  const rows = CELLS.map((start) => ({
    start,
    tool: flyCell(start, intervalS, (truth) => toolAdviser(truth), seed),
    oracle: isQuick
      ? null
      : flyCell(start, intervalS, (truth) => oracleAdviser(truth, intervalS), seed),
    bracketing: isQuick
      ? null
      : [0.5, 1].map((threshold) =>
          flyCell(start, intervalS, (truth) => bracketingAdviser(truth, threshold), seed),
        ),
  }));
  for (const { start, tool, oracle, bracketing } of rows) {
    print(
      `${start.direction} ${start.kind} ${intervalS}: rms ${tool.rmsDeg.toFixed(2)} deg ${tool.rmsNm.toFixed(2)} NM` +
        ` changes ${tool.changesPer10Min.toFixed(1)} est90 ${tool.establish90Min.toFixed(1)} over ${tool.overshootMeanDeg.toFixed(1)}/${tool.overshoot95Deg.toFixed(1)}` +
        ` miss95 ${tool.miss95Nm?.toFixed(2) ?? '-'} nees ${tool.nees?.toFixed(2) ?? '-'} (${(100 * tool.neesPassedShare).toFixed(1)} %)` +
        (oracle
          ? ` | oracle ${oracle.rmsDeg.toFixed(2)} ${oracle.rmsNm.toFixed(2)} NM est90 ${oracle.establish90Min.toFixed(1)} ch ${oracle.changesPer10Min.toFixed(1)} miss ${oracle.miss95Nm?.toFixed(2) ?? '-'}`
          : '') +
        (bracketing
          ? ` | bracketing ${bracketing.map((each) => each.rmsDeg.toFixed(2)).join(' ')}`
          : ''),
    );
  }
  const [rmsGoal, ratioGoal, oracleGoal, missGoal] = GOALS[intervalS];
  const add = (name: string, value: number, goal: number | null): void => {
    figures.push({ name: `${name}, readings every ${intervalS} s`, value, goal });
  };
  add('needle RMS after 8 min, deg', mean(rows.map((each) => each.tool.rmsDeg)), rmsGoal);
  add(
    'heading changes in 10 min',
    mean(rows.map((each) => each.tool.changesPer10Min)),
    intervalS === 60 ? 6.5 : null,
  );
  add(
    'miss at the station 95 %, NM',
    Math.max(...rows.map((each) => each.tool.miss95Nm ?? 0)),
    missGoal,
  );
  add('NEES of place and wind (ideal 4)', mean(rows.map((each) => each.tool.nees ?? 4)), null);
  if (!isQuick) {
    add(
      'tool over oracle',
      mean(rows.map((each) => each.tool.rmsDeg / (each.oracle?.rmsDeg ?? 1))),
      oracleGoal,
    );
    add(
      'bracketing over tool',
      geometric(
        rows.map(
          (each) =>
            Math.min(...(each.bracketing ?? []).map((one) => one.rmsDeg)) / each.tool.rmsDeg,
        ),
      ),
      ratioGoal,
    );
  }
}
void DEG_PER_RAD;
if (isJson) console.log(JSON.stringify(figures, null, 2));
else
  for (const { name, value, goal } of figures)
    console.log(`${name}: ${value.toFixed(3)}${goal === null ? '' : ` (goal ${goal})`}`);
