import { addReading, estimate } from '../../src/track/estimate.ts';
import { guide } from '../../src/track/guide.ts';
import { alertsOf } from '../../src/track/monitor.ts';
import type { Reading } from '../../src/track/reading.ts';
import { printFigures } from './track-options.ts';
import type { Figure } from './track-options.ts';
import { AIRCRAFT, OUTBOUND, dated } from '../unit/ocean-legs.ts';

const leg = dated({ ...OUTBOUND, endDmeNm: 100 });
const NEEDLES = [0, 0.5, 0, -0.5];

/** A long outbound flight, a reading every half minute. */
const readings: Reading[] = Array.from({ length: 200 }, (_, index) => ({
  atMs: index * 30_000,
  headingDeg: 135 + (index % 3),
  courseSetDeg: 140,
  needleDots: NEEDLES[index % 4] ?? 0,
  flag: 'from',
  dmeNm: Math.round(50 + index * 8) / 10,
}));

/** Median time of one call, microseconds. */
function medianUs(call: () => unknown, times: number): number {
  const taken = Array.from({ length: times }, () => {
    const start = performance.now();
    call();
    return (performance.now() - start) * 1000;
  });
  taken.sort((one, other) => one - other);
  return taken[Math.floor(times / 2)] ?? 0;
}

/** What one answer costs after a long flight. */
export function costFigures(): readonly Figure[] {
  const known = estimate(readings, leg, AIRCRAFT);
  const next: Reading = { atMs: 200 * 30_000, courseSetDeg: 140, flag: 'from', dmeNm: 165 };
  const oneMore = (): unknown => {
    const more = addReading(known, next);
    return [guide(more, leg), alertsOf(more)];
  };
  return [
    {
      name: 'one reading more after 200, with its answer, us',
      value: medianUs(oneMore, 300),
      goal: 2000,
    },
    {
      name: 'all 200 readings from nothing, with the answer, us',
      value: medianUs(() => guide(estimate(readings, leg, AIRCRAFT), leg), 15),
      goal: null,
    },
  ];
}

if (process.argv[1]?.endsWith('track-cost.ts') === true) printFigures(costFigures());
