import type { Reading } from '../../src/track/reading.ts';
import { alongNm, begin, fly, half, offDeg, readCentred, readPanel, tell } from './track-air.ts';
import type { Air, Start, Truth } from './track-air.ts';
import { chanceFrom } from './track-chance.ts';
import type { Chance } from './track-chance.ts';
import type { Adviser } from './track-pilots.ts';

/** Sums over seconds: how many, of needle^2 (deg^2), of distance^2 (NM^2). */
interface Sums {
  s: number;
  deg2: number;
  nm2: number;
}

/** What one flight came to. */
export interface FlightResult {
  /**
   * After 8 min, where the needle is to be followed: outside 1.2 cone radii and the last 45 s before the station.
   */
  readonly late: Sums;
  /** After 8 min, to the edge of the cone. */
  readonly edge: Sums;
  /** From the moment of establishing: first whole minute within half a dot. */
  readonly established: Sums;
  readonly establishMin: number;
  readonly changes: number;
  readonly minutes: number;
  /** On a leg to the station: distance at which it was passed, NM. */
  readonly missNm: number | null;
  /** Greatest needle on the far side before establishing. */
  readonly overshootDeg: number;
}

/** How a flight is flown. */
export interface FlightPlan {
  readonly start: Start;
  readonly air: Air;
  readonly intervalS: number;
  readonly seed: number;
  readonly adviser: (truth: Truth) => Adviser;
  /** Needle centred with FROM (the default), or read as it stands. */
  readonly firstReading?: 'centred' | 'plain';
  /** Centres the needle with FROM when asked to (the default). */
  readonly answersQuestions?: boolean;
  /** Reads the panel again at once when asked to; else the next reading comes at its time (the default). */
  readonly readsAgain?: boolean;
  readonly needleStepDots?: number;
  readonly readsHeading?: boolean;
  readonly obsOffsetDeg?: (readingNumber: number) => number;
  /** Changes a reading before the adviser gets it (typing errors, faults). */
  readonly spoil?: (reading: Reading, truth: Truth, number: number) => Reading;
  /** Called after each answer. */
  readonly watch?: (truth: Truth, adviser: Adviser, number: number) => void;
  readonly longestMin?: number;
  /** On a leg to the station: goes on for so long after passing it. */
  readonly flyOnMin?: number;
}

/** The run of a flight so far. */
interface Run {
  readonly late: Sums;
  readonly edge: Sums;
  readonly established: Sums;
  readonly startSide: number;
  told: { headingDeg: number; atS: number }[];
  number: number;
  commandedDeg: number;
  changes: number;
  withinS: number;
  establishS: number | null;
  overshootDeg: number;
  /** When the pilot reads again because the last reading was asked for again. */
  repeatAtS: number | null;
}

/** So long it takes to read the panel again, s. */
const REPEAT_S = 8;

const nothing = (): Sums => ({ s: 0, deg2: 0, nm2: 0 });

function add(sums: Sums, off: number, offNm: number): void {
  sums.s += 1;
  sums.deg2 += off * off;
  sums.nm2 += offNm * offNm;
}

/** Whether the needle is still to be followed: not in the last 45 s before the station. */
function isFollowed(truth: Truth, range: number): boolean {
  if (!truth.isTo) return true;
  return range > Math.max(1.2 * truth.coneNm, (truth.airspeedKt * 45) / 3600);
}

/** What the pilot reads off now. */
function readingOf(
  plan: FlightPlan,
  truth: Truth,
  adviser: Adviser,
  number: number,
  chance: Chance,
): Reading {
  const isFirst = number === 0 && plan.firstReading !== 'plain';
  if (isFirst || (plan.answersQuestions !== false && adviser.wantsCentred())) {
    return readCentred(truth, chance);
  }
  const habits = {
    needleStepDots: plan.needleStepDots ?? 0.5,
    readsHeading: plan.readsHeading ?? true,
    obsOffsetDeg: plan.obsOffsetDeg?.(number) ?? 0,
  };
  return readPanel(truth, habits, chance);
}

/** One reading, its answer, and what the answer tells the pilot to fly. */
function ask(plan: FlightPlan, truth: Truth, adviser: Adviser, run: Run, chance: Chance): void {
  const clean = readingOf(plan, truth, adviser, run.number, chance);
  const answer = adviser.answer(plan.spoil?.(clean, truth, run.number) ?? clean, truth);
  run.repeatAtS = plan.readsAgain === true && adviser.wantsRepeat() ? truth.timeS + REPEAT_S : null;
  plan.watch?.(truth, adviser, run.number);
  run.told = [{ headingDeg: answer.headingDeg, atS: truth.timeS }];
  if (Math.abs(half(answer.thenHeadingDeg - answer.headingDeg)) > 0.5) {
    run.told.push({ headingDeg: answer.thenHeadingDeg, atS: truth.timeS + answer.holdS });
  }
  run.number += 1;
}

/** The pilot takes up what is due. */
function obey(truth: Truth, run: Run, chance: Chance): void {
  while (run.told[0] && run.told[0].atS <= truth.timeS) {
    const next = run.told.shift();
    if (!next || Math.abs(half(next.headingDeg - run.commandedDeg)) <= 0.5) continue;
    run.changes += 1;
    run.commandedDeg = next.headingDeg;
    tell(truth, next.headingDeg, chance);
  }
}

/** Takes down one second outside the cone. */
function note(truth: Truth, run: Run, range: number): void {
  const off = offDeg(truth);
  const offNm = range * Math.sin((off * Math.PI) / 180);
  if (truth.timeS > 480) {
    add(run.edge, off, offNm);
    if (isFollowed(truth, range)) add(run.late, off, offNm);
  }
  run.withinS = Math.abs(off) <= 1 ? run.withinS + 1 : 0;
  if (run.withinS === 60) run.establishS ??= truth.timeS;
  if (run.establishS !== null) add(run.established, off, offNm);
  else if (off * run.startSide < 0) run.overshootDeg = Math.max(run.overshootDeg, Math.abs(off));
}

/** Flies one flight: readings at fixed times, the answers flown by hand. */
export function flyOnce(plan: FlightPlan): FlightResult {
  const chance = chanceFrom(plan.seed * 7919 + 17);
  const truth = begin(plan.start, plan.air, chance);
  const adviser = plan.adviser(truth);
  const longestS = 60 * (plan.longestMin ?? (truth.isTo ? 40 : 25));
  const run: Run = {
    late: nothing(),
    edge: nothing(),
    established: nothing(),
    startSide: Math.sign(offDeg(truth)),
    told: [],
    number: 0,
    commandedDeg: truth.targetDeg,
    changes: 0,
    withinS: 0,
    establishS: null,
    overshootDeg: 0,
    repeatAtS: null,
  };
  let missNm: number | null = null;
  let endS = longestS;
  while (truth.timeS < endS) {
    if (truth.timeS % plan.intervalS === 0 || truth.timeS === run.repeatAtS) {
      ask(plan, truth, adviser, run, chance);
    }
    obey(truth, run, chance);
    fly(truth, chance);
    if (missNm !== null) continue;
    const range = Math.hypot(truth.x, truth.y);
    if (truth.isTo && alongNm(truth) > 0) {
      missNm = range;
      endS = truth.timeS + 60 * (plan.flyOnMin ?? 0);
    } else if (range >= truth.coneNm) note(truth, run, range);
  }
  return {
    late: run.late,
    edge: run.edge,
    established: run.established,
    establishMin: (run.establishS ?? longestS) / 60,
    changes: run.changes,
    minutes: truth.timeS / 60,
    missNm,
    overshootDeg: run.overshootDeg,
  };
}
