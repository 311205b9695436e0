import { callsBetween } from '../procedure/calls.ts';
import type { Call } from '../procedure/call.ts';
import { ICAO_MANNER } from '../speech/numbers.ts';
import type { Manner } from '../speech/numbers.ts';
import type { FlightState } from './state.ts';

/**
 * The call-outs of a flight that fall due after `fromMs` and not after `toMs`, as `callsBetween` gives them.
 *
 * `said`: keys already spoken. None before the first answer and after the flight is over.
 */
export function callsDue(
  state: FlightState,
  fromMs: number,
  toMs: number,
  manner: Manner = ICAO_MANNER,
  said?: ReadonlySet<string>,
): readonly Call[] {
  const { plan, estimate, advice, legIndex, finishedAtMs } = state;
  const answered = state.readings.findLast((record) => record.advice !== null);
  if (plan === null || estimate === null || advice === null) return [];
  if (answered === undefined || finishedAtMs !== null) return [];
  const next = plan.legs[legIndex + 1];
  const context = {
    leg: estimate.leg,
    legIndex,
    isLastLeg: legIndex === plan.legs.length - 1,
    estimate,
    advice,
    answeredAtMs: Math.max(answered.atMs, state.legs[legIndex]?.startedAtMs ?? 0),
    manner,
    ...(next === undefined ? {} : { next }),
  };
  return callsBetween(context, fromMs, toMs, said);
}
