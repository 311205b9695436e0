// Against the bound: npx tsx tests/bench/track-bound.ts --flights 1000 --seed 1 [--json]
import type { Reading } from '../../src/track/reading.ts';
import { PLAIN_AIR, half, offDeg } from './track-air.ts';
import type { StateMean } from '../../src/track/belief.ts';
import type { Start, Truth } from './track-air.ts';
import { flyOnce } from './track-flight.ts';
import { isAsked, option, printFigures } from './track-options.ts';
import type { Figure } from './track-options.ts';
import { toolAdviser } from './track-pilots.ts';

/**
 * How near the filter comes to the posterior Cramer-Rao bound: the least error that any estimator can have with
 * these readings, by the recursion of Tichavsky, Muravchik, Nehorai, IEEE Trans. Signal Processing 46 (1998)
 * 1386-1396, linearised on the true flight. State in the plane: east, north (NM), wind east, north (kt), VOR bias
 * (deg), airspeed error (kt), heading error (deg). Shares no code with the filter.
 */

const SIZE = 7;
const RAD = Math.PI / 180;

type Grid = number[][];

const grid = (fill: (row: number, column: number) => number): Grid =>
  Array.from({ length: SIZE }, (_, row) =>
    Array.from({ length: SIZE }, (__, column) => fill(row, column)),
  );
const at = (m: Grid, row: number, column: number): number => m[row]?.[column] ?? 0;
const times = (a: Grid, b: Grid): Grid =>
  grid((row, column) => {
    let sum = 0;
    for (let k = 0; k < SIZE; k += 1) sum += at(a, row, k) * at(b, k, column);
    return sum;
  });
const turned = (a: Grid): Grid => grid((row, column) => at(a, column, row));
const plus = (a: Grid, b: Grid): Grid =>
  grid((row, column) => at(a, row, column) + at(b, row, column));

/** The bound after one more number was read: its derivative and the information in it. */
function informed(p: Grid, slope: readonly number[], information: number): Grid {
  const ph = Array.from({ length: SIZE }, (_, row) => {
    let sum = 0;
    for (let k = 0; k < SIZE; k += 1) sum += at(p, row, k) * (slope[k] ?? 0);
    return sum;
  });
  const hph = ph.reduce((sum, each, index) => sum + each * (slope[index] ?? 0), 0);
  const part = information / (1 + information * hph);
  return grid((row, column) => at(p, row, column) - part * (ph[row] ?? 0) * (ph[column] ?? 0));
}

