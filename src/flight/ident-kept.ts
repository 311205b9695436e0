import type { IdentKept } from '../procedure/ident-kept.ts';
import type { AlertKind } from '../track/guidance.ts';
import type { FlightState } from './state.ts';

/** What makes it doubtful that this is the station: listening to the ident again tells. */
const DOUBTS: ReadonlySet<AlertKind> = new Set(['wrong-station', 'dme-disagrees']);

/** What the log says of the ident of the leg being flown. `againMin`: minutes; null: never again. */
export function identKept(state: FlightState, againMin: number | null): IdentKept {
  const { legs, legIndex } = state;
  return {
    confirmedAtMs: legs[legIndex]?.identConfirmedAtMs ?? null,
    againMin,
    doubtedSinceMs: doubtedSinceMs(state),
  };
}

/** The first of the answers, without a gap up to the one that stands, that doubt the station. */
function doubtedSinceMs({ readings, legIndex, advice }: FlightState): number | null {
  if (advice?.alerts.some(({ kind }) => DOUBTS.has(kind)) !== true) return null;
  const answers = readings.filter((each) => each.legIndex === legIndex && each.advice !== null);
  const clear = answers.findLastIndex(
    (each) => each.advice?.alerts.some(({ kind }) => DOUBTS.has(kind)) !== true,
  );
  return answers[clear + 1]?.atMs ?? null;
}
