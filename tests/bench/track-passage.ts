// After the station: npx tsx tests/bench/track-passage.ts --flights 200 --seed 1 [--json]
import type { Wind } from '../../src/wind/wind.ts';
import { PLAIN_AIR, alongNm } from './track-air.ts';
import type { Truth } from './track-air.ts';
import { chanceFrom } from './track-chance.ts';
import { flyOnce } from './track-flight.ts';
import { neesOf } from './track-nees.ts';
import { meanOf, option, printFigures } from './track-options.ts';
import type { Figure } from './track-options.ts';
import { toolAdviser } from './track-pilots.ts';

/** Beyond this a squared error of four numbers comes once in a thousand times (chi-square, 4 degrees of freedom). */
const FAR_OUT = 18.5;
const FLY_ON_MIN = 15;
const FORECAST_ERROR_KT = 7;

/** The wind as a forecast has it, off by 7 kt in each component. */
function forecast({ windX, windY }: Truth, seed: number): Wind {
  const chance = chanceFrom(seed);
  const fromX = -windX + chance.normal(FORECAST_ERROR_KT);
  const fromY = -windY + chance.normal(FORECAST_ERROR_KT);
  const degrees = (Math.atan2(fromX, fromY) * 180) / Math.PI;
  return { fromDegTrue: (degrees + 360) % 360, speedKt: Math.hypot(fromX, fromY) };
}

/** Squared errors of place and wind after the station, in the filter's own spread. */
function squaresAfter(
  flights: number,
  seed: number,
  how: { readonly hasDme: boolean; readonly isForecast: boolean; readonly intervalS: number },
): number[] {
  const squares: number[] = [];
  for (let index = 0; index < flights; index += 1) {
    const flightSeed = seed * 1_000_003 + index;
    flyOnce({
      start: { direction: 'to', kind: 'near', hasDme: how.hasDme },
      air: PLAIN_AIR,
      intervalS: how.intervalS,
      seed: flightSeed,
      flyOnMin: FLY_ON_MIN,
      adviser: (truth) =>
        toolAdviser(truth, how.isForecast ? forecast(truth, flightSeed) : undefined),
      watch: (truth, adviser) => {
        if (alongNm(truth) <= 0 || Math.hypot(truth.x, truth.y) < truth.coneNm) return;
        const square = neesOf(truth, adviser);
        if (square !== null) squares.push(square);
      },
    });
  }
  return squares;
}

/** How honest the told spread is in the quarter of an hour after the station. */
export function passageFigures(flights: number, seed: number): readonly Figure[] {
  return [true, false].flatMap((hasDme) =>
    [true, false].flatMap((isForecast) =>
      [30, 60, 120].flatMap((intervalS): Figure[] => {
        const squares = squaresAfter(flights, seed, { hasDme, isForecast, intervalS });
        const far = squares.filter((each) => each > FAR_OUT).length / squares.length;
        const dme = hasDme ? 'with DME' : 'without DME';
        const wind = isForecast ? 'forecast' : 'no forecast';
        const name = `after the station, ${dme}, ${wind}, every ${intervalS} s`;
        return [
          { name: `${name}: NEES (4 is ideal)`, value: meanOf(squares), goal: 4.5 },
          { name: `${name}: beyond ${FAR_OUT}, per cent`, value: 100 * far, goal: 1 },
        ];
      }),
    ),
  );
}

if (process.argv[1]?.endsWith('track-passage.ts') === true) {
  printFigures(passageFigures(option('flights', 200), option('seed', 1)));
}
