// Closed loop: npx tsx tests/bench/track-loop.ts --flights 500 --seed 1 [--interval 60] [--quick] [--json]
import { PLAIN_AIR } from './track-air.ts';
import type { Start } from './track-air.ts';
import { ALL_FAVOURS, AS_PUBLISHED, bracketingAdviser } from './track-bracketing.ts';
import type { Habits } from './track-bracketing.ts';
import { flyOnce } from './track-flight.ts';
import type { FlightPlan, FlightResult } from './track-flight.ts';
import { neesOf } from './track-nees.ts';
import { isAsked, meanOf, option, printFigures, quantile } from './track-options.ts';
import type { Figure } from './track-options.ts';
import { oracleAdviser, toolAdviser } from './track-pilots.ts';

const CELLS: readonly Start[] = [
  { direction: 'to', kind: 'near', hasDme: true },
  { direction: 'to', kind: 'icpt', hasDme: true },
  { direction: 'from', kind: 'near', hasDme: true },
  { direction: 'from', kind: 'icpt', hasDme: true },
];

/** To stay under, by the interval between readings. */
const GOALS = {
  30: { rms: 0.8, overBracketing: 1 / 2, overOracle: 1.5, miss: 0.13 },
  60: { rms: 0.95, overBracketing: 1 / 2.3, overOracle: 1.55, miss: 0.16 },
  120: { rms: 1.25, overBracketing: 1 / 3.2, overOracle: 1.65, miss: 0.22 },
} as const;
/** When the bracketing pilot begins a correction, dots: the best of these for each kind of flight counts. */
const THRESHOLDS_DOTS = [0.5, 1, 1.5, 2];

type IntervalS = keyof typeof GOALS;
const INTERVALS_S: readonly IntervalS[] = [30, 60, 120];

/** The figures of one kind of flight. */
interface Cell {
  readonly rmsDeg: number;
  readonly edgeRmsDeg: number;
  readonly establishedNm: number;
  readonly establish90Min: number;
  readonly changesPer10Min: number;
  readonly miss95Nm: number | null;
  readonly overshoots: readonly number[];
  readonly nees: number;
  readonly neesOverShare: number;
}

function flyCell(plan: Omit<FlightPlan, 'seed' | 'air'>, flights: number, seed: number): Cell {
  const results: FlightResult[] = [];
  const nees: number[] = [];
  for (let index = 0; index < flights; index += 1) {
    const result = flyOnce({
      ...plan,
      air: PLAIN_AIR,
      seed: seed * 100_003 + index,
      watch: (truth, adviser) => {
        const value = Math.hypot(truth.x, truth.y) > 2 ? neesOf(truth, adviser) : null;
        if (value !== null) nees.push(value);
      },
    });
    results.push(result);
  }
  const sum = (pick: (each: FlightResult) => number): number =>
    results.reduce((total, each) => total + pick(each), 0);
  const misses = results.flatMap((each) => (each.missNm === null ? [] : [each.missNm]));
  return {
    rmsDeg: Math.sqrt(sum((each) => each.late.deg2) / sum((each) => each.late.s)),
    edgeRmsDeg: Math.sqrt(sum((each) => each.edge.deg2) / sum((each) => each.edge.s)),
    establishedNm: Math.sqrt(
      sum((each) => each.established.nm2) /
        Math.max(
          1,
          sum((each) => each.established.s),
        ),
    ),
    establish90Min: quantile(
      results.map((each) => each.establishMin),
      0.9,
    ),
    changesPer10Min: (10 * sum((each) => each.changes)) / sum((each) => each.minutes),
    miss95Nm: misses.length > 0 ? quantile(misses, 0.95) : null,
    overshoots: results.map((each) => each.overshootDeg),
    nees: meanOf(nees),
    neesOverShare: nees.filter((each) => each > 18.5).length / Math.max(1, nees.length),
  };
}

function line(name: string, cell: Cell): string {
  return [
    name.padEnd(30),
    `needle RMS ${cell.rmsDeg.toFixed(2)} deg (${cell.edgeRmsDeg.toFixed(2)} to the cone)`,
    `${cell.establishedNm.toFixed(2)} NM established`,
    `90 % by ${cell.establish90Min.toFixed(1)} min`,
    `${cell.changesPer10Min.toFixed(1)} changes in 10 min`,
    `overshoot ${meanOf(cell.overshoots).toFixed(1)} / ${quantile(cell.overshoots, 0.95).toFixed(1)}`,
    `miss 95 % ${cell.miss95Nm?.toFixed(2) ?? '-'} NM`,
    `NEES ${cell.nees.toFixed(2)} (${(100 * cell.neesOverShare).toFixed(1)} % over 18.5)`,
  ].join(', ');
}

