import type { DatedLeg } from '../../src/leg/leg-frame.ts';
import type { Aircraft } from '../../src/leg/leg.ts';
import { estimate } from '../../src/track/estimate.ts';
import type { Estimate } from '../../src/track/estimate.ts';
import { guide } from '../../src/track/guide.ts';
import type { Guidance } from '../../src/track/guidance.ts';
import { alertsOf } from '../../src/track/monitor.ts';
import type { Flag, Reading } from '../../src/track/reading.ts';
import type { Wind } from '../../src/wind/wind.ts';
import { AIRCRAFT } from './ocean-legs.ts';

/** Heading, needle, flag, DME, course set; null: not read. */
export type Row = readonly [number | null, number | null, Flag, (number | null)?, number?];

/** Readings a minute apart, the OBS on the leg's course unless the row sets another. */
export function minuteRows(leg: DatedLeg, rows: readonly Row[]): readonly Reading[] {
  return rows.map(([headingDeg, needleDots, flag, dmeNm, courseSetDeg], index) => ({
    atMs: index * 60_000,
    courseSetDeg: courseSetDeg ?? leg.leg.courseDeg,
    flag,
    ...(headingDeg === null ? {} : { headingDeg }),
    ...(needleDots === null ? {} : { needleDots }),
    ...(dmeNm === null || dmeNm === undefined ? {} : { dmeNm }),
  }));
}

/** What a leg's readings lead to. */
export interface Answer extends Guidance {
  readonly known: Estimate;
  readonly kinds: readonly string[];
  readonly asks: string;
}

/** The guidance and the alerts after rows of readings. */
export function after(
  leg: DatedLeg,
  rows: readonly Row[],
  { wind, aircraft = AIRCRAFT }: { wind?: Wind; aircraft?: Aircraft } = {},
): Answer {
  return answerTo(estimate(minuteRows(leg, rows), leg, aircraft, wind), leg);
}

/** The guidance and the alerts of an estimate. */
export function answerTo(known: Estimate, leg: DatedLeg): Answer {
  const alerts = alertsOf(known);
  return {
    ...guide(known, leg),
    known,
    kinds: alerts.map((each) => each.kind),
    asks: alerts.map((each) => each.ask).join(' '),
  };
}
