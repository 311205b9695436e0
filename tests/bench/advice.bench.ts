// What one answer costs, from nothing but the request, by the number of readings in it.
import { performance } from 'node:perf_hooks';
import { geodesicTo } from '../../src/earth/geodesic.ts';
import { placeAt } from '../../src/earth/geodesic.ts';
import { trueDeg } from '../../src/base/bearing.ts';
import { advise } from '../../src/procedure/advise.ts';
import type { AdviceRequest } from '../../src/procedure/advise.ts';
import type { Reading } from '../../src/track/reading.ts';
import { aircraft, leg } from '../server/examples.ts';
import { median, report } from './report.ts';

const COUNTS = [5, 50, 500];
const RUNS = 25;
const GROUND_SPEED_KT = 100;
const FIRST_DME_NM = 60;

/** A flight in to the station, a little off course, read at even intervals until 5 NM before it. */
function request(count: number): AdviceRequest {
  const { station, courseDeg } = leg;
  const fromStation = trueDeg(courseDeg + station.declinationDegEast + 180);
  const flownNm = FIRST_DME_NM - 5;
  const readings = Array.from({ length: count }, (_, index): Reading => {
    const goneNm = (flownNm * index) / count;
    const place = placeAt(station, fromStation, FIRST_DME_NM - goneNm);
    return {
      atMs: Math.round((goneNm / GROUND_SPEED_KT) * 3_600_000),
      headingDeg: 108,
      courseSetDeg: courseDeg,
      needleDots: Math.round(2 * Math.sin(index / 3)) / 2,
      flag: 'to',
      dmeNm: Math.round(geodesicTo(place, station).distanceNm * 10) / 10,
    };
  });
  return { leg, aircraft, dateIso: '2026-11-25', readings };
}

function costMs(count: number): number {
  const asked = request(count);
  const once = (): number => {
    const startMs = performance.now();
    const answer = advise(asked);
    if (!answer.ok) throw new Error(JSON.stringify(answer.problem));
    return performance.now() - startMs;
  };
  for (let run = 0; run < 5; run += 1) once();
  return median(Array.from({ length: RUNS }, once));
}

const costs = COUNTS.map(costMs);
const [least = NaN] = costs;
for (const [index, count] of COUNTS.entries()) {
  const value = costs[index] ?? NaN;
  report({ name: `advice, ${count} readings`, value, unit: 'ms' });
}
for (const [index, count] of COUNTS.entries()) {
  if (index === 0) continue;
  const value = (costs[index] ?? NaN) / least;
  report({ name: `advice, ${count} readings, against 5`, value, unit: 'times' });
}
