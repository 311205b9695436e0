import { alertsOf } from '../../src/track/monitor.ts';
import type { Reading } from '../../src/track/reading.ts';
import { PLAIN_AIR } from './track-air.ts';
import type { Start, Truth } from './track-air.ts';
import { chanceFrom } from './track-chance.ts';
import { flyOnce } from './track-flight.ts';
import { toolAdviser } from './track-pilots.ts';

const args = process.argv.slice(2);
const option = (name: string, fallback: number): number => {
  const at = args.indexOf(`--${name}`);
  return at < 0 ? fallback : Number(args[at + 1]);
};
const flights = option('flights', 100);
const seed = option('seed', 1);
const intervalS = option('interval', 60);
const testEvery = option('obs-test', 0);
const isJson = args.includes('--json');
/** Without DME only the faults that show without one are flown. */
const hasDme = !args.includes('--no-dme');

/** A fault: what it does to a reading from its first reading on. */
interface Fault {
  readonly name: string;
  /** Alerts that name it rightly. */
  readonly kinds: readonly string[];
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
    spoil: (reading) => withNeedle(reading, 0),
  },
  {
    name: 'DME frozen',
    kinds: ['dme-not-moving'],
    spoil: (reading, _truth, memory) => {
      memory.frozenDmeNm ??= reading.dmeNm ?? 0;
      return { ...reading, dmeNm: memory.frozenDmeNm };
    },
  },
  {
    name: 'DME of another station',
    kinds: ['dme-disagrees', 'wrong-station'],
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
    spoil: (reading) => withNeedle(reading, -(reading.needleDots ?? 0)),
  },
  {
    name: 'flag reversed',
    kinds: ['reverse-sensing'],
    spoil: (reading) =>
      reading.flag === 'off'
        ? reading
        : { ...reading, flag: reading.flag === 'to' ? 'from' : 'to' },
  },
];

const STARTS: readonly Start[] = [
  { direction: 'from', kind: 'near', hasDme },
  { direction: 'from', kind: 'icpt', hasDme },
  { direction: 'to', kind: 'near', hasDme },
  { direction: 'to', kind: 'icpt', hasDme },
];

const print = (line: string): void => {
  if (!isJson) console.log(line);
};
const figures: { name: string; value: number; goal: number | null }[] = [];

/**
 * Asked to read again, beyond the horizon, or (without DME, where OFF may be the cone or a lost signal) told what a
 * true OFF may mean: none of these is a false alarm.
 */
function isNoAlarm(kind: string): boolean {
  const harmless = ['readings-disagree', 'outside-reception', ...(hasDme ? [] : ['flag-off'])];
  return harmless.includes(kind);
}

function cleanHours(): void {
  const onsets = new Map<string, number>();
  let minutes = 0;
  STARTS.forEach((start, which) => {
    for (let index = 0; index < flights; index += 1) {
      let standing = new Set<string>();
      const result = flyOnce({
        start,
        air: PLAIN_AIR,
        intervalS,
        seed: (seed * 10 + which) * 100_003 + index,
        adviser: (truth) => toolAdviser(truth),
        obsOffsetDeg: (number) => (testEvery > 0 && number % testEvery === testEvery - 1 ? -3 : 0),
        watch: (_truth, adviser) => {
          const estimate = adviser.estimate();
          if (!estimate) return;
          const now = new Set<string>(alertsOf(estimate).map((each) => each.kind));
          for (const kind of now) {
            if (!standing.has(kind)) {
              onsets.set(kind, (onsets.get(kind) ?? 0) + 1);
              onsets.set(
                'any but a repeat',
                (onsets.get('any but a repeat') ?? 0) + (isNoAlarm(kind) ? 0 : 1),
              );
            }
          }
          standing = now;
        },
      });
      minutes += result.minutes;
    }
  });
  const hours = minutes / 60;
  print(`clean: ${hours.toFixed(0)} h`);
  for (const [kind, count] of onsets)
    print(`  ${kind}: ${count}, ${(count / hours).toFixed(3)} per hour`);
  figures.push({
    name: 'false alarms per hour',
    value: (onsets.get('any but a repeat') ?? 0) / hours,
    goal: 0.05,
  });
}

function fault(each: Fault, start: Start, fromReading: number): void {
  const delays: number[] = [];
  const named = new Map<string, number>();
  let flown = 0;
  for (let index = 0; index < flights; index += 1) {
    const memory: Memory = {};
    const chance = chanceFrom(index + 5);
    const begins = fromReading + Math.floor(chance.uniform(0, 3));
    let found = -1;
    let readings = 0;
    flyOnce({
      start,
      air: PLAIN_AIR,
      intervalS,
      seed: (seed * 10 + 7) * 100_003 + index,
      adviser: (truth) => toolAdviser(truth),
      obsOffsetDeg: (number) => (testEvery > 0 && number % testEvery === testEvery - 1 ? -3 : 0),
      spoil: (reading, truth, number) =>
        number >= begins ? each.spoil(reading, truth, memory) : reading,
      longestMin: 45,
      watch: (_truth, adviser, number) => {
        const estimate = adviser.estimate();
        if (!estimate || number < begins || found >= 0) return;
        readings = number - begins + 1;
        const kinds = alertsOf(estimate)
          .map((one) => one.kind)
          .filter((kind) => kind !== 'readings-disagree');
        if (kinds.length === 0) return;
        found = readings;
        const name = kinds.find((kind) => each.kinds.includes(kind)) ?? kinds[0] ?? '';
        named.set(name, (named.get(name) ?? 0) + 1);
      },
    });
    if (readings >= 3 || found >= 0) flown += 1;
    if (found >= 0) delays.push(found);
  }
  delays.sort((one, other) => one - other);
  const at = (part: number): number =>
    delays[Math.min(delays.length - 1, Math.floor(part * delays.length))] ?? NaN;
  const names = [...named].map(([kind, count]) => `${kind} ${count}`).join(', ');
  print(
    `${each.name}, ${start.direction}, from reading ${fromReading}: found ${delays.length} of ${flown}, delay ${at(0.5)} / ${at(0.9)} readings; ${names}`,
  );
  figures.push({
    name: `${each.name}, ${start.direction}: median delay, readings`,
    value: at(0.5),
    goal: null,
  });
}

cleanHours();
const fromStart = STARTS[0];
const toStart = STARTS[2];
for (const each of args.includes('--clean') ? [] : FAULTS) {
  if (!hasDme && each.name.includes('DME')) continue;
  for (const start of [fromStart, toStart]) {
    if (start) fault(each, start, start.direction === 'to' ? 5 : 8);
  }
}
if (isJson) console.log(JSON.stringify(figures, null, 2));
