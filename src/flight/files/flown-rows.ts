import { directionDeg } from '../../base/angle.ts';
import { trueDeg } from '../../base/bearing.ts';
import { placeAt, type LatLon } from '../../earth/geodesic.ts';
import type { Estimate } from '../../track/estimate.ts';
import { placeOf } from '../../track/place.ts';
import { trustIn } from '../../track/trust.ts';
import { listOf } from '../chain.ts';
import type { FlightEvent, ReadingFields } from '../event.ts';
import { NOTHING_FLOWN, type Flown } from '../flown.ts';
import type { Fold } from '../fold.ts';
import type { LogLine } from '../log.ts';
import type { ReadingRecord } from '../state.ts';

/** One event of a flight as a row of a table: what was given, and what was made of it. */
export interface FlownRow {
  readonly atMs: number;
  readonly kind: FlightEvent['kind'];
  readonly isTakenBack: boolean;
  /** From 1. */
  readonly leg: number;
  readonly ident: string | null;
  readonly headingDeg: number | null;
  readonly courseSetDeg: number | null;
  readonly needleDots: number | null;
  readonly flag: string | null;
  readonly dmeNm: number | null;
  /** Where the readings put the aircraft; null while that cannot be told. */
  readonly place: LatLon | null;
  readonly headingToldDeg: number | null;
  readonly toGoNm: number | null;
  readonly text: string | null;
}

/**
 * A flight as a table, one row an event, in order of time.
 *
 * Places come from the estimate after each reading that counts, and are left out while it is in doubt. They are
 * what the tool believed in flight: no record of where the aircraft was.
 */
export function flownRows(fold: Fold): readonly FlownRow[] {
  return fold.lines.map((line, index) => rowOf(line, fold.steps[index] ?? NOTHING_FLOWN));
}

function rowOf({ event, isTakenBack, correction }: LogLine, flown: Flown): FlownRow {
  const record = listOf(flown.readings).find(({ eventId }) => eventId === event.id);
  const legIndex = record?.legIndex ?? flown.legIndex;
  const given = event.kind === 'reading' ? (correction ?? event) : null;
  return {
    atMs: event.atMs,
    kind: event.kind,
    isTakenBack,
    leg: legIndex + 1,
    ident: given?.station?.ident ?? flown.plan?.legs[legIndex]?.station.ident ?? null,
    ...panelOf(given, record),
    ...answerIn(record, flown),
    text: textOf(event),
  };
}

type Panel = Pick<FlownRow, 'headingDeg' | 'courseSetDeg' | 'needleDots' | 'flag' | 'dmeNm'>;

function panelOf(given: ReadingFields | null, record: ReadingRecord | undefined): Panel {
  const { headingDeg, courseSetDeg, needleDots, flag, dmeNm } = given ?? {};
  return {
    headingDeg: headingDeg ?? null,
    // A needle means nothing without its OBS: where only the needle was told, the course it was taken for.
    courseSetDeg:
      courseSetDeg ?? (needleDots === undefined ? null : record?.reading.courseSetDeg) ?? null,
    needleDots: needleDots ?? null,
    flag: flag ?? null,
    dmeNm: dmeNm ?? null,
  };
}

function answerIn(
  record: ReadingRecord | undefined,
  { estimate }: Flown,
): Pick<FlownRow, 'place' | 'headingToldDeg' | 'toGoNm'> {
  const advice = record?.advice ?? null;
  return {
    place: advice && placeIn(estimate),
    headingToldDeg: advice?.whichWay.headingDeg ?? null,
    toGoNm: advice?.howFar.toGoNm ?? null,
  };
}

/** Where an estimate puts the aircraft; null without a place, or while it is in doubt. */
function placeIn(estimate: Estimate | null): LatLon | null {
  if (!estimate?.isPlaced || !trustIn(estimate).distance) return null;
  const { eastNm, northNm } = placeOf(estimate.belief.mean);
  const azimuth = trueDeg(directionDeg(eastNm, northNm));
  return placeAt(estimate.leg.leg.station, azimuth, Math.hypot(eastNm, northNm));
}

function textOf(event: FlightEvent): string | null {
  switch (event.kind) {
    case 'plan':
      return event.name;
    case 'note':
      return event.text;
    case 'reading':
      return event.text ?? null;
    case 'check':
      return `${event.item} ${event.outcome}${event.reason === undefined ? '' : `: ${event.reason}`}`;
    case 'ident':
      return `${event.outcome} by ${event.by}`;
    case 'leg-started':
    case 'reading-corrected':
    case 'taken-back':
    case 'finished':
      return null;
    default:
      return null;
  }
}
