import type { Estimate } from './estimate-record.ts';
import type { Alert } from './guidance.ts';

/** What does not fit in the readings so far; each alert names the one check that settles it. */
export function alertsOf(estimate: Estimate): readonly Alert[] {
  return estimate.doubt ? [{ kind: 'readings-disagree', ask: 'Please read the panel again.' }] : [];
}
