import type { Estimate } from './estimate-record.ts';
import type { Alert, AlertKind, ReverseCause } from './guidance.ts';

/** What the ident settles as well, where another station may be tuned. */
const SETTLED_BY_IDENT: readonly AlertKind[] = ['wrong-station', 'dme-disagrees', 'dme-not-moving'];

/**
 * The alerts of which one fault raises several, left with the one whose check tells the candidates apart; others stay.
 *
 * Another station moves needle, flag and distance at once: the ident tells that from an OBS or a flag read wrongly and
 * from a DME that is tuned elsewhere. Needle and DME both against the place are taken for that too. A DME that
 * shows the same again is stuck rather than another one. A reading is asked for again beside none of these, unless
 * the picture is lost. `identAsk`: the words that ask for the ident.
 */
export function withOneCheck(
  alerts: readonly Alert[],
  estimate: Estimate,
  reversed: ReverseCause | null,
  identAsk: string,
): readonly Alert[] {
  const has = (kind: AlertKind): boolean => alerts.some((each) => each.kind === kind);
  const without = (kinds: readonly AlertKind[]): readonly Alert[] =>
    alerts.filter(({ kind }) => !kinds.includes(kind));
  const again: readonly AlertKind[] = estimate.isLost ? [] : ['readings-disagree'];
  const isGuessed = reversed === 'flag-against-place' || reversed === 'needle-backwards';
  if (has('wrong-station') || (isGuessed && has('dme-disagrees'))) {
    const settled: readonly AlertKind[] = isGuessed ? ['reverse-sensing'] : [];
    const others = without([...SETTLED_BY_IDENT, ...again, ...settled]);
    return [{ kind: 'wrong-station', ask: identAsk }, ...others];
  }
  if (reversed !== null) return without(again);
  if (!has('dme-disagrees') || !has('dme-not-moving')) return alerts;
  return without([isDmeTheSame(estimate) ? 'dme-disagrees' : 'dme-not-moving']);
}

/** Whether the DME was last read as it was the time before. */
function isDmeTheSame({ readings }: Estimate): boolean {
  const [last, before] = readings.filter(({ dmeNm }) => dmeNm !== undefined).reverse();
  return last !== undefined && last.dmeNm === before?.dmeNm;
}
