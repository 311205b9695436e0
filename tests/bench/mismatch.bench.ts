// Other air and other pilots than assumed: npx tsx tests/bench/mismatch.bench.ts --table --flights 100 --seed 1
import { alertsOf } from '../../src/track/monitor.ts';
import type { Reading } from '../../src/track/reading.ts';
import { PLAIN_AIR } from './track-air.ts';
import type { Air, Start } from './track-air.ts';
import { chanceFrom } from './track-chance.ts';
import { flyOnce } from './track-flight.ts';
import type { FlightPlan } from './track-flight.ts';
import { report } from './report.ts';
import { isAsked, option, quantile } from './track-options.ts';
import { toolAdviser } from './track-pilots.ts';

/** A case that differs from the plain one. */
interface Variant {
  readonly name: string;
  readonly air?: Partial<Air>;
  readonly plan?: Partial<FlightPlan>;
  readonly isTyped?: boolean;
  readonly hasDme?: boolean;
}

const STEADY: Partial<Air> = {
  scallopingDeg: 0,
  vorBiasDeg: 0,
  headingHoldDeg: 0.3,
  headingErrorDeg: 0,
  airspeedErrorKt: 0,
  windDriftKtPerRootH: 0,
};

const VARIANTS: readonly Variant[] = [
  { name: 'as assumed' },
  { name: 'first reading as it stands', plan: { firstReading: 'plain' } },
  { name: 'no headings read', plan: { readsHeading: false } },
  { name: 'needle in whole dots', plan: { needleStepDots: 1 } },
  { name: 'needle in quarter dots', plan: { needleStepDots: 0.25 } },
  { name: 'needle not rounded', plan: { needleStepDots: 1e-6 } },
  { name: 'three per cent mistyped', isTyped: true, plan: { readsAgain: true } },
  { name: 'three per cent mistyped, none read again', isTyped: true },
  { name: 'scalloping 1 deg', air: { scallopingDeg: 1 } },
  { name: 'VOR bias 3 deg', air: { vorBiasDeg: 3 } },
  { name: 'wind drift 12 kt in an hour', air: { windDriftKtPerRootH: 12 } },
  { name: 'wind 40 to 55 kt', air: { leastWindKt: 40, greatestWindKt: 55 } },
  { name: 'airspeed error 8 kt', air: { airspeedErrorKt: 8 } },
  {
    name: 'heading held to 3, indicator off 4 deg',
    air: { headingHoldDeg: 3, headingErrorDeg: 4 },
  },
  { name: 'steady air', air: STEADY },
  { name: 'no wind, steady air', air: { ...STEADY, leastWindKt: 0, greatestWindKt: 0.1 } },
  { name: 'no DME', hasDme: false },
  { name: 'no DME, first as it stands', hasDme: false, plan: { firstReading: 'plain' } },
  { name: 'no DME, every 120 s', hasDme: false, plan: { intervalS: 120 } },
];

const STARTS: readonly Omit<Start, 'hasDme'>[] = [
  { direction: 'to', kind: 'near' },
  { direction: 'to', kind: 'icpt' },
  { direction: 'from', kind: 'near' },
  { direction: 'from', kind: 'icpt' },
];

/** Mistypes three readings of a hundred: needle to the other side, two dots more, or ten miles more. */
function typist(seed: number): (reading: Reading) => Reading {
  const chance = chanceFrom(seed);
  return (reading) => {
    if (chance.uniform(0, 1) > 0.03) return reading;
    const kind = chance.uniform(0, 1);
    const dots = reading.needleDots ?? 0;
    if (kind < 0.4) return { ...reading, needleDots: -dots };
    if (kind < 0.7) return { ...reading, dmeNm: (reading.dmeNm ?? 0) + 10 };
    return { ...reading, needleDots: Math.min(5, dots + 2) };
  };
}

function fly(
  variant: Variant,
  flights: number,
  seed: number,
): { readonly rmsDeg: number; readonly line: string } {
  const alerts = new Map<string, number>();
  const misses: number[] = [];
  let minutes = 0;
  let changes = 0;
  const squares = STARTS.map((start, which) => {
    let seconds = 0;
    let deg2 = 0;
    for (let index = 0; index < flights; index += 1) {
      const flightSeed = (seed * 10 + which) * 100_003 + index;
      const type = variant.isTyped === true ? typist(flightSeed) : null;
      let standing = new Set<string>();
      const result = flyOnce({
        start: { ...start, hasDme: variant.hasDme ?? true },
        air: { ...PLAIN_AIR, ...variant.air },
        intervalS: 60,
        seed: flightSeed,
        adviser: (truth) => toolAdviser(truth),
        watch: (_truth, adviser) => {
          const estimate = adviser.estimate();
          const now = new Set<string>(estimate ? alertsOf(estimate).map(({ kind }) => kind) : []);
          for (const kind of now) {
            if (!standing.has(kind)) alerts.set(kind, (alerts.get(kind) ?? 0) + 1);
          }
          standing = now;
        },
        ...(type ? { spoil: type } : {}),
        ...variant.plan,
      });
      seconds += result.late.s;
      deg2 += result.late.deg2;
      minutes += result.minutes;
      changes += result.changes;
      if (result.missNm !== null) misses.push(result.missNm);
    }
    return Math.sqrt(deg2 / seconds);
  });
  const mean = squares.reduce((sum, each) => sum + each, 0) / squares.length;
  const perHour = [...alerts].map(
    ([kind, count]) => `${kind} ${((60 * count) / minutes).toFixed(3)}`,
  );
  const line = [
    variant.name.padEnd(40),
    `needle RMS ${mean.toFixed(2)} (${squares.map((each) => each.toFixed(2)).join(' ')})`,
    `changes ${((10 * changes) / minutes).toFixed(1)}`,
    `miss 95 % ${quantile(misses, 0.95).toFixed(2)}`,
    `per hour: ${perHour.join(', ')}`,
  ].join('  ');
  return { rmsDeg: mean, line };
}

for (const variant of VARIANTS) {
  const { rmsDeg, line } = fly(variant, option('flights', 20), option('seed', 1));
  if (isAsked('table')) console.log(line);
  else report({ name: `tracking: needle RMS, ${variant.name}`, value: rmsDeg, unit: 'deg' });
}
