import fc from 'fast-check';
import geographiclib from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import { turnDeg } from '../../src/base/angle.ts';
import { trueDeg } from '../../src/base/bearing.ts';
import { geodesicTo, placeAt, type LatLon } from '../../src/earth/geodesic.ts';
import { crossingRadial } from '../../src/leg/route/crossing-radial.ts';
import { legFixes } from '../../src/leg/route/leg-fixes.ts';
import { placeLegs } from '../../src/leg/route/place-legs.ts';
import { proposeRoute } from '../../src/leg/route/propose-route.ts';
import { indexStations } from '../../src/station/library/find-stations.ts';
import { receptionNm } from '../../src/station/library/reception.ts';
import { coneRadiusNm } from '../../src/station/cone.ts';
import { ocean, scattered, stationAt } from '../unit/station-sets.ts';

const latitude = fc.double({ min: -70, max: 70, noNaN: true });
const direction = fc.double({ min: 0, max: 360, noNaN: true });
const miles = fc.double({ min: 3, max: 55, noNaN: true });
const declination = fc.double({ min: -30, max: 30, noNaN: true });

/** Where the leg is crossed by a geodesic that leaves a station on a true direction: NM beyond the place. */
function crossedAtNm(own: LatLon, ownDeg: number, rangeNm: number, from: LatLon, deg: number) {
  const besideAt = (nm: number): number => {
    const here = placeAt(own, trueDeg(ownDeg), rangeNm + nm);
    return turnDeg(trueDeg(deg), geodesicTo(from, here).azimuthDeg);
  };
  let [low, high] = [-12, 12];
  const sign = Math.sign(besideAt(low));
  for (let step = 0; step < 50; step += 1) {
    const middle = (low + high) / 2;
    if (Math.sign(besideAt(middle)) === sign) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

describe('a crossing radial, against geographiclib', () => {
  it('passes through the checkpoint, by the second station’s own declination', () => {
    fc.assert(
      fc.property(
        latitude,
        direction,
        miles,
        fc.double({ min: 31, max: 149, noNaN: true }),
        fc.boolean(),
        declination,
        (latitudeDeg, trackDeg, nm, cutDeg, isLeft, declinationDegEast) => {
          const place = { latitudeDeg, longitudeDeg: 179.5 };
          const second = {
            ...stationAt(
              'ZUP',
              placeAt(place, trueDeg(trackDeg + (isLeft ? -cutDeg : cutDeg)), nm),
            ),
            declinationDegEast,
          };
          const at = { place, trackDegTrue: trackDeg, rangeNm: 20, altitudeFt: 4_500 };
          const crossing = crossingRadial(at, second);
          if (crossing === null) throw new Error('not offered');
          const there = geographiclib.Geodesic.WGS84.Direct(
            second.latitudeDeg,
            second.longitudeDeg,
            crossing.radialDeg + declinationDegEast,
            crossing.distanceNm * 1852,
          );
          const missedM = geographiclib.Geodesic.WGS84.Inverse(
            there.lat2 ?? NaN,
            there.lon2 ?? NaN,
            place.latitudeDeg,
            place.longitudeDeg,
          ).s12;
          expect(missedM).toBeLessThan(0.01);
          expect(crossing.angleDeg).toBeCloseTo(Math.min(cutDeg, 180 - cutDeg), 6);
        },
      ),
    );
  });

  it('is as uncertain as two radials, each 1.6 degrees wrong in turn, shift their crossing', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -60, max: 60, noNaN: true }),
        direction,
        fc.double({ min: 5, max: 40, noNaN: true }),
        fc.double({ min: 60, max: 120, noNaN: true }),
        fc.double({ min: 5, max: 40, noNaN: true }),
        (latitudeDeg, ownDeg, rangeNm, cutDeg, secondNm) => {
          const own = { latitudeDeg, longitudeDeg: -28 };
          const place = placeAt(own, trueDeg(ownDeg), rangeNm);
          const trackDegTrue = geodesicTo(own, place).azimuthThereDeg;
          const second = stationAt('ZUP', placeAt(place, trueDeg(trackDegTrue + cutDeg), secondNm));
          const at = { place, trackDegTrue, rangeNm, altitudeFt: 0 };
          const told = crossingRadial(at, second)?.alongSdNm ?? NaN;
          const toPlaceDeg = geodesicTo(second, place).azimuthDeg;
          const bySecond = crossedAtNm(own, ownDeg, rangeNm, second, toPlaceDeg + 1.6);
          const byOwn = crossedAtNm(own, ownDeg + 1.6, rangeNm, second, toPlaceDeg);
          // First order against the full shift: the second order is up to the angle itself, 1.6 degrees over the slant.
          expect(Math.hypot(bySecond, byOwn)).toBeGreaterThan(told * 0.93);
          expect(Math.hypot(bySecond, byOwn)).toBeLessThan(told * 1.07);
        },
      ),
      { numRuns: 60 },
    );
  });
});

