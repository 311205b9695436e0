import { describe, test } from 'vitest';
import { timeToGoS } from '../../src/leg/time-to-go.ts';
import { trueAirspeedKt } from '../../src/wind/airspeed.ts';
import { isaTemperatureC } from '../../src/wind/standard-atmosphere.ts';
import table from './data/airspeeds.json' with { type: 'json' };
import { expectNear } from './near.ts';

describe('true airspeed: EASA question bank', () => {
  test.each(table.trueAirspeeds)(
    '$item: CAS $cas at $altitudeFt ft, $celsius C: TAS $tas',
    (row) => {
      const found = trueAirspeedKt({
        calibratedAirspeedKt: row.cas,
        pressureAltitudeFt: row.altitudeFt,
        temperatureC: row.celsius,
      });
      expectNear(found.ok ? found.value : NaN, row.tas, row.tolerance, row.item);
    },
  );
});

describe('standard temperature: EASA workings; ICAO Doc 7488, from memory', () => {
  test.each(table.temperatures)('$item ($source): $altitudeFt ft: $celsius C', (row) => {
    expectNear(isaTemperatureC(row.altitudeFt), row.celsius, row.tolerance, row.item);
  });
});

describe('time, speed, distance: Pilot’s Handbook 16-11, 16-12, 16-15, Fig 16-26', () => {
  test.each(table.times)('$item: $nm NM at $gs kt: $minutes minutes', (row) => {
    expectNear((timeToGoS(row.nm, row.gs) ?? NaN) / 60, row.minutes, row.tolerance, row.item);
  });
});
