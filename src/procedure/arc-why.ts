import { digits, spokenBearing } from '../speech/numbers.ts';
import type { DmeArc } from '../leg/leg.ts';
import type { ArcSeen, Guidance } from '../track/guidance.ts';
import { exitLeadDeg } from './arc-exit.ts';
import { hasSecondHeading, offCourseWords } from './phrases.ts';
import type { WhyContext } from './answer-context.ts';

/** Nearer than this to the turn the reason is about the turn, seconds. */
const TURN_NEAR_S = 120;
/** Within this the aircraft is on the arc, NM. */
const ON_ARC_NM = 0.1;

/**
 * Why, on a leg that is an arc, in the handbook's terms; empty: as on any radial.
 *
 * `wind`: the clause about the wind, as on a radial.
 */
export function arcReasons(
  context: WhyContext,
  arc: DmeArc,
  seen: ArcSeen,
  wind: string,
): readonly string[] {
  if (!seen.isJoining) return onArcReasons(context, arc, seen, wind);
  if (seen.turnInS === null || seen.turnInS > TURN_NEAR_S) return [];
  const lead = offCourseWords(seen.turnLeadNm ?? 0, context.manner);
  return [
    `The turn begins ${lead} before the arc: half a percent of the groundspeed, the radius of a standard rate turn.`,
    `The arc begins ${spokenBearing(seen.tangentDeg)}, niner zero degrees from the radial. ${wind}, so the heading is ${spokenBearing(seen.alongHeadingDeg)}.`,
  ];
}

function onArcReasons(
  context: WhyContext,
  arc: DmeArc,
  seen: ArcSeen,
  wind: string,
): readonly string[] {
  const { guidance, leg, next } = context;
  const leadDeg = exitLeadDeg(seen, { leg, ...(next ? { next } : {}) });
  if (seen.toRadialDeg !== null && seen.toRadialDeg <= leadDeg) {
    return [
      `Sixty divided by the D M E is the number of radials in a mile, so the turn takes ${radials(leadDeg)} at this distance.`,
    ];
  }
  return [
    placeReason(context, seen),
    `Abeam the station the arc runs ${spokenBearing(seen.tangentDeg)}.`,
    `${wind}, so ${wayReason(guidance, seen)}.`,
  ];
}

function placeReason({ manner }: WhyContext, { outsideNm }: ArcSeen): string {
  const off = outsideNm ?? 0;
  if (Math.abs(off) < ON_ARC_NM) return 'You are on the arc.';
  return `You are ${offCourseWords(off, manner)} ${off > 0 ? 'outside' : 'inside'} the arc.`;
}

function wayReason({ whichWay }: Guidance, { outsideNm }: ArcSeen): string {
  const isOff = Math.abs(outsideNm ?? 0) >= ON_ARC_NM;
  const first = `${spokenBearing(whichWay.headingDeg)} ${isOff ? 'brings you back to it' : 'keeps the distance'}`;
  if (!hasSecondHeading(whichWay)) return first;
  return `${first}, and ${spokenBearing(whichWay.thenHeadingDeg)} follows it round`;
}

function radials(leadDeg: number): string {
  const whole = Math.max(1, Math.round(leadDeg));
  return whole === 1 ? 'one radial' : `${digits(whole)} radials`;
}
