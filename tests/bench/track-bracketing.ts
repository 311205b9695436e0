import type { Reading } from '../../src/track/reading.ts';
import { half, toPlaneDeg } from './track-air.ts';
import type { Truth } from './track-air.ts';
import type { Adviser } from './track-pilots.ts';

/** The ladder of corrections, degrees: normal, and in extreme wind. */
const FIRST_CORRECTION_DEG = 20;
const EXTREME_WIND_DEG = 40;
/** Limits of an intercept angle, degrees. */
const LEAST_INTERCEPT_DEG = 20;
const GREATEST_INTERCEPT_DEG = 90;
/** The needle's stop, degrees. */
const FULL_SCALE_DEG = 10;
/** A needle within this counts as centred: it is read to half a dot, a degree. */
const CENTRED_WITHIN_DEG = 0.5;
/** An intercept is judged after so long, s: it should have come nearer by this, degrees; else it is made steeper. */
const INTERCEPT_PATIENCE_S = 120;
const INTERCEPT_GAIN_DEG = 1;
/** Inbound by DME the last minute or so: the needle swings, and is not chased. */
const NOT_CHASED_NM = 1.5;

/** What the published steps leave to the pilot. */
export interface Habits {
  /** A needle so far off begins a correction, dots. */
  readonly thresholdDots: number;
  /** How long a correction is given before it is judged not to hold, s. */
  readonly patienceS: number;
  /** Smallest correction, degrees. */
  readonly leastCorrectionDeg: number;
  /** Begins an intercept that does not come nearer anew, and steeper; also one for a needle that ran onto its stop. */
  readonly interceptsAgain: boolean;
}

/** As published: the intercept is held until the needle centres; a minute for each correction, the last ones of 2 degrees. */
export const AS_PUBLISHED: Omit<Habits, 'thresholdDots'> = {
  patienceS: 60,
  leastCorrectionDeg: 2,
  interceptsAgain: false,
};
/** With all favours: a correction is changed at the next reading, and stays 5 degrees; intercepts are made steeper. */
export const ALL_FAVOURS: Omit<Habits, 'thresholdDots'> = {
  patienceS: 0,
  leastCorrectionDeg: 5,
  interceptsAgain: true,
};

/** What a bracketing pilot goes by at one reading. */
export interface Sight {
  readonly atS: number;
  /** Off the course, right positive; on the stop: at least. */
  readonly offDeg: number;
  readonly isOnStop: boolean;
}

/** What the pilot has found out so far. */
export interface Bracketing {
  /** Heading that is thought to keep the course, magnetic. */
  referenceDeg: number;
  /** Side to which is corrected or intercepted: 1 right, -1 left, 0 none; and by how much. */
  side: number;
  correctionDeg: number;
  isIntercepting: boolean;
  /** When and from where that was begun, or last judged. */
  sinceS: number;
  sinceAwayDeg: number;
  last: Sight;
  /** Has to centre the needle to see how far off the radial is. */
  wantsCentred: boolean;
}

/** The beginning, where the first reading shows how far off the radial is: an intercept, or the course. */
export function beginBracketing(courseDeg: number, sight: Sight, habits: Habits): Bracketing {
  const bracketing: Bracketing = {
    referenceDeg: courseDeg,
    side: 0,
    correctionDeg: FIRST_CORRECTION_DEG,
    isIntercepting: false,
    sinceS: sight.atS,
    sinceAwayDeg: Math.abs(sight.offDeg),
    last: sight,
    wantsCentred: false,
  };
  if (isAway(sight, habits)) beginIntercept(bracketing, sight, LEAST_INTERCEPT_DEG);
  return bracketing;
}

/** The heading after one more reading. */
export function bracket(bracketing: Bracketing, sight: Sight, habits: Habits): number {
  bracketing.wantsCentred = false;
  if (bracketing.isIntercepting) intercept(bracketing, sight, habits);
  if (!bracketing.isIntercepting) correct(bracketing, sight, habits);
  bracketing.last = sight;
  return headingOf(bracketing);
}

/** The heading of the moment, magnetic. */
export function headingOf({ referenceDeg, side, correctionDeg }: Bracketing): number {
  return referenceDeg + side * correctionDeg;
}

function isAway({ offDeg }: Sight, { thresholdDots }: Habits): boolean {
  return Math.abs(offDeg) >= 2 * thresholdDots;
}

function begin(bracketing: Bracketing, sight: Sight): void {
  bracketing.side = Math.sign(sight.offDeg);
  bracketing.sinceS = sight.atS;
  bracketing.sinceAwayDeg = Math.abs(sight.offDeg);
}

function beginIntercept(bracketing: Bracketing, sight: Sight, leastDeg: number): void {
  begin(bracketing, sight);
  bracketing.isIntercepting = true;
  const doubledDeg = 2 * Math.abs(sight.offDeg);
  bracketing.correctionDeg = Math.min(GREATEST_INTERCEPT_DEG, Math.max(leastDeg, doubledDeg));
}

