import { foresee } from '../track/foresee.ts';
import type { Foresight } from '../track/foresight.ts';
import type { FlightState } from './state.ts';

/**
 * What the panel should show at a moment, if the standing answer is being flown; the page fills it in
 * before the pilot reads. Null before anything tells where the aircraft is, and after the flight is over.
 */
export function expectedAt(state: FlightState, atMs: number): Foresight | null {
  const { estimate, finishedAtMs } = state;
  if (estimate?.isPlaced !== true || finishedAtMs !== null) return null;
  return foresee(estimate, estimate.leg, atMs);
}
