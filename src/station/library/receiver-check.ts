import { turnDeg } from '../../base/angle.ts';

/** How a VOR receiver is checked, in the order of 14 CFR 91.171(b) and (c). */
export const CHECK_KINDS = [
  'test-signal',
  'ground-checkpoint',
  'airborne-checkpoint',
  'airway-point',
  'two-receivers',
] as const;

/**
 * A test signal (VOT), a designated checkpoint on the ground or in the air, a prominent point on the
 * centreline of an airway, or two receivers tuned to one station.
 */
export type CheckKind = (typeof CHECK_KINDS)[number];

/** By whose rule a check is judged; `own`: by figures that the pilot took from the rules that apply. */
export type CheckRules =
  | { readonly state: 'us' | 'canada' }
  | { readonly state: 'own'; readonly permittedDeg: number; readonly validDays: number };

/** One check of one receiver, or of two against each other, as it was made. */
export interface ReceiverCheck {
  readonly kind: CheckKind;
  /** Day and time, UTC: `2026-11-25`, `14:05`. */
  readonly dateIso: string;
  readonly timeUtc: string;
  readonly place: string;
  /** The station, or the test signal: an ident, a frequency, both. */
  readonly station: string;
  /** Empty: not named. */
  readonly aircraft: string;
  readonly receiver: string;
  /** The one that it was held against; null unless two receivers were. */
  readonly otherReceiver: string | null;
  /**
   * What the receiver should show, degrees, 0 to 360: the bearing of the checkpoint; for a test signal 0
   * (FROM) or 180 (TO); with two receivers what the other one shows.
   */
  readonly expectedDeg: number;
  /** What it does show, degrees, 0 to 360. */
  readonly indicatedDeg: number;
  readonly who: string;
  /** The rules that it was judged by when it was made: a later choice does not rewrite the log. */
  readonly rules: CheckRules;
}

/** What a check comes to. */
export interface CheckOutcome {
  /** Indicated less expected, degrees, -180 < x <= 180; for two receivers how far this one is from the other. */
  readonly errorDeg: number;
  /** Null: these rules, as known here, have no figure for it. */
  readonly permittedDeg: number | null;
  /** Null where there is no figure to judge by. */
  readonly isPassed: boolean | null;
  /** Nearly opposite: one bearing was perhaps read TO and the other FROM. */
  readonly isReciprocal: boolean;
}

/** What a test signal should show with the needle centred. *Source:* FAA AIM 1-1-4 b. */
export const TEST_SIGNAL_DEG = { from: 0, to: 180 } as const;

/** *Source:* 14 CFR 91.171(b)(1)-(4) and (c); 6.1-6.5 of the reference values. */
const US_PERMITTED_DEG: Readonly<Record<CheckKind, number>> = {
  'test-signal': 4,
  'ground-checkpoint': 4,
  'airborne-checkpoint': 6,
  'airway-point': 6,
  'two-receivers': 4,
};

/**
 * *Source:* Transport Canada AIM as quoted by training pages (6.11-6.13 of the reference values, read at
 * second hand): two receivers 4 degrees, over a landmark on a published radial 6, checkpoint 4. None was
 * found for a test signal.
 */
const CANADA_PERMITTED_DEG: Readonly<Record<CheckKind, number | null>> = {
  'test-signal': null,
  'ground-checkpoint': 4,
  'airborne-checkpoint': 6,
  'airway-point': 6,
  'two-receivers': 4,
};

/** How far from the opposite bearing still looks like one read the wrong way round, degrees. */
const NEAR_OPPOSITE_DEG = 20;

/** The permitted error, degrees; null where these rules, as known here, have no figure for it. */
export function permittedErrorDeg(kind: CheckKind, rules: CheckRules): number | null {
  if (rules.state === 'own') return rules.permittedDeg;
  return rules.state === 'us' ? US_PERMITTED_DEG[kind] : CANADA_PERMITTED_DEG[kind];
}

/**
 * Days for which a check stands; null where none is known here.
 *
 * *Source:* 14 CFR 91.171(a)(2): within the preceding 30 days, for IFR only. For Canada no interval was
 * found in the sources at hand.
 */
export function validityDays(rules: CheckRules): number | null {
  if (rules.state === 'own') return rules.validDays;
  return rules.state === 'us' ? 30 : null;
}

/**
 * The error of a check, and whether it is within what is permitted: the limit itself passes, 4.0 of 4;
 * 4.1 does not. Both bearings finite, degrees.
 */
export function outcomeOf(
  check: Pick<ReceiverCheck, 'kind' | 'expectedDeg' | 'indicatedDeg' | 'rules'>,
): CheckOutcome {
  // 94.1 less 90.1 is a little over 4 in the figures of the machine: to the millionth of a degree.
  const errorDeg = Math.round(turnDeg(check.expectedDeg, check.indicatedDeg) * 1e6) / 1e6 + 0;
  const permittedDeg = permittedErrorDeg(check.kind, check.rules);
  return {
    errorDeg,
    permittedDeg,
    isPassed: permittedDeg === null ? null : Math.abs(errorDeg) <= permittedDeg,
    isReciprocal: Math.abs(errorDeg) >= 180 - NEAR_OPPOSITE_DEG,
  };
}
