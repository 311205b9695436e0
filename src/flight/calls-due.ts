import { callsBetween } from '../procedure/calls.ts';
import type { Call } from '../procedure/call.ts';
import { identKept } from './ident-kept.ts';
import { ICAO_MANNER } from '../speech/numbers.ts';
import type { Manner } from '../speech/numbers.ts';
import type { FlightState } from './state.ts';

/**
 * The call-outs of a flight that fall due after `fromMs` and not after `toMs`, as `callsBetween` gives them.
 *
 * `said`: keys already spoken. `identAgainMin`: minutes after which an ident that was confirmed is asked for
 * again; null: only when the answers have come to doubt the station. None before the first answer and after the flight is over.
 */
export function callsDue(
  state: FlightState,
  fromMs: number,
  toMs: number,
  manner: Manner = ICAO_MANNER,
  said?: ReadonlySet<string>,
  identAgainMin: number | null = null,
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
    ident: identKept(state, identAgainMin),
    ...(next === undefined ? {} : { next }),
  };
  return callsBetween(context, fromMs, toMs, said);
}
