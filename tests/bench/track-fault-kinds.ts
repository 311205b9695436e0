import type { Reading } from '../../src/track/reading.ts';
import type { Truth } from './track-air.ts';
import type { Chance } from './track-chance.ts';

/** How long a direction indicator drifts. */
const DRIFT_S = 120;

/** A fault: what it does to a reading from its first reading on. */
export interface Fault {
  readonly name: string;
  /** Alerts that name it rightly. */
  readonly kinds: readonly string[];
  /** Median delay to stay under, readings; null: none set. */
  readonly goal: number | null;
  readonly spoil?: (reading: Reading, truth: Truth, memory: Memory) => Reading;
  /** What happens to the aircraft after the last good reading. */
  readonly begin?: (truth: Truth, chance: Chance) => void;
  /** So many in a hundred flights may end without a word, on a leg from and to the station; left out: not counted. */
  readonly untoldGoals?: { readonly from: number; readonly to: number };
}

/** What a fault remembers of a flight. */
export interface Memory {
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
  {
    name: 'direction indicator drifts 10 to 20 degrees in 2 min',
    kinds: ['heading-indicator-disagrees'],
    goal: null,
    begin: (truth, chance) => {
      const side = chance.uniform(-1, 1) < 0 ? -1 : 1;
      truth.indicatorDriftDegPerS = (side * chance.uniform(10, 20)) / DRIFT_S;
      truth.indicatorDriftUntilS = truth.timeS + DRIFT_S;
    },
    untoldGoals: { from: 35, to: 50 },
  },
];

/** The faults that are flown. */
export function faultsToFly(): readonly Fault[] {
  return FAULTS;
}
