import { alongNm, begin, fly, half, offDeg, readCentred, readPanel, tell } from './track-air.ts';
import type { Air, Start, Truth } from './track-air.ts';
import { chanceFrom } from './track-chance.ts';
import type { Adviser } from './track-pilots.ts';
import type { Reading } from '../../src/track/reading.ts';

/** What one flight came to. */
export interface FlightResult {
  /**
   * Sums over the seconds after 8 min in which the needle is to be followed (outside the last 45 s and 1.2 cone
   * radii before the station): of 1, of needle^2 (deg^2), of distance^2 (NM^2); and of needle^2 to the cone's edge.
   */
  readonly lateS: number;
  readonly lateDeg2: number;
  readonly lateNm2: number;
  readonly edgeS: number;
  readonly edgeDeg2: number;
  /** The same after establishing. */
  readonly establishedS: number;
  readonly establishedNm2: number;
  readonly establishMin: number;
  readonly changes: number;
  readonly minutes: number;
  /** On a leg to the station: distance at which it was passed, NM. */
  readonly missNm: number | null;
  readonly overshootDeg: number;
}

/** How a flight is flown. */
export interface FlightPlan {
  readonly start: Start;
  readonly air: Air;
  readonly intervalS: number;
  readonly seed: number;
  readonly adviser: (truth: Truth) => Adviser;
  readonly firstReading?: 'centred' | 'plain';
  readonly needleStepDots?: number;
  readonly readsHeading?: boolean;
  readonly obsOffsetDeg?: (readingNumber: number) => number;
  /** Changes a reading before the adviser gets it (typing errors, faults). */
  readonly spoil?: (reading: Reading, truth: Truth, number: number) => Reading;
  /** Called after each answer. */
  readonly watch?: (truth: Truth, adviser: Adviser, number: number) => void;
  readonly longestMin?: number;
}

/** Whether the needle is still to be followed: not in the last 45 s before the station. */
function isFollowed(truth: Truth, range: number): boolean {
  if (!truth.isTo) return true;
  return range > Math.max(1.2 * truth.coneNm, (truth.airspeedKt * 45) / 3600);
}

/** Flies one flight: readings at fixed times, the answers flown by hand. */
export function flyOnce(plan: FlightPlan): FlightResult {
  const chance = chanceFrom(plan.seed * 7919 + 17);
  const truth = begin(plan.start, plan.air, chance);
  const adviser = plan.adviser(truth);
  const longestS = 60 * (plan.longestMin ?? (truth.isTo ? 40 : 25));
  let told: { headingDeg: number; atS: number }[] = [];
  let number = 0;
  let commanded = truth.targetDeg;
  const tally = {
    lateS: 0,
    lateDeg2: 0,
    lateNm2: 0,
    edgeS: 0,
    edgeDeg2: 0,
    s: 0,
    nm2: 0,
    changes: 0,
    within: 0,
    establishS: -1,
  };
  let overshootDeg = 0;
  let startSide = Math.sign(offDeg(truth));
  let missNm: number | null = null;
  while (truth.timeS < longestS) {
    if (truth.timeS % plan.intervalS === 0) {
      const habits = {
        needleStepDots: plan.needleStepDots ?? 0.5,
        readsHeading: plan.readsHeading ?? true,
        obsOffsetDeg: plan.obsOffsetDeg?.(number) ?? 0,
      };
      const isCentred = number === 0 && (plan.firstReading ?? 'centred') === 'centred';
      const clean = isCentred ? readCentred(truth, chance) : readPanel(truth, habits, chance);
      const answer = adviser.answer(plan.spoil?.(clean, truth, number) ?? clean, truth);
      plan.watch?.(truth, adviser, number);
      told = [{ headingDeg: answer.headingDeg, atS: truth.timeS }];
      if (Math.abs(half(answer.thenHeadingDeg - answer.headingDeg)) > 0.5) {
        told.push({ headingDeg: answer.thenHeadingDeg, atS: truth.timeS + answer.holdS });
      }
      number += 1;
    }
    while (told[0] && told[0].atS <= truth.timeS) {
      const next = told.shift();
      if (next && Math.abs(half(next.headingDeg - commanded)) > 0.5) {
        tally.changes += 1;
        commanded = next.headingDeg;
        tell(truth, commanded, chance);
      }
    }
    fly(truth, chance);
    const range = Math.hypot(truth.x, truth.y);
    const along = alongNm(truth);
    if (truth.isTo && along > 0) {
      missNm = range;
      break;
    }
    const off = offDeg(truth);
    const offNm = range * Math.sin((off * Math.PI) / 180);
    if (range >= truth.coneNm) {
      if (truth.timeS > 480) {
        tally.edgeS += 1;
        tally.edgeDeg2 += off * off;
      }
      if (truth.timeS > 480 && isFollowed(truth, range)) {
        tally.lateS += 1;
        tally.lateDeg2 += off * off;
        tally.lateNm2 += offNm * offNm;
      }
      tally.within = Math.abs(off) <= 1 ? tally.within + 1 : 0;
      if (tally.within === 60 && tally.establishS < 0) tally.establishS = truth.timeS;
      if (tally.establishS >= 0) {
        tally.s += 1;
        tally.nm2 += offNm * offNm;
      } else if (startSide !== 0 && Math.sign(off) === -startSide) {
        overshootDeg = Math.max(overshootDeg, Math.abs(off));
      }
    }
  }
  startSide = 0;
  return {
    lateS: tally.lateS,
    lateDeg2: tally.lateDeg2,
    lateNm2: tally.lateNm2,
    edgeS: tally.edgeS,
    edgeDeg2: tally.edgeDeg2,
    establishedS: tally.s,
    establishedNm2: tally.nm2,
    establishMin: (tally.establishS < 0 ? longestS : tally.establishS) / 60,
    changes: tally.changes,
    minutes: truth.timeS / 60,
    missNm,
    overshootDeg,
  };
}
