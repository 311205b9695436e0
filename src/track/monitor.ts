import { lineOfSightNm } from '../station/line-of-sight.ts';
import type { Doubt, Estimate } from './estimate-record.ts';
import type { Alert, AlertKind } from './guidance.ts';
import { oddReadingAsk } from './odd-reading.ts';
import { withOneCheck } from './one-check.ts';
import { lnRangeSd } from './place.ts';
import { reverseAsk, reverseCause } from './reverse-sensing.ts';
import { isConePossible, isOffTheCone } from './take-in.ts';
import { LEAST_COUNT, SURER_WITHOUT_DME, isJumpTold } from './told-jump.ts';

/**
 * Weights at which a suspicion is told, logarithms of likelihood ratios. Tuned by simulation
 * (tests/bench/track-faults.ts): less than one false alarm in 20 hours in all, with DME and without.
 */
const STUCK_NEEDLE = 5;
const STUCK_DME = 5;
/** So surely a DME that stands still is told at its first repetition: the wind it would mean is absurd. */
const STUCK_DME_AT_ONCE = 8;
/** So far beyond the horizon it is told, and the range must be known this well. Common practice, no source. */
const BEYOND_HORIZON = 1.05;
const RANGE_KNOWN_SD = 0.15;

const ASK: Readonly<Record<AlertKind, string>> = {
  'needle-not-moving': 'Turn the OBS ten degrees and see the needle move.',
  'wrong-station': 'Check the frequency and listen to the ident.',
  'dme-not-moving': 'Watch the DME for a minute: does the distance change? Listen to its ident.',
  'dme-disagrees': 'Check the frequency that the DME is tuned to and listen to its ident.',
  'heading-indicator-disagrees': 'Fly level and compare the direction indicator with the compass.',
  'reverse-sensing': 'Read the flag and the course on the OBS again.',
  'flag-off': 'The flag shows OFF: do not use the needle. Check frequency, ident and altitude.',
  'ident-not-confirmed': 'Listen to the ident.',
  'outside-reception': 'You may be beyond reception. Check the ident, and climb if you can.',
  'readings-disagree': 'Please read the panel again.',
};

function alert(kind: AlertKind, ask = ASK[kind]): Alert {
  return { kind, ask };
}

/** What was understood of the part of a reading that does not fit, so that a slip is noticed. */
function understood({ misfit, reading }: Doubt): string {
  const parts: string[] = [];
  const dots = reading.needleDots;
  if (misfit.needle && dots !== undefined) {
    const side = dots < 0 ? 'left' : 'right';
    parts.push(dots === 0 ? 'needle centred' : `needle ${Math.abs(dots)} ${side}`);
  }
  if (misfit.dme && reading.dmeNm !== undefined) parts.push(`distance ${reading.dmeNm}`);
  return parts.length > 0
    ? `I understood ${parts.join(', ')}. It does not fit: please read again.`
    : ASK['readings-disagree'];
}

/** A heading that the needle and the distance speak against. */
function headingAlert(headingDeg: number): Alert {
  const figures = String(Math.round(headingDeg) % 360 || 360).padStart(3, '0');
  return alert(
    'readings-disagree',
    `I understood heading ${figures}. It does not fit: please read it again.`,
  );
}

/** What readings in doubt point to. */
function doubtAlert(doubt: Doubt): Alert {
  const { needle, dme, flag } = doubt.misfit;
  if (flag && !dme) return alert('reverse-sensing');
  if (dme && !needle && !flag && doubt.isDmeStill) return alert('dme-not-moving');
  if (doubt.count < LEAST_COUNT) return alert('readings-disagree', understood(doubt));
  if (dme && !needle && !flag) return alert('dme-disagrees');
  if (dme) return alert('wrong-station');
  return alert('readings-disagree', understood(doubt));
}

function isFlagOff(estimate: Estimate): boolean {
  if (estimate.flag !== 'off') return false;
  if (!estimate.isPlaced) return estimate.scene.isTo;
  return !isOffTheCone(estimate.belief, estimate.scene);
}

/** With the distance unknown OFF may also be the cone. */
function offAsk({ belief, scene, isPlaced }: Estimate): string {
  return isPlaced && isConePossible(belief, scene) ? MAYBE_CONE : ASK['flag-off'];
}

const MAYBE_CONE =
  'OFF: over the station, or the signal is lost. Hold the heading and check the ident.';

function isBeyondReception({ belief, leg, isPlaced }: Estimate): boolean {
  if (!isPlaced || lnRangeSd(belief) > RANGE_KNOWN_SD) return false;
  const horizonNm = lineOfSightNm(leg.leg.altitudeFt, leg.leg.station.elevationFt);
  return Math.exp(belief.mean.lnRange) > BEYOND_HORIZON * horizonNm;
}

/** What the suspicions that run beside the tracking have come to. */
function watchAlerts(estimate: Estimate, isReversed: boolean): readonly Alert[] {
  const { watch, scene } = estimate;
  const surer = scene.dme ? 0 : SURER_WITHOUT_DME;
  const alerts: Alert[] = [];
  const isTold = (each: { weight: number; count: number }, limit: number): boolean =>
    each.weight >= limit && each.count >= LEAST_COUNT;
  if (isTold(watch.stuckNeedle, STUCK_NEEDLE + surer)) alerts.push(alert('needle-not-moving'));
  const isStillAtOnce = watch.stuckDme.weight >= STUCK_DME_AT_ONCE;
  if (isStillAtOnce || isTold(watch.stuckDme, STUCK_DME)) alerts.push(alert('dme-not-moving'));
  if (isJumpTold(estimate, isReversed)) {
    alerts.push(alert('heading-indicator-disagrees'));
  }
  return alerts;
}

/** A place that has jumped: with the distance in it, the station or its DME is another one. */
function jumpAlerts({ jump }: Estimate): readonly Alert[] {
  if (!jump?.misfit.dme) return [];
  return [alert(jump.misfit.needle || jump.misfit.flag ? 'wrong-station' : 'dme-disagrees')];
}

/** What does not fit in the readings so far; each alert names the one check that settles it. */
export function alertsOf(estimate: Estimate): readonly Alert[] {
  const alerts: Alert[] = [];
  if (isFlagOff(estimate)) alerts.push(alert('flag-off', offAsk(estimate)));
  const reversed = reverseCause(estimate);
  if (reversed) alerts.push(alert('reverse-sensing', reverseAsk(estimate, reversed)));
  if (estimate.headingDoubtDeg !== null) alerts.push(headingAlert(estimate.headingDoubtDeg));
  if (estimate.doubt && !estimate.overStation) alerts.push(doubtAlert(estimate.doubt));
  const oddAsk = oddReadingAsk(estimate);
  if (oddAsk !== null) alerts.push(alert('readings-disagree', oddAsk));
  alerts.push(...jumpAlerts(estimate));
  if (estimate.isLost) alerts.push(alert('readings-disagree'));
  if (isBeyondReception(estimate)) alerts.push(alert('outside-reception'));
  alerts.push(...watchAlerts(estimate, reversed === 'needle-backwards'));
  const different = alerts.filter(
    ({ kind }, index) => alerts.findIndex((other) => other.kind === kind) === index,
  );
  return withOneCheck(different, estimate, reversed, ASK['wrong-station']);
}
