import { describe, expect, it } from 'vitest';
import { trueDeg } from '../../src/base/bearing.ts';
import { placeAt } from '../../src/earth/geodesic.ts';
import { computeLegs } from '../../src/leg/route/compute-legs.ts';
import { placeLegs } from '../../src/leg/route/place-legs.ts';
import type { RouteLeg } from '../../src/leg/route/route-leg.ts';
import { ocean, stationAt } from './station-sets.ts';

const qev = stationAt('QEV', placeAt(ocean, trueDeg(90), 30));
const zup = stationAt('ZUP', placeAt(ocean, trueDeg(90), 90));
const out: RouteLeg = { station: qev, direction: 'from', end: placeAt(ocean, trueDeg(90), 60) };
const legs: readonly RouteLeg[] = [
  { station: qev, direction: 'to', start: ocean },
  out,
  { station: zup, direction: 'to' },
];

function fieldsRefused(some: readonly RouteLeg[]): readonly string[] {
  const route = computeLegs({
    aircraft: { trueAirspeedKt: 95, fuelPerHour: 0, fuelUnit: 'L' },
    wind: { fromDegTrue: 0, speedKt: 0 },
    altitudeFt: 4_500,
    dateIso: '2026-11-25',
    legs: some,
  });
  return route.ok ? [] : route.problem.map(({ field }) => field);
}

describe('a station that is off the globe', () => {
  it.each([
    ['longitudeDeg', 200],
    ['longitudeDeg', NaN],
    ['latitudeDeg', 95],
  ])('is the one problem told: %s %d', (name, value) => {
    const bad = { ...qev, [name]: value };
    const field = `legs.0.station.${name}`;
    expect(fieldsRefused([{ station: bad, direction: 'to', start: ocean }])).toEqual([field]);
    expect(fieldsRefused([{ station: bad, direction: 'from', end: ocean }])).toEqual([field]);
  });

  it('does not put the legs beside it in the wrong', () => {
    const bad = { ...qev, longitudeDeg: 200 };
    const through = legs.map((leg) => (leg.station === qev ? { ...leg, station: bad } : leg));
    expect(fieldsRefused(through)).toEqual([
      'legs.0.station.longitudeDeg',
      'legs.1.station.longitudeDeg',
    ]);
    expect(
      fieldsRefused([
        { station: zup, direction: 'from' },
        { station: bad, direction: 'from', end: ocean },
      ]),
    ).toEqual(['legs.1.station.longitudeDeg']);
    expect(
      fieldsRefused([
        { station: bad, direction: 'to', start: ocean },
        { station: zup, direction: 'to' },
      ]),
    ).toEqual(['legs.0.station.longitudeDeg']);
  });
});

describe('the places of a route', () => {
  it('come from the neighbours where they are left out', () => {
    const placed = placeLegs(legs);
    if (!placed.ok) throw new Error('not placed');
    expect(placed.value[2]?.start).toEqual(out.end);
    expect(placed.value[1]?.start).toEqual({
      latitudeDeg: qev.latitudeDeg,
      longitudeDeg: qev.longitudeDeg,
    });
  });

  it('are asked for where neither the leg nor its neighbour tells them', () => {
    expect(fieldsRefused([{ station: qev, direction: 'to' }])).toEqual(['legs.0.start']);
    expect(
      fieldsRefused([
        { station: qev, direction: 'from' },
        { station: zup, direction: 'to' },
      ]),
    ).toEqual(['legs.0.end']);
  });
});
