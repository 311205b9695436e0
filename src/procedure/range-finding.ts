import { MS_PER_S } from '../base/units.ts';
import { changeDeg } from '../track/bearing-change-check.ts';
import { abeamTurn } from '../track/bearing-change-offer.ts';
import type { Estimate } from '../track/estimate.ts';
import type { Guidance } from '../track/guidance.ts';
import { isRangeKnown } from '../track/how-far.ts';
import { lnRangeSd } from '../track/place.ts';
import { hasSecondHeading } from './phrases.ts';

/** Where nothing gives the range: the bearing-change check as it is offered, flown, and ended. */
export type RangeFinding =
  | {
      readonly kind: 'offered';
      /** By the reading that is being answered: said now, and not again on this leg. */
      readonly isNew: boolean;
      readonly turn: 'left' | 'right';
      readonly headingDeg: number;
    }
  | {
      readonly kind: 'flying' | 'ended';
      /** How far the radial has moved, degrees, and in how long, seconds. */
      readonly changeDeg: number;
      readonly flownS: number;
      /** Range from the station over the ground, and one standard deviation, NM; null: cannot tell. */
      readonly rangeNm: number | null;
      readonly sdNm: number | null;
    };

/** The bearing-change check after the last reading; null where it is neither offered nor flown. */
export function rangeFindingOf(known: Estimate): RangeFinding | null {
  const { rangeCheck, belief } = known;
  switch (rangeCheck.kind) {
    case 'none':
    case 'done':
      return null;
    case 'offered': {
      const abeam = abeamTurn(known);
      return abeam && { kind: 'offered', isNew: rangeCheck.atMs === known.atMs, ...abeam };
    }
    case 'flying':
    case 'ended': {
      const { kind, first, last } = rangeCheck;
      const isKnown = isRangeKnown(belief) && known.doubt === null;
      const rangeNm = Math.exp(belief.mean.lnRange);
      return {
        kind,
        changeDeg: changeDeg(rangeCheck),
        flownS: first && last ? (last.atMs - first.atMs) / MS_PER_S : 0,
        rangeNm: isKnown ? rangeNm : null,
        sdNm: isKnown ? rangeNm * lnRangeSd(belief) : null,
      };
    }
  }
}

/** Between two bearings: the handbooks' minute, s. */
const BETWEEN_READINGS_S = 60;

/** The guidance with the time to the next radial, where the check is offered now, or flown. */
export function timedByFinding(guidance: Guidance, finding: RangeFinding | null): Guidance {
  const isTimed = finding?.kind === 'flying' || (finding?.kind === 'offered' && finding.isNew);
  if (!isTimed) return guidance;
  const { whichWay: way } = guidance;
  return {
    ...guidance,
    nextReadingInS: BETWEEN_READINGS_S,
    whichWay: hasSecondHeading(way) ? way : { ...way, holdS: BETWEEN_READINGS_S },
  };
}
