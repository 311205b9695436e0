// One more reading after 200 of a flight: what the page does with it, in Node and in a browser alike.
import { addEvent, addEvents, emptyFold } from '../../src/flight/fold.ts';
import type { FlightEvent } from '../../src/flight/event.ts';
import type { Leg } from '../../src/leg/leg.ts';

const BEFORE = 200;
const BATCH = 20;
const BATCHES = 15;

const START_MS = Date.UTC(2026, 10, 25, 12);
const EVERY_MS = 30_000;
const FIRST_NM = 165;
const GROUND_SPEED_KT = 95;

const LEG: Leg = {
  station: {
    ident: 'QEV',
    latitudeDeg: 46.5,
    longitudeDeg: -21.25,
    elevationFt: 410,
    declinationDegEast: -7,
    hasDme: true,
  },
  direction: 'to',
  courseDeg: 112,
  endDmeNm: 0,
  altitudeFt: 4500,
};

const stamp = (index: number): { id: string; atMs: number } => ({
  id: `01KC${String(index).padStart(22, '0')}`,
  atMs: START_MS + index * EVERY_MS,
});

/** Inbound, a little off course to both sides, every reading with the time, course and distance that belong to it. */
function reading(index: number): FlightEvent {
  const dmeNm = FIRST_NM - (GROUND_SPEED_KT * index * EVERY_MS) / 3_600_000;
  return {
    ...stamp(index),
    kind: 'reading',
    headingDeg: 108,
    courseSetDeg: LEG.courseDeg,
    needleDots: Math.round(2 * Math.sin(index / 3)) / 2,
    flag: 'to',
    dmeNm: Math.round(dmeNm * 10) / 10,
  };
}

/** The cost of the answer to reading 201 in a flight of 200, ms: the middle of 15 batches of 20. */
export function answerCostMs(): number {
  const plan: FlightEvent = {
    ...stamp(0),
    kind: 'plan',
    name: 'bench',
    legs: [LEG],
    aircraft: { trueAirspeedKt: 95, degreesPerDot: 2, dotsFullScale: 5 },
    dateIso: '2026-11-25',
  };
  const readings = Array.from({ length: BEFORE }, (_, index) => reading(index + 1));
  const fold = addEvents(emptyFold(), [plan, ...readings]);
  const next = reading(BEFORE + 1);
  const costs = Array.from({ length: BATCHES }, () => {
    const startMs = performance.now();
    for (let run = 0; run < BATCH; run += 1) {
      const { advice } = addEvent(fold, next).state;
      if (advice === null) throw new Error('There is no answer to measure.');
    }
    return (performance.now() - startMs) / BATCH;
  });
  return costs.toSorted((one, other) => one - other)[Math.floor(BATCHES / 2)] ?? NaN;
}