/** The best that bracketing comes to in one kind of flight, over the thresholds. */
interface Best {
  readonly rmsDeg: number;
  readonly establish90Min: number;
}

/** Flies one kind of flight by bracketing, with each threshold. */
function bestBracketing(
  plan: Omit<FlightPlan, 'seed' | 'air' | 'adviser'>,
  habits: Omit<Habits, 'thresholdDots'>,
  fly: (plan: Omit<FlightPlan, 'seed' | 'air'>, name: string) => Cell,
): Best {
  const cells = THRESHOLDS_DOTS.map((thresholdDots) =>
    fly(
      { ...plan, adviser: (truth) => bracketingAdviser(truth, { ...habits, thresholdDots }) },
      `  bracketing ${thresholdDots} ${habits === ALL_FAVOURS ? 'favoured' : 'as published'}`,
    ),
  );
  return {
    rmsDeg: Math.min(...cells.map((each) => each.rmsDeg)),
    establish90Min: Math.min(...cells.map((each) => each.establish90Min)),
  };
}

/** The four kinds of flight with readings at one interval. `print`: gets a line for each kind and pilot. */
export function loopFigures(
  intervalS: IntervalS,
  flights: number,
  seed: number,
  isQuick: boolean,
  print: (line: string) => void,
): readonly Figure[] {
  const tool: Cell[] = [];
  const overOracle: number[] = [];
  const overBracketing: number[] = [];
  const overFavoured: number[] = [];
  const establish: number[] = [];
  const fly = (plan: Omit<FlightPlan, 'seed' | 'air'>, name: string): Cell => {
    const cell = flyCell(plan, flights, seed);
    print(line(name, cell));
    return cell;
  };
  for (const start of CELLS) {
    const plan = { start, intervalS };
    const name = `${start.direction} ${start.kind} ${intervalS} s`;
    const mine = fly({ ...plan, adviser: (truth) => toolAdviser(truth) }, name);
    tool.push(mine);
    if (isQuick) continue;
    const oracle = fly(
      { ...plan, adviser: (truth) => oracleAdviser(truth, intervalS) },
      '  oracle',
    );
    overOracle.push(mine.rmsDeg / oracle.rmsDeg);
    const bracketing = bestBracketing(plan, AS_PUBLISHED, fly);
    overBracketing.push(mine.rmsDeg / bracketing.rmsDeg);
    establish.push(mine.establish90Min / bracketing.establish90Min);
    overFavoured.push(mine.rmsDeg / bestBracketing(plan, ALL_FAVOURS, fly).rmsDeg);
  }
  const goals = GOALS[intervalS];
  const named = (name: string, value: number, goal: number | null): Figure => ({
    name: `${name}, readings every ${intervalS} s`,
    value,
    goal,
  });
  const misses = tool.flatMap((each) => (each.miss95Nm === null ? [] : [each.miss95Nm]));
  const geometric = (values: readonly number[]): number => Math.exp(meanOf(values.map(Math.log)));
  return [
    named('needle RMS after 8 min, deg', meanOf(tool.map((each) => each.rmsDeg)), goals.rms),
    named(
      'the same to the edge of the cone, deg',
      meanOf(tool.map((each) => each.edgeRmsDeg)),
      null,
    ),
    named(
      'heading changes in 10 min',
      meanOf(tool.map((each) => each.changesPer10Min)),
      intervalS === 60 ? 6.5 : null,
    ),
    named('miss at the station 95 %, NM', Math.max(...misses), goals.miss),
    named('overshoot mean, deg', Math.max(...tool.map((each) => meanOf(each.overshoots))), 1.8),
    named('NEES of place and wind (ideal 4)', meanOf(tool.map((each) => each.nees)), 4.3),
    ...(isQuick
      ? []
      : [
          named('needle RMS, tool over oracle', meanOf(overOracle), goals.overOracle),
          named(
            'needle RMS, tool over bracketing',
            geometric(overBracketing),
            goals.overBracketing,
          ),
          named('the same, bracketing with all favours', geometric(overFavoured), null),
          named('90 % time to establish, tool over bracketing', geometric(establish), 0.55),
        ]),
  ];
}

if (process.argv[1]?.endsWith('track-loop.ts') === true) {
  const only = option('interval', 0);
  const chosen = INTERVALS_S.filter((each) => only === 0 || each === only);
  const print = (text: string): void => {
    if (!isAsked('json')) console.log(text);
  };
  printFigures(
    chosen.flatMap((each) =>
      loopFigures(each, option('flights', 100), option('seed', 1), isAsked('quick'), print),
    ),
  );
}
