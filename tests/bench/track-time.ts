// Time to go: npx tsx tests/bench/track-time.ts --flights 300 --seed 1 [--interval 60] [--json]
import { guide } from '../../src/track/guide.ts';
import { PLAIN_AIR } from './track-air.ts';
import { flyOnce } from './track-flight.ts';
import { option, printFigures } from './track-options.ts';
import type { Figure } from './track-options.ts';
import { toolAdviser } from './track-pilots.ts';

/** Ranges from the station for which the error is told: relative far out, in seconds close in. */
const BANDS = [
  { fromNm: 10, toNm: 20, isRelative: true, goal: 4.5 },
  { fromNm: 5, toNm: 10, isRelative: true, goal: 4.5 },
  { fromNm: 3, toNm: 5, isRelative: false, goal: 8 },
  { fromNm: 1.5, toNm: 3, isRelative: false, goal: 6.5 },
] as const;

interface Told {
  readonly atS: number;
  readonly rangeNm: number;
  readonly toGoS: number;
  readonly sdS: number;
}

/** Root-mean-square error of the time to the station, and how often it lay within its own standard deviation. */
export function timeFigures(flights: number, seed: number, intervalS: number): readonly Figure[] {
  const errors = BANDS.map((): { error: number; sd: number; toGoS: number }[] => []);
  for (let index = 0; index < flights; index += 1) {
    const told: Told[] = [];
    const result = flyOnce({
      start: { direction: 'to', kind: 'near', hasDme: true },
      air: PLAIN_AIR,
      intervalS,
      seed: seed * 100_003 + index,
      adviser: (truth) => toolAdviser(truth),
      watch: (truth, adviser) => {
        const estimate = adviser.estimate();
        if (!estimate) return;
        const far = guide(estimate, estimate.leg).howFar;
        if (far.toGoS === null || far.sdS === null) return;
        const rangeNm = Math.hypot(truth.x, truth.y);
        told.push({ atS: truth.timeS, rangeNm, toGoS: far.toGoS, sdS: far.sdS });
      },
    });
    if (result.missNm === null) continue;
    for (const { atS, rangeNm, toGoS, sdS } of told) {
      const leftS = result.minutes * 60 - atS;
      const band = BANDS.findIndex((each) => rangeNm >= each.fromNm && rangeNm < each.toNm);
      errors[band]?.push({ error: toGoS - leftS, sd: sdS, toGoS: leftS });
    }
  }
  return BANDS.flatMap(({ fromNm, toNm, isRelative, goal }, band) => {
    const all = errors[band] ?? [];
    const scaled = all.map(({ error, toGoS }) => (isRelative ? (100 * error) / toGoS : error));
    const rms = Math.sqrt(scaled.reduce((sum, each) => sum + each * each, 0) / all.length);
    const within = all.filter(({ error, sd }) => Math.abs(error) <= sd).length / all.length;
    const name = `time to go at ${fromNm} to ${toNm} NM, readings every ${intervalS} s`;
    return [
      { name: `${name}: RMS error, ${isRelative ? 'per cent' : 's'}`, value: rms, goal },
      { name: `${name}: within one standard deviation, per cent`, value: 100 * within, goal: null },
    ];
  });
}

if (process.argv[1]?.endsWith('track-time.ts') === true) {
  printFigures(timeFigures(option('flights', 200), option('seed', 1), option('interval', 60)));
}
