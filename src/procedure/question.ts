import type { Estimate } from '../track/estimate.ts';
import type { Guidance, Question } from '../track/guidance.ts';

/**
 * The question of the estimate, where it is worth a pilot's attention now; null: the usual reading will do.
 *
 * Nobody turns the OBS for a test over the station or in the last two miles, and a leg that begins with a
 * known place does not begin by looking for it.
 */
export function worthAsking(known: Estimate, { phase, nextQuestion }: Guidance): Question | null {
  if (phase === 'lost' || phase === 'passage') return null;
  if (known.rangeCheck.kind === 'flying') return 'centre-needle-from';
  if (nextQuestion === 'turn-obs-three-left' || nextQuestion === 'compare-compass') {
    return phase === 'near-station' || phase === 'arriving' ? null : nextQuestion;
  }
  const isKnownStart = known.readings.length === 0 && known.isPlaced;
  return nextQuestion === 'centre-needle-from' && isKnownStart ? null : nextQuestion;
}
