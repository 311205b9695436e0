// Alerts: npx tsx tests/bench/track-faults.ts --flights 400 --seed 1 [--interval 60] [--obs-test 3] [--no-dme] [--clean] [--json]
import { alertsOf } from '../../src/track/monitor.ts';
import type { Reading } from '../../src/track/reading.ts';
import { PLAIN_AIR } from './track-air.ts';
import type { Start, Truth } from './track-air.ts';
import { chanceFrom } from './track-chance.ts';
import { flyOnce } from './track-flight.ts';
import { isAsked, option, printFigures, quantile } from './track-options.ts';
import type { Figure } from './track-options.ts';
import { toolAdviser } from './track-pilots.ts';

/** A fault: what it does to a reading from its first reading on. */
interface Fault {
  readonly name: string;
  /** Alerts that name it rightly. */
  readonly kinds: readonly string[];
  /** Median delay to stay under, readings. */
  readonly goal: number;
  readonly spoil: (reading: Reading, truth: Truth, memory: Memory) => Reading;
}

interface Memory {
  frozenDmeNm?: number;
  offX?: number;
  offY?: number;
}

const withNeedle = (reading: Reading, needleDots: number): Reading =>
  reading.needleDots === undefined ? reading : { ...reading, needleDots };

const FAULTS: readonly Fault[] = [
  {
    name: 'needle frozen in the centre',
    kinds: ['needle-not-moving'],
    goal: 9,
    spoil: (reading) => withNeedle(reading, 0),
  },
  {
    name: 'DME frozen',
    kinds: ['dme-not-moving'],
    goal: 2,
    spoil: (reading, _truth, memory) => {
      memory.frozenDmeNm ??= reading.dmeNm ?? 0;
      return { ...reading, dmeNm: memory.frozenDmeNm };
    },
  },
  {
    name: 'DME of another station',
    kinds: ['dme-disagrees', 'wrong-station'],
    goal: 2,
    spoil: (reading, truth, memory) => {
      memory.offX ??= 31;
      memory.offY ??= -17;
      const nm = Math.hypot(truth.x - memory.offX, truth.y - memory.offY);
      return { ...reading, dmeNm: Math.round(nm * 10) / 10 };
    },
  },
  {
    name: 'wrong station',
    kinds: ['wrong-station', 'reverse-sensing', 'dme-disagrees'],
    goal: 2,
    spoil: (reading, truth) => {
      const x = truth.x - 31;
      const y = truth.y + 17;
      const radial = (Math.atan2(x, y) * 180) / Math.PI - truth.leg.station.declinationDegEast;
      const off = radial - reading.courseSetDeg;
      const turn = off - 360 * Math.round(off / 360);
      const isFrom = Math.abs(turn) < 90;
      const needle = isFrom ? -turn : turn > 0 ? turn - 180 : turn + 180;
      return {
        ...reading,
        flag: isFrom ? 'from' : 'to',
        needleDots: Math.max(-5, Math.min(5, Math.round(needle) / 2)),
        dmeNm: Math.round(Math.hypot(x, y) * 10) / 10,
      };
    },
  },
  {
    name: 'reverse sensing, flag not reported',
    kinds: ['reverse-sensing'],
    goal: 6,
    spoil: (reading) => withNeedle(reading, -(reading.needleDots ?? 0)),
  },
  {
    name: 'flag reversed',
    kinds: ['reverse-sensing'],
    goal: 6,
    spoil: (reading) =>
      reading.flag === 'off'
        ? reading
        : { ...reading, flag: reading.flag === 'to' ? 'from' : 'to' },
  },
];

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
  const seen: { delay: number | null; readings: number } = { delay: null, readings: 0 };
  flyOnce({
    start: { ...start, hasDme: how.hasDme },
    air: PLAIN_AIR,
    intervalS: how.intervalS,
    seed: (how.seed * 10 + 7) * 100_003 + index,
    adviser: (truth) => toolAdviser(truth),
    obsOffsetDeg: obsOffset(how),
    spoil: (reading, truth, number) =>
      number >= begins ? each.spoil(reading, truth, memory) : reading,
    longestMin: 45,
    watch: (_truth, adviser, number) => {
      const estimate = adviser.estimate();
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
}

/** How soon each fault that sets in during the flight is told, and under which name. */
export function faultFigures(how: FaultFlights, print: (line: string) => void): readonly Figure[] {
  return FAULTS.filter(({ name }) => how.hasDme || !name.includes('DME')).flatMap((each) =>
    STARTS.filter(({ kind }) => kind === 'near').map((start): Figure => {
      const found: Found = { delays: [], names: new Map(), flown: 0 };
      for (let index = 0; index < how.flights; index += 1) {
        flyFault(each, start, how, index, found);
      }
      const delay = [0.5, 0.9].map((part) => quantile(found.delays, part)).join(' / ');
      const names = [...found.names].map(([kind, count]) => `${kind} ${count}`).join(', ');
      const name = `${each.name}, ${start.direction} leg`;
      print(
        `${name}: told in ${found.delays.length} of ${found.flown}, after ${delay} readings; ${names}`,
      );
      return {
        name: `${name}: told after so many readings (median)`,
        value: quantile(found.delays, 0.5),
        goal: each.goal,
      };
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