/** An intercept ends where the needle centres, or is nearer to it than it will be at the next reading. */
function intercept(bracketing: Bracketing, sight: Sight, { interceptsAgain }: Habits): void {
  const { side, last, sinceS, sinceAwayDeg, correctionDeg } = bracketing;
  const awayDeg = side * sight.offDeg;
  const gainedDeg = Math.abs(last.offDeg) < FULL_SCALE_DEG ? side * last.offDeg - awayDeg : 0;
  if (awayDeg <= CENTRED_WITHIN_DEG || (!sight.isOnStop && awayDeg < gainedDeg / 2)) {
    bracketing.isIntercepting = false;
    bracketing.side = 0;
    bracketing.correctionDeg = FIRST_CORRECTION_DEG;
  } else if (interceptsAgain && sight.atS - sinceS >= INTERCEPT_PATIENCE_S) {
    bracketing.wantsCentred = sight.isOnStop;
    if (sight.isOnStop) return;
    const steeperDeg = Math.max(correctionDeg + FIRST_CORRECTION_DEG, 2 * awayDeg);
    const hasGained = awayDeg < sinceAwayDeg - INTERCEPT_GAIN_DEG;
    begin(bracketing, sight);
    if (!hasGained) bracketing.correctionDeg = Math.min(GREATEST_INTERCEPT_DEG, steeperDeg);
  }
}

/** The needle is back: half of the correction stays in, the next one is half as large. */
function takeOutHalf(bracketing: Bracketing, { leastCorrectionDeg }: Habits): void {
  const { side, correctionDeg } = bracketing;
  bracketing.referenceDeg += (side * correctionDeg) / 2;
  bracketing.correctionDeg = Math.max(leastCorrectionDeg, Math.floor(correctionDeg / 2));
  bracketing.side = 0;
}

/** The correction after one that does not hold. */
function moreThan(correctionDeg: number): number {
  return correctionDeg < FIRST_CORRECTION_DEG ? FIRST_CORRECTION_DEG : EXTREME_WIND_DEG;
}

/** A needle that has run onto its stop is intercepted once more, by the pilot who does that. */
function interceptAgain(bracketing: Bracketing, sight: Sight, { interceptsAgain }: Habits): void {
  if (interceptsAgain && sight.isOnStop) beginIntercept(bracketing, sight, EXTREME_WIND_DEG);
}

/** Corrections on course: into the needle; half taken out when it is back; more where it does not come back. */
function correct(bracketing: Bracketing, sight: Sight, habits: Habits): void {
  const { side, correctionDeg, sinceS, sinceAwayDeg } = bracketing;
  if (side !== 0 && side * sight.offDeg <= CENTRED_WITHIN_DEG) takeOutHalf(bracketing, habits);
  const isNew = bracketing.side === 0 && isAway(sight, habits);
  const isJudged = bracketing.side !== 0 && sight.atS - sinceS >= habits.patienceS;
  const isFailing = isJudged && Math.abs(sight.offDeg) > sinceAwayDeg;
  if (isNew || isJudged) begin(bracketing, sight);
  if (isFailing) bracketing.correctionDeg = moreThan(correctionDeg);
  if (isNew || isFailing) interceptAgain(bracketing, sight, habits);
}

/** What a reading tells: by the needle with the leg's course set, or by the OBS with the needle centred. */
function sightOf({ atMs, courseSetDeg, needleDots }: Reading, truth: Truth): Sight {
  const turned = half(courseSetDeg - truth.leg.courseDeg);
  const dots = needleDots ?? 0;
  const atS = atMs / 1000;
  if (Math.abs(turned) < 5) return { atS, offDeg: 2 * dots, isOnStop: Math.abs(dots) >= 5 };
  const off = half(turned - (truth.isTo ? 180 : 0));
  return { atS, offDeg: truth.isTo ? off : -off, isOnStop: false };
}

/**
 * A pilot who brackets by the book with the readings that the tool gets.
 *
 * The steps are published: intercept at twice the difference, 20 to 90 degrees, until the needle centres, leading
 * the turn; then fly the course; needle off, turn 20 degrees into it; back, take out half; again with smaller
 * changes: 20 (40 in extreme wind), then 10, 5, 2. The OBS stays. Near the station the needle is not chased.
 * *Source:* FAA-H-8083-15B, Instrument Flying Handbook, page 9-14; the ladder: "Insights: the funnel", AOPA Flight
 * Training, February 1999.
 *
 * What they leave open is flown as a competent pilot would. The needle is off at `thresholdDots`. A correction does
 * not hold when the needle is farther off after a minute (`patienceS`) than at its beginning: begin again with 20,
 * after that 40 (extreme wind). Not in the steps, and only flown with `interceptsAgain`: a needle that runs onto its
 * stop is intercepted again, at 40 at least; an intercept that has not come nearer by more than a degree in two
 * minutes (on the stop the needle is centred to see) is made 20 steeper. The turn onto the course is led by turning at the reading that is nearest to the centring. Over the cone, and in
 * the last mile and a half, the heading that is thought to keep the course is held.
 */
export function bracketingAdviser(truth: Truth, habits: Habits): Adviser {
  const courseDeg = truth.courseDeg - toPlaneDeg(truth);
  let bracketing: Bracketing | null = null;
  const nextHeading = (reading: Reading): number => {
    const sight = sightOf(reading, truth);
    if (bracketing === null) {
      bracketing = beginBracketing(courseDeg, sight, habits);
      return headingOf(bracketing);
    }
    const isNear = truth.isTo && (reading.dmeNm ?? Infinity) < NOT_CHASED_NM;
    if (reading.flag === 'off' || isNear) return bracketing.referenceDeg;
    return bracket(bracketing, sight, habits);
  };
  return {
    answer: (reading) => {
      const headingDeg = ((Math.round(nextHeading(reading)) % 360) + 360) % 360;
      return { headingDeg, holdS: 9999, thenHeadingDeg: headingDeg };
    },
    wantsCentred: () => bracketing?.wantsCentred ?? false,
    wantsRepeat: () => false,
    estimate: () => null,
  };
}
