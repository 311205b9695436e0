// Alerts: npx tsx tests/bench/track-faults.ts --flights 400 --seed 1 [--interval 60] [--obs-test 3] [--no-dme] [--clean] [--json]
import { alertsOf } from '../../src/track/monitor.ts';
import { PLAIN_AIR, offDeg } from './track-air.ts';
import type { Start, Truth } from './track-air.ts';
import { chanceFrom } from './track-chance.ts';
import { faultsToFly } from './track-fault-kinds.ts';
import type { Fault, Memory } from './track-fault-kinds.ts';
import { flyOnce } from './track-flight.ts';
import { isAsked, option, printFigures, quantile } from './track-options.ts';
import type { Figure } from './track-options.ts';
import { toolAdviser } from './track-pilots.ts';

const STARTS: readonly Omit<Start, 'hasDme'>[] = [
  { direction: 'from', kind: 'near' },
  { direction: 'from', kind: 'icpt' },
  { direction: 'to', kind: 'near' },
  { direction: 'to', kind: 'icpt' },
];

/** How the flights of a table are flown. */
export interface FaultFlights {
  readonly flights: number;
  readonly seed: number;
  readonly intervalS: number;
  /** Every so many readings the OBS is turned three degrees; 0: never. */
  readonly testEvery: number;
  readonly hasDme: boolean;
}

const obsOffset =
  ({ testEvery }: FaultFlights) =>
  (number: number): number =>
    testEvery > 0 && number % testEvery === testEvery - 1 ? -3 : 0;

/**
 * Kinds of alert that are no false alarm on a flight without fault: asked to read again, beyond the horizon, or
 * (without DME, where OFF may be the cone or a lost signal) told what a true OFF may mean.
 */
function isNoAlarm(kind: string, { hasDme }: FaultFlights): boolean {
  if (kind === 'flag-off') return !hasDme;
  return kind === 'readings-disagree' || kind === 'outside-reception';
}

/** False alarms on flights on which nothing is wrong. */
export function cleanFigures(how: FaultFlights, print: (line: string) => void): readonly Figure[] {
  const onsets = new Map<string, number>();
  let minutes = 0;
  STARTS.forEach((start, which) => {
    for (let index = 0; index < how.flights; index += 1) {
      let standing = new Set<string>();
      const result = flyOnce({
        start: { ...start, hasDme: how.hasDme },
        air: PLAIN_AIR,
        intervalS: how.intervalS,
        seed: (how.seed * 10 + which) * 100_003 + index,
        adviser: (truth) => toolAdviser(truth),
        obsOffsetDeg: obsOffset(how),
        watch: (_truth, adviser) => {
          const estimate = adviser.estimate();
          if (!estimate) return;
          const now = new Set<string>(alertsOf(estimate).map((each) => each.kind));
          for (const kind of now) {
            if (!standing.has(kind)) onsets.set(kind, (onsets.get(kind) ?? 0) + 1);
          }
          standing = now;
        },
      });
      minutes += result.minutes;
    }
  });
  const hours = minutes / 60;
  print(`nothing wrong, ${hours.toFixed(0)} h:`);
  for (const [kind, count] of onsets) print(`  ${kind}: ${(count / hours).toFixed(3)} per hour`);
  const falseAlarms = [...onsets].filter(([kind]) => !isNoAlarm(kind, how));
  const all = falseAlarms.reduce((sum, [, count]) => sum + count, 0);
  const every = `readings every ${how.intervalS} s`;
  return [
    { name: `false alarms per hour, ${every}`, value: all / hours, goal: 0.05 },
    {
      name: `needless repeats asked for per hour, ${every}`,
      value: (onsets.get('readings-disagree') ?? 0) / hours,
      goal: null,
    },
  ];
}

interface Found {
  readonly delays: number[];
  readonly names: Map<string, number>;
  /** Greatest distance off the indicated line of the flights that ended without a word, NM. */
  readonly untoldOffNm: number[];
  flown: number;
}

