import { turnDeg, wrap360 } from '../base/angle.ts';
import type { DatedLeg } from '../leg/leg-frame.ts';
import type { Estimate } from './estimate-record.ts';
import type { Guidance } from './guidance.ts';

/** How far, which way and what to ask next, from what the readings have shown so far. */
export function guide(estimate: Estimate, leg: DatedLeg): Guidance {
  const last = estimate.readings.at(-1);
  const headingDeg = Math.round(wrap360(leg.leg.courseDeg + 5 * (last?.needleDots ?? 0)));
  const turn = turnDeg(estimate.headingDeg ?? headingDeg, headingDeg);
  return {
    phase: 'track',
    howFar: {
      toGoNm: last?.dmeNm ?? null,
      toGoS: null,
      groundSpeedKt: null,
      sdNm: null,
      sdS: null,
      sdKt: null,
    },
    whichWay: {
      turn: turn === 0 ? 'none' : turn > 0 ? 'right' : 'left',
      turnDeg: Math.abs(turn),
      headingDeg,
      holdS: 60,
      thenHeadingDeg: headingDeg,
    },
    seen: { crossTrackNm: null, crossTrackSdNm: null, driftDeg: null, wind: null },
    nextQuestion: null,
    nextReadingInS: 60,
  };
}
