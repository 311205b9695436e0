import type { DatedLeg } from '../leg/leg-frame.ts';
import type { Estimate } from './estimate-record.ts';
import type { Foresight } from './foresight.ts';
import { guide } from './guide.ts';

/** What the panel should show at `atMs` if the last advice is flown until then. */
export function foresee(estimate: Estimate, leg: DatedLeg, atMs: number): Foresight {
  const guidance = guide(estimate, leg);
  const sinceS = (atMs - (estimate.atMs ?? atMs)) / 1000;
  return {
    headingDeg:
      sinceS > guidance.whichWay.holdS
        ? guidance.whichWay.thenHeadingDeg
        : guidance.whichWay.headingDeg,
    needleDots: 0,
    flag: leg.leg.direction,
    dmeNm: estimate.readings.at(-1)?.dmeNm ?? null,
    howFar: guidance.howFar,
    phase: guidance.phase,
  };
}
