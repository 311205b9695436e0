import { takeOff } from '../browser/air.ts';
import type { Air } from '../browser/air.ts';
import { asked, leg } from './examples.ts';

const NOON_MS = Date.UTC(2026, 10, 25, 12);

/** A reading as it crosses the wire. */
export interface Sent {
  readonly atMs: number;
  readonly headingDeg: number;
  readonly courseSetDeg: number;
  readonly needleDots?: number;
  readonly flag: 'to' | 'from' | 'off';
  readonly dmeNm: number;
}

/** A straight flight inbound on the 112 course to QEV, in an air that shares no code with the tool. */
export interface Straight {
  readonly groundNm?: number;
  readonly minutes: number;
  /** Wind across the course: the heading that keeps it is not the course. */
  readonly windKt?: number;
  readonly headingDeg?: number;
  /** Headings turned to, by the minute after which. */
  readonly turns?: Readonly<Record<number, number>>;
  /** Course set on the OBS, by the minute; else the leg's. */
  readonly obs?: Readonly<Record<number, number>>;
}

/**
 * The same flown on the answers (`ask` gives the heading to fly), with a direction indicator that shows too much
 * from one minute until another.
 */
export async function flownOnAnswers(
  ask: (readings: readonly Sent[]) => Promise<number>,
  off: { readonly byDeg: number; readonly from: number; readonly until: number },
  minutes: number,
): Promise<Sent[]> {
  const air = begin({ groundNm: 40, minutes });
  const offAt = (minute: number): number =>
    minute >= off.from && minute < off.until ? off.byDeg : 0;
  const readings: Sent[] = [];
  for (let minute = 0; minute <= minutes; minute += 1) {
    const read = readAt(air, minute, leg.courseDeg);
    readings.push({ ...read, headingDeg: (read.headingDeg + offAt(minute) + 360) % 360 });
    const toldDeg = await ask(readings);
    air.turnTo((toldDeg - offAt(minute + 1) + 360) % 360);
  }
  return readings;
}

/** What the panel shows each minute of such a flight, from minute 0. */
export function flown(straight: Straight): Sent[] {
  const { minutes, turns = {}, obs = {} } = straight;
  const air = begin(straight);
  return Array.from({ length: minutes + 1 }, (_, minute) => {
    const reading = readAt(air, minute, obs[minute] ?? leg.courseDeg);
    air.turnTo(turns[minute] ?? reading.headingDeg);
    return reading;
  });
}

function begin({ groundNm = 22, windKt = 0, headingDeg = 110 }: Straight): Air {
  return takeOff({
    beacon: leg.station,
    radialDeg: leg.courseDeg + 180,
    groundNm,
    altitudeFt: leg.altitudeFt,
    headingDeg,
    trueAirspeedKt: asked.aircraft.trueAirspeedKt,
    windFromDegTrue: 15,
    windKt,
    dateIso: asked.dateIso,
    startMs: NOON_MS,
  });
}

function readAt(air: Air, minute: number, courseSetDeg: number): Sent {
  air.flyUntil(NOON_MS + minute * 60_000);
  const { needleDots, flag, ...read } = air.panel(courseSetDeg);
  return {
    ...read,
    headingDeg: read.headingDeg % 360,
    atMs: minute * 60_000,
    flag: flag === 'TO' ? 'to' : flag === 'FROM' ? 'from' : 'off',
    ...(needleDots === null ? {} : { needleDots }),
  };
}
