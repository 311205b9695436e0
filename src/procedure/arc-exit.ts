import type { Aircraft, Leg } from '../leg/leg.ts';
import { datedLeg } from '../leg/leg-frame.ts';
import type { DatedLeg } from '../leg/leg-frame.ts';
import { spokenBearing } from '../speech/numbers.ts';
import type { ArcSeen, WindSeen } from '../track/guidance.ts';
import { isSameTuning } from './checklist.ts';
import { isOtherCourse } from './course-set.ts';
import { headingOnCourseDeg, windFromSeen } from './heading-on-course.ts';
import { headingWords } from './phrases.ts';

/** What leaving an arc depends on besides the arc: the leg that comes then, if there is one. */
export interface ArcLeaving {
  readonly leg: DatedLeg;
  readonly next?: Leg;
  readonly aircraft: Aircraft;
  readonly wind: WindSeen | null;
}

/** How the radial at the end of the arc is flown on; null: not along it, or nobody knows. */
function exitOnto({ leg, next }: Pick<ArcLeaving, 'leg' | 'next'>): 'inbound' | 'outbound' | null {
  if (next === undefined || next.arc || !isSameTuning(next, leg.leg)) return null;
  return next.direction === 'to' ? 'inbound' : 'outbound';
}

/** How many radials before the end the turn off the arc is to be begun, degrees. */
export function exitLeadDeg(arc: ArcSeen, leaving: Pick<ArcLeaving, 'leg' | 'next'>): number {
  return arc.leadRadialsDeg[exitOnto(leaving) ?? 'plain'];
}

/** "Lead radial. Turn right, inbound, heading three one four." With no leg to come: "End of the arc." */
export function exitWords(leaving: ArcLeaving): string {
  const { leg, next } = leaving;
  if (next === undefined) return 'End of the arc.';
  const onto = exitOnto(leaving);
  if (onto === null) return 'Lead radial. Begin the next leg.';
  const isRight = (leg.leg.arc?.turn === 'clockwise') === (onto === 'inbound');
  const headingDeg = headingAfter(leaving, next);
  const heading =
    headingDeg === null ? `course ${spokenBearing(next.courseDeg)}` : headingWords(headingDeg);
  return `Lead radial. Turn ${isRight ? 'right' : 'left'}, ${onto}, ${heading}.`;
}

/**
 * "Set course three one four.", to be done before the lead radial, where the radial is then flown on the same
 * tuning; null: it is not, or that course is set already (`courseSetDeg`: as read last).
 */
export function nextCourseWords(
  leaving: Pick<ArcLeaving, 'leg' | 'next'>,
  courseSetDeg: number | null,
): string | null {
  const { next } = leaving;
  if (next === undefined || exitOnto(leaving) === null) return null;
  const isSet = courseSetDeg !== null && !isOtherCourse(courseSetDeg, next);
  return isSet ? null : `Set course ${spokenBearing(next.courseDeg)}.`;
}

function headingAfter({ leg, aircraft, wind }: ArcLeaving, next: Leg): number | null {
  const dated = datedLeg(next, leg.dateIso);
  if (!dated.ok) return null;
  const blowing = wind === null ? undefined : windFromSeen(wind, leg);
  return headingOnCourseDeg(dated.value, aircraft, blowing);
}
