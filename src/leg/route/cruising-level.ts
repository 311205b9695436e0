import { wrap360 } from '../../base/angle.ts';

/** Whose rule for cruising levels is followed. Other states differ: check your own regulation. */
export type LevelRule = 'us' | 'icao' | 'none';

/** Below this the rules do not apply, feet; above ground, which the tool does not know, so above sea level here. */
const FROM_FT = 3_000;
const UNTIL_FT = 18_000;

/**
 * Whether an altitude fits the semicircular rule for a VFR flight; null where the rule does not apply.
 *
 * 000 to 179: odd thousands and 500 ft; 180 to 359: even thousands and 500. `directionDeg` is the magnetic course
 * (`us`) or the magnetic track (`icao`); without drift both are the same. Applies above 3,000 ft (taken here above
 * sea level) and, in the US, below 18,000.
 * *Source:* 14 CFR 91.159; ICAO Annex 2, 4.7 and SERA.5005(g).
 */
export function fitsCruisingLevel(
  rule: LevelRule,
  directionDeg: number,
  altitudeFt: number,
): boolean | null {
  if (rule === 'none' || altitudeFt <= FROM_FT || (rule === 'us' && altitudeFt >= UNTIL_FT))
    return null;
  const isEast = wrap360(directionDeg) < 180;
  const thousands = (altitudeFt - 500) / 1_000;
  return Number.isInteger(thousands) && (Math.abs(thousands % 2) === 1) === isEast;
}

/**
 * The levels that fit next below and above an altitude that does not, feet, lower one first; those that there are.
 *
 * None lies below the first of the table, and in the US none at 18,000 ft or above: then only the other one is
 * given. *Source:* as for `fitsCruisingLevel`.
 */
export function nextCruisingLevels(
  rule: LevelRule,
  directionDeg: number,
  altitudeFt: number,
): readonly number[] {
  if (rule === 'none') return [];
  const first = wrap360(directionDeg) < 180 ? 3_500 : 4_500;
  const below = first + 2_000 * Math.floor((altitudeFt - first) / 2_000);
  return [below, below + 2_000].filter(
    (levelFt) => levelFt >= first && (rule !== 'us' || levelFt < UNTIL_FT),
  );
}