/** Forty stations on thirty frequencies. */
const strewn = (seed: number) =>
  scattered(seed, 40).map((each, at) => ({ ...each, frequencyMhz: 112 + (at % 30) / 20 }));

describe('the fixes of a proposed flight', () => {
  const destination = placeAt(ocean, trueDeg(90), 200);
  it.each(Array.from({ length: 12 }, (_, at) => 301 + at))(
    'lie on their legs, and are told by stations received there, at 60 to 120 degrees where a DME is (set %i)',
    (seed) => {
      const altitudeFt = 4_500;
      const library = strewn(seed).map((each, at) => ({ ...each, hasDme: at % 3 !== 0 }));
      const route = proposeRoute(library, { start: ocean, destination, altitudeFt });
      if (!route.ok) return;
      const placed = placeLegs(route.value.legs);
      if (!placed.ok) throw new Error('not placed');
      expect(route.value.fixes).toEqual(legFixes(placed.value, indexStations(library), altitudeFt));
      for (const [at, leg] of placed.value.entries()) {
        const lengthNm = geodesicTo(leg.start, leg.end).distanceNm;
        for (const { place, flownNm, rangeNm, crossing } of route.value.fixes[at] ?? []) {
          const backNm = geodesicTo(leg.start, place).distanceNm;
          expect(backNm + geodesicTo(place, leg.end).distanceNm).toBeCloseTo(lengthNm, 6);
          expect(backNm).toBeCloseTo(flownNm, 6);
          expect(geodesicTo(place, leg.station).distanceNm).toBeCloseTo(rangeNm, 6);
          if (crossing === null) continue;
          const { station, distanceNm, angleDeg } = crossing;
          expect(geodesicTo(place, station).distanceNm).toBeCloseTo(distanceNm, 6);
          expect(distanceNm).toBeLessThanOrEqual(receptionNm(station, altitudeFt));
          expect(distanceNm).toBeGreaterThan(coneRadiusNm(altitudeFt - station.elevationFt));
          expect(station.ident).not.toBe(leg.station.ident);
          const alike = library.filter(
            (other) =>
              other.id !== station.id &&
              other.frequencyMhz === station.frequencyMhz &&
              geodesicTo(other, place).distanceNm < 1.23 * Math.sqrt(altitudeFt),
          );
          expect(alike).toEqual([]);
          if (leg.station.hasDme) expect(angleDeg).toBeGreaterThanOrEqual(60);
        }
      }
    },
  );

  it('are there on most sets, so that the above is no empty claim', () => {
    const counts = Array.from({ length: 12 }, (_, at) => 301 + at).map((seed) => {
      const library = strewn(seed);
      const route = proposeRoute(library, { start: ocean, destination, altitudeFt: 4_500 });
      return route.ok ? route.value.fixes.flat().length : 0;
    });
    expect(counts.filter((count) => count > 0).length).toBeGreaterThan(8);
  });
});