function flyFault(
  each: Fault,
  start: Omit<Start, 'hasDme'>,
  how: FaultFlights,
  index: number,
  found: Found,
): void {
  const memory: Memory = {};
  const begins =
    (start.direction === 'to' ? 5 : 8) + Math.floor(chanceFrom(index + 5).uniform(0, 3));
  const seen = { delay: null as number | null, readings: 0, offNm: 0 };
  const { spoil } = each;
  flyOnce({
    start: { ...start, hasDme: how.hasDme },
    air: PLAIN_AIR,
    intervalS: how.intervalS,
    seed: (how.seed * 10 + 7) * 100_003 + index,
    adviser: (truth) => toolAdviser(truth),
    obsOffsetDeg: obsOffset(how),
    ...(spoil
      ? {
          spoil: (reading, truth, number) =>
            number >= begins ? spoil(reading, truth, memory) : reading,
          longestMin: 45,
        }
      : {}),
    watch: (truth, adviser, number) => {
      const estimate = adviser.estimate();
      if (number === begins - 1) each.begin?.(truth, chanceFrom(index + 31));
      if (number >= begins) seen.offNm = Math.max(seen.offNm, offLineNm(truth));
      if (!estimate || number < begins || seen.delay !== null) return;
      seen.readings = number - begins + 1;
      const kinds = alertsOf(estimate)
        .map((one) => one.kind)
        .filter((kind) => !isNoAlarm(kind, how));
      if (kinds.length === 0) return;
      seen.delay = seen.readings;
      const name = kinds.find((kind) => each.kinds.includes(kind)) ?? kinds[0] ?? '';
      found.names.set(name, (found.names.get(name) ?? 0) + 1);
    },
  });
  if (seen.readings >= 3 || seen.delay !== null) found.flown += 1;
  if (seen.delay !== null) found.delays.push(seen.delay);
  else if (seen.readings >= 3) found.untoldOffNm.push(seen.offNm);
}

/** How far off the indicated line, NM. */
function offLineNm(truth: Truth): number {
  return Math.hypot(truth.x, truth.y) * Math.abs(Math.sin((offDeg(truth) * Math.PI) / 180));
}

/** Of the flights in which nothing was told: how many of a hundred, and how far off they came. */
function untoldFigures(each: Fault, { direction }: Omit<Start, 'hasDme'>, found: Found): Figure[] {
  if (!each.untoldGoals) return [];
  const name = `${each.name}, ${direction} leg: `;
  return [
    {
      name: `${name}not told, per cent`,
      value: (100 * found.untoldOffNm.length) / found.flown,
      goal: each.untoldGoals[direction],
    },
    {
      name: `${name}not told, farthest off the line (median), NM`,
      value: quantile(found.untoldOffNm, 0.5),
      goal: 2,
    },
    {
      name: `${name}not told, farthest off the line (90 %), NM`,
      value: quantile(found.untoldOffNm, 0.9),
      goal: null,
    },
  ];
}

/** How soon each fault that sets in during the flight is told, and under which name. */
export function faultFigures(how: FaultFlights, print: (line: string) => void): readonly Figure[] {
  return faultsToFly()
    .filter(({ name }) => how.hasDme || !name.includes('DME'))
    .flatMap((each) =>
      STARTS.filter(({ kind }) => kind === 'near').flatMap((start): Figure[] => {
        const found: Found = { delays: [], names: new Map(), untoldOffNm: [], flown: 0 };
        for (let index = 0; index < how.flights; index += 1) {
          flyFault(each, start, how, index, found);
        }
        const delay = [0.5, 0.9].map((part) => quantile(found.delays, part)).join(' / ');
        const names = [...found.names].map(([kind, count]) => `${kind} ${count}`).join(', ');
        const name = `${each.name}, ${start.direction} leg`;
        print(
          `${name}: told in ${found.delays.length} of ${found.flown}, after ${delay} readings; ${names}`,
        );
        return [
          {
            name: `${name}: told after so many readings (median)`,
            value: quantile(found.delays, 0.5),
            goal: each.goal,
          },
          ...untoldFigures(each, start, found),
        ];
      }),
    );
}

if (process.argv[1]?.endsWith('track-faults.ts') === true) {
  const how = {
    flights: option('flights', 100),
    seed: option('seed', 1),
    intervalS: option('interval', 60),
    testEvery: option('obs-test', 0),
    hasDme: !isAsked('no-dme'),
  };
  const print = (text: string): void => {
    if (!isAsked('json')) console.log(text);
  };
  const faults = isAsked('clean') ? [] : faultFigures(how, print);
  printFigures([...cleanFigures(how, print), ...faults]);
}
