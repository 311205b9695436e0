import type { Reading } from '../../src/track/reading.ts';
import { half, toPlaneDeg } from './track-air.ts';
import type { Truth } from './track-air.ts';
import type { Adviser, Told } from './track-pilots.ts';

const FIRST_CORRECTION_DEG = 20;
const GREATEST_CORRECTION_DEG = 40;
const LEAST_CORRECTION_DEG = 5;
const STEEPEST_DEG = 90;

/** Dots off the leg's own course, right positive; with the needle centred on another setting, from that. */
function dotsOff(reading: Reading, truth: Truth): number {
  const turned = half(reading.courseSetDeg - truth.leg.courseDeg);
  if (Math.abs(turned) < 5) return reading.needleDots ?? 0;
  const off = half(turned - (truth.isTo ? 180 : 0));
  return (truth.isTo ? off : -off) / 2;
}

/** What the bracketing pilot has found out so far. */
interface Bracket {
  /** Heading that is thought to keep the course, magnetic. */
  referenceDeg: number;
  correctionDeg: number;
  /** Side to which a correction is being flown: 1 right, -1 left, 0 none. */
  side: number;
  lastDots: number;
  isIntercepting: boolean;
  /** Angle of the intercept, and for how many readings it has not helped. */
  cutDeg: number;
  idle: number;
}

/** The next heading by the handbook. */
function nextHeading(bracket: Bracket, dots: number, thresholdDots: number): number {
  const away = Math.abs(dots);
  if (bracket.isIntercepting) {
    if (bracket.side * dots > 0.25) {
      bracket.idle = away >= Math.min(5, Math.abs(bracket.lastDots)) ? bracket.idle + 1 : 0;
      if (bracket.idle >= 3) {
        bracket.cutDeg = Math.min(STEEPEST_DEG, bracket.cutDeg + 15);
        bracket.idle = 0;
      }
      return bracket.referenceDeg + bracket.side * bracket.cutDeg;
    }
    bracket.isIntercepting = false;
    bracket.side = 0;
  }
  if (bracket.side !== 0) {
    if (bracket.side * dots <= 0.25) {
      bracket.referenceDeg += (bracket.side * bracket.correctionDeg) / 2;
      bracket.correctionDeg = Math.max(LEAST_CORRECTION_DEG, bracket.correctionDeg / 2);
      bracket.side = 0;
    } else if (away > Math.abs(bracket.lastDots)) {
      bracket.correctionDeg = Math.min(GREATEST_CORRECTION_DEG, 2 * bracket.correctionDeg);
    }
  }
  if (bracket.side === 0 && away >= thresholdDots) bracket.side = Math.sign(dots);
  return bracket.referenceDeg + bracket.side * bracket.correctionDeg;
}

/**
 * Handbook bracketing: intercept at twice the angle off, 20 to 45 degrees, steeper where the needle does
 * not come alive in three readings; on course fly the course; when the
 * needle leaves by the threshold turn 20 degrees into it, when it is back take out half, and so on with smaller
 * changes. *Source:* FAA-H-8083-15B, Instrument Flying Handbook, pages
 * 9-13 and 9-14. The text leaves open when the needle has left (the threshold), and what to do where a correction no
 * longer holds: doubled up to 40 degrees here, in its favour, as is the intercept that becomes steeper. Without the
 * doubling it loses the radial in many flights.
 */
export function bracketingAdviser(truth: Truth, thresholdDots: number): Adviser {
  const courseDeg = truth.courseDeg - toPlaneDeg(truth);
  let bracket: Bracket | null = null;
  return {
    answer: (reading): Told => {
      const dots = dotsOff(reading, truth);
      bracket ??= {
        referenceDeg: courseDeg,
        correctionDeg: FIRST_CORRECTION_DEG,
        side: Math.sign(dots),
        lastDots: dots,
        isIntercepting: Math.abs(dots) >= 1,
        cutDeg: Math.min(45, Math.max(FIRST_CORRECTION_DEG, 4 * Math.abs(dots))),
        idle: 0,
      };
      const held = reading.flag === 'off' ? bracket.referenceDeg : null;
      const heading = Math.round(held ?? nextHeading(bracket, dots, thresholdDots));
      bracket.lastDots = dots;
      const headingDeg = ((heading % 360) + 360) % 360;
      return { headingDeg, holdS: 9999, thenHeadingDeg: headingDeg };
    },
    wantsCentred: () => false,
    wantsRepeat: () => false,
    estimate: () => null,
  };
}
