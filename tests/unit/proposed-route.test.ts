import { describe, expect, it } from 'vitest';
import { placeAt } from '../../src/earth/geodesic.ts';
import { trueDeg } from '../../src/base/bearing.ts';
import { computeLegs } from '../../src/leg/route/compute-legs.ts';
import { legsOf, proposeRoute } from '../../src/leg/route/propose-route.ts';
import type { LibraryStation } from '../../src/station/library/library-station.ts';
import { allChains, ocean, scattered, stationAt } from './station-sets.ts';

const start = ocean;
const destination = placeAt(ocean, trueDeg(90), 200);

function proposed(library: readonly LibraryStation[], altitudeFt = 4500) {
  return proposeRoute(library, { start, destination, altitudeFt });
}

const names = (library: readonly LibraryStation[], altitudeFt?: number) => {
  const route = proposed(library, altitudeFt);
  return route.ok ? route.value.stations.map(({ ident }) => ident).join(' ') : 'none';
};

describe('a proposed route', () => {
  const row = [35, 100, 165].map((nm, at) => stationAt(`S${at}`, placeAt(ocean, trueDeg(90), nm)));

  it('takes the stations along the way, each within reception', () => {
    expect(names(row)).toBe('S0 S1 S2');
  });

  it('leaves a station out that is not needed', () => {
    const needless = stationAt('N', placeAt(ocean, trueDeg(90), 130));
    expect(names([...row, needless])).toBe('S0 S1 S2');
  });

  it('prefers the smaller detour', () => {
    const off = (nm: number) => placeAt(placeAt(ocean, trueDeg(90), 100), trueDeg(0), nm);
    const ends = row.filter((_, at) => at !== 1);
    expect(names([...ends, stationAt('FAR', off(30)), stationAt('NEAR', off(12))])).toBe(
      'S0 NEAR S2',
    );
  });

  it('changes over midway (FAA AIM 5-3-6), and flies a to-leg and a from-leg at each station', () => {
    const route = proposed(row);
    if (!route.ok) throw new Error('no route');
    expect(route.value.legs.map(({ direction }) => direction).join(' ')).toBe(
      'to from to from to from',
    );
    const half = placeAt(ocean, trueDeg(90), 67.5);
    expect(route.value.legs[1]?.end?.longitudeDeg).toBeCloseTo(half.longitudeDeg, 3);
    expect(route.value.legs[2]?.start).toEqual(route.value.legs[1]?.end);
    expect(route.value.extraNm).toBeCloseTo(0, 0);
  });

  it('begins outbound when the start is over a station', () => {
    const over = proposed([
      stationAt('A', ocean),
      ...row.slice(1),
      stationAt('B', placeAt(ocean, trueDeg(90), 60)),
    ]);
    if (!over.ok) throw new Error('no route');
    expect(over.value.stations[0]?.ident).toBe('A');
    expect(over.value.legs[0]).toMatchObject({ direction: 'from', station: { ident: 'A' } });
    const only = proposeRoute([stationAt('A', ocean)], {
      start,
      destination: placeAt(ocean, trueDeg(90), 30),
      altitudeFt: 4500,
    });
    if (!only.ok) throw new Error('no route');
    expect(only.value.legs.map(({ direction }) => direction)).toEqual(['from']);
  });

  it('says what would be needed where nothing is in reach', () => {
    const gap = row.filter((_, at) => at !== 1);
    const refused = proposed(gap);
    expect(refused.ok).toBe(false);
    if (refused.ok) return;
    expect(refused.problem[0]?.field).toBe('stations');
    const high = gap.map((each) => ({ ...each, serviceClass: 'VH' as const }));
    const higher = proposed(high);
    if (higher.ok) throw new Error('reached');
    expect(higher.problem[0]).toMatchObject({
      field: 'altitudeFt',
      expected: expect.stringContaining('fly at 5000 ft') as string,
    });
  });

  it('judges each leg by the class of its own station: a terminal one serves 25 NM (FAA AIM 1-1-8)', () => {
    const terminal = {
      ...stationAt('TML', placeAt(ocean, trueDeg(90), 20)),
      serviceClass: 'T' as const,
    };
    const legs = legsOf([terminal], {
      start,
      destination: placeAt(ocean, trueDeg(90), 55),
      altitudeFt: 4500,
    });
    const computed = computeLegs({
      aircraft: { trueAirspeedKt: 95, fuelPerHour: 0, fuelUnit: 'L' },
      wind: { fromDegTrue: 0, speedKt: 0 },
      altitudeFt: 4500,
      dateIso: '2026-11-25',
      legs,
    });
    if (!computed.ok) throw new Error('not computed');
    expect(computed.value.legs[1]?.serviceVolumeNm).toBe(25);
    expect(computed.value.legs[1]?.warnings.join(' ')).toContain('serves 25 NM');
  });

  it('refuses a start equal to the destination', () => {
    const refused = proposeRoute(row, { start, destination: start, altitudeFt: 4500 });
    expect(refused).toMatchObject({ ok: false, problem: [{ field: 'destination' }] });
  });

  it('crosses the antimeridian', () => {
    const west = { latitudeDeg: 10, longitudeDeg: 179 };
    const east = placeAt(west, trueDeg(90), 150);
    const library = [30, 75, 120].map((nm, at) =>
      stationAt(`S${at}`, placeAt(west, trueDeg(90), nm)),
    );
    const route = proposeRoute(library, { start: west, destination: east, altitudeFt: 4500 });
    expect(route.ok && route.value.stations.length).toBeGreaterThan(1);
  });

  it.each([1, 2, 3, 4, 5, 6, 7, 8])(
    'costs the same as the best of all chains of a small set (set %i)',
    (seed) => {
      const library = scattered(seed, 9);
      const route = proposed(library);
      const best = allChains(library, start, destination, 4500);
      expect(route.ok).toBe(best !== null);
      if (!route.ok || best === null) return;
      expect(route.value.distanceNm + 2 * route.value.stations.length).toBeCloseTo(best, 6);
    },
  );
});