/** The error function (Abramowitz and Stegun 7.1.26, error below 1.5e-7), as the normal distribution. */
function below(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const poly =
    t *
    (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const erf = 1 - poly * Math.exp(-x * x);
  return z < 0 ? (1 - erf) / 2 : (1 + erf) / 2;
}

/** Fisher information of a needle read in half dots with stops, where it truly stands there, per deg^2. */
function needleInformation(trueDeg: number): number {
  const sd = PLAIN_AIR.scallopingDeg;
  const density = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  let sum = 0;
  for (let bin = -10; bin <= 10; bin += 1) {
    const high = bin === 10 ? Infinity : (bin + 0.5 - trueDeg) / sd;
    const low = bin === -10 ? -Infinity : (bin - 0.5 - trueDeg) / sd;
    const p = (high === Infinity ? 1 : below(high)) - (low === -Infinity ? 0 : below(low));
    const slope =
      ((low === -Infinity ? 0 : density(low)) - (high === Infinity ? 0 : density(high))) / sd;
    if (p > 1e-9) sum += (slope * slope) / p;
  }
  return sum;
}

interface Snapshot {
  readonly x: number;
  readonly y: number;
  readonly windX: number;
  readonly windY: number;
  readonly targetDeg: number;
  readonly timeS: number;
}

function priorAt(snap: Snapshot, bearingSdDeg: number): Grid {
  // The place before the first reading: half the range, and so many degrees.
  const range = Math.hypot(snap.x, snap.y);
  const along = (0.5 * range) ** 2;
  const across = (bearingSdDeg * RAD * range) ** 2;
  const sin = snap.x / range;
  const cos = snap.y / range;
  const place = [
    [along * sin * sin + across * cos * cos, (along - across) * sin * cos],
    [(along - across) * sin * cos, along * cos * cos + across * sin * sin],
  ];
  const rest = [0, 0, 400, 400, 2.25, 9, 4];
  return grid((row, column) =>
    row < 2 && column < 2 ? (place[row]?.[column] ?? 0) : row === column ? (rest[row] ?? 0) : 0,
  );
}

function carried(p: Grid, from: Snapshot, to: Snapshot, airspeedKt: number): Grid {
  const dt = to.timeS - from.timeS;
  const hours = dt / 3600;
  const airX = to.x - from.x - ((from.windX + to.windX) / 2) * hours;
  const airY = to.y - from.y - ((from.windY + to.windY) / 2) * hours;
  const f = grid((row, column) => (row === column ? 1 : 0));
  const set = (m: Grid, row: number, column: number, value: number): void => {
    const line = m[row];
    if (line) line[column] = value;
  };
  set(f, 0, 2, hours);
  set(f, 1, 3, hours);
  set(f, 0, 5, airX / airspeedKt);
  set(f, 1, 5, airY / airspeedKt);
  set(f, 0, 6, airY * RAD);
  set(f, 1, 6, -airX * RAD);
  const keep = Math.exp(-dt / 1800);
  set(f, 4, 4, keep);
  const q = 20 / dt;
  const wander = 1.5 ** 2 * 2 * q * (1 - q * (1 - Math.exp(-1 / q))) * RAD * RAD;
  const gust = (2 * q * (1 - q * (1 - Math.exp(-1 / q)))) / airspeedKt ** 2;
  const wind = 36 / 3600;
  const place = (wind * dt ** 3) / 3 / 3600 ** 2;
  const turn = Math.abs(to.targetDeg - from.targetDeg) * RAD;
  const late = ((airspeedKt / 3600) * 2 * 2 * Math.sin(Math.min(turn, Math.PI) / 2)) ** 2 / 2;
  const noise = grid(() => 0);
  set(noise, 0, 0, wander * airY ** 2 + gust * airX ** 2 + place + late);
  set(noise, 1, 1, wander * airX ** 2 + gust * airY ** 2 + place + late);
  set(noise, 0, 1, (gust - wander) * airX * airY);
  set(noise, 1, 0, (gust - wander) * airX * airY);
  for (const axis of [0, 1]) {
    set(noise, axis, axis + 2, (wind * dt ** 2) / 2 / 3600);
    set(noise, axis + 2, axis, (wind * dt ** 2) / 2 / 3600);
    set(noise, axis + 2, axis + 2, wind * dt);
  }
  set(noise, 4, 4, 2.25 * (1 - keep * keep));
  return plus(times(times(f, p), turned(f)), noise);
}

/** The bound after one reading of the panel. */
function read(p: Grid, truth: Truth, reading: Reading): Grid {
  const square = truth.x ** 2 + truth.y ** 2;
  const range = Math.sqrt(square);
  let result = p;
  if (truth.leg.station.hasDme) {
    const slant = Math.hypot(range, truth.heightNm);
    result = informed(
      result,
      [truth.x / slant, truth.y / slant, 0, 0, 0, 0, 0],
      1 / (0.0225 + 0.01 / 12),
    );
  }
  const slope = [truth.y / square / RAD, -truth.x / square / RAD, 0, 0, 1, 0, 0];
  const isCourseSet = Math.abs(half(reading.courseSetDeg - truth.leg.courseDeg)) < 0.01;
  // Centred by the OBS, the needle is read to a degree of the OBS.
  const information = isCourseSet
    ? needleInformation(offDeg(truth))
    : 1 / (PLAIN_AIR.scallopingDeg ** 2 + 1 / 12);
  return informed(result, slope, information);
}

const COUNTS = [2, 3, 5, 10];

/** Sums of squares over flights after so many readings. */
interface Squares {
  wind: number;
  windBound: number;
  cross: number;
  crossBound: number;
  n: number;
}

/** A kind of flight to compare with the bound. */
interface BoundCell {
  readonly name: string;
  readonly start: Start;
  readonly firstReading: 'centred' | 'plain';
  /** How broad the bearing is before the first reading; on the stop, what is left of the 15 degrees of the filter. */
  readonly bearingSdDeg: number;
  readonly goals: { readonly wind: number; readonly cross: number };
}

const BOUND_CELLS: readonly BoundCell[] = [
  {
    name: 'tracking with DME',
    start: { direction: 'to', kind: 'near', hasDme: true },
    firstReading: 'centred',
    bearingSdDeg: 10,
    goals: { wind: 1.05, cross: 1.05 },
  },
  {
    name: 'tracking without DME',
    start: { direction: 'to', kind: 'near', hasDme: false },
    firstReading: 'centred',
    bearingSdDeg: 10,
    goals: { wind: 1.05, cross: 1.2 },
  },
  {
    name: 'needle on its stop at the start, with DME',
    start: { direction: 'from', kind: 'icpt', hasDme: true },
    firstReading: 'plain',
    bearingSdDeg: 7.5,
    goals: { wind: 1.15, cross: 1.1 },
  },
];

const snapOf = (truth: Truth): Snapshot => ({
  x: truth.x,
  y: truth.y,
  windX: truth.windX,
  windY: truth.windY,
  targetDeg: truth.targetDeg,
  timeS: truth.timeS,
});

function compare(truth: Truth, mean: StateMean, p: Grid, sum: Squares): void {
  const course = truth.courseDeg * RAD;
  const sin = Math.sin(course);
  const cos = Math.cos(course);
  const range = Math.exp(mean.lnRange);
  const cross = range * Math.sin(mean.bearingRad - course) - (truth.x * cos - truth.y * sin);
  sum.wind += (mean.windEastKt - truth.windX) ** 2 + (mean.windNorthKt - truth.windY) ** 2;
  sum.windBound += at(p, 2, 2) + at(p, 3, 3);
  sum.cross += cross ** 2;
  sum.crossBound += at(p, 0, 0) * cos * cos + at(p, 1, 1) * sin * sin - 2 * at(p, 0, 1) * sin * cos;
  sum.n += 1;
}

function flyAgainstBound(
  cell: BoundCell,
  intervalS: number,
  seed: number,
  sums: Map<number, Squares>,
): void {
  let p: Grid | null = null;
  let last: Snapshot | null = null;
  let hasBeenNear = false;
  flyOnce({
    start: cell.start,
    air: PLAIN_AIR,
    intervalS,
    seed,
    firstReading: cell.firstReading,
    longestMin: (intervalS * 10) / 60 + 0.1,
    adviser: (truth) => toolAdviser(truth),
    answersQuestions: false,
    watch: (truth, adviser, number) => {
      const snap = snapOf(truth);
      const estimate = adviser.estimate();
      const reading = estimate?.readings.at(-1);
      hasBeenNear ||= Math.hypot(truth.x, truth.y) < 2;
      if (!estimate || !reading || hasBeenNear) return;
      p = p && last ? carried(p, last, snap, truth.airspeedKt) : priorAt(snap, cell.bearingSdDeg);
      p = read(p, truth, reading);
      last = snap;
      const count = number + 1;
      if (!COUNTS.includes(count)) return;
      const sum = sums.get(count) ?? { wind: 0, windBound: 0, cross: 0, crossBound: 0, n: 0 };
      compare(truth, estimate.belief.mean, p, sum);
      sums.set(count, sum);
    },
  });
}

/** Root-mean-square errors of wind and cross-track over their bounds. */
export function boundFigures(
  flights: number,
  seed: number,
  print: (line: string) => void,
): readonly Figure[] {
  const figures: Figure[] = [];
  for (const cell of BOUND_CELLS) {
    for (const intervalS of cell.start.hasDme ? [30, 60, 120] : [30, 60]) {
      const sums = new Map<number, Squares>();
      for (let index = 0; index < flights; index += 1) {
        flyAgainstBound(cell, intervalS, seed * 1_000_003 + index, sums);
      }
      for (const [count, sum] of sums) {
        const wind = Math.sqrt(sum.wind / sum.windBound);
        const cross = Math.sqrt(sum.cross / sum.crossBound);
        const name = `${cell.name}, ${count} readings every ${intervalS} s`;
        const windKt = Math.sqrt(sum.wind / sum.n).toFixed(1);
        const crossNm = Math.sqrt(sum.cross / sum.n).toFixed(2);
        print(
          `${name}: wind ${windKt} kt (${wind.toFixed(2)}), across ${crossNm} NM (${cross.toFixed(2)})`,
        );
        figures.push({
          name: `${name}: wind error over bound`,
          value: wind,
          goal: cell.goals.wind,
        });
        figures.push({
          name: `${name}: cross-track error over bound`,
          value: cross,
          goal: cell.goals.cross,
        });
      }
    }
  }
  return figures;
}

if (process.argv[1]?.endsWith('track-bound.ts') === true) {
  const print = (text: string): void => {
    if (!isAsked('json')) console.log(text);
  };
  printFigures(boundFigures(option('flights', 200), option('seed', 1), print));
}
