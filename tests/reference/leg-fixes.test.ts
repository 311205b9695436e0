import { describe, expect, it } from 'vitest';
import { trueDeg } from '../../src/base/bearing.ts';
import { geodesicTo, placeAt } from '../../src/earth/geodesic.ts';
import { crossingRadial } from '../../src/leg/route/crossing-radial.ts';
import { stationAt } from '../unit/station-sets.ts';
import { expectNear, expectNearDeg } from './near.ts';

const NM_PER_RAD = (180 / Math.PI) * 60;
const low = { altitudeFt: 0 };

describe('two radials that cross: Ed Williams, Aviation Formulary 1.46, "Intersecting radials"', () => {
  const reo = { latitudeDeg: 42.6, longitudeDeg: -117.866 };
  const bke = stationAt('BKE', { latitudeDeg: 44.84, longitudeDeg: -117.806 });
  const crossing = { latitudeDeg: 43.572, longitudeDeg: -116.189 };
  const own = geodesicTo(reo, crossing);
  const found = crossingRadial(
    { place: crossing, trackDegTrue: own.azimuthThereDeg, rangeNm: own.distanceNm, ...low },
    { ...bke, declinationDegEast: 0 },
  );

  // The formulary's Earth is a sphere and its answer printed to 0.001 degrees: 0.2 degrees and 0.5 % for both.
  it('the leg lies on radial 051 (true) of the one station', () => {
    expectNearDeg(own.azimuthDeg, 51, 0.2, 'radial');
  });

  it('it is radial 137 (true) of the other', () => {
    expectNearDeg(found?.radialDeg ?? NaN, 137, 0.2, 'radial');
  });

  it('which is 0.029986 radians away and crosses at 1.500667 radians', () => {
    expectNear(found?.distanceNm ?? NaN, 0.029986 * NM_PER_RAD, 0.5, 'NM');
    expectNear(found?.angleDeg ?? NaN, (1.500667 * 180) / Math.PI, 0.3, 'degrees');
  });

  it('by the station’s own declination: 16 east makes it radial 121', () => {
    const aligned = crossingRadial(
      { place: crossing, trackDegTrue: own.azimuthThereDeg, rangeNm: own.distanceNm, ...low },
      { ...bke, declinationDegEast: 16 },
    );
    expectNearDeg(aligned?.radialDeg ?? NaN, 121, 0.2, 'radial');
  });
});

describe('how far a fix can be off: 1 degree at 60 NM is 1 NM (Pilot’s Handbook 16-27)', () => {
  const place = { latitudeDeg: 46.5, longitudeDeg: -28 };
  const square = (nm: number) =>
    crossingRadial(
      { place, trackDegTrue: 90, rangeNm: 0, ...low },
      stationAt('ZUP', placeAt(place, trueDeg(0), nm)),
    )?.alongSdNm ?? NaN;

  it.each([60, 30, 15])('a radial wrong by 1.6 degrees, square across, %i NM away', (nm) => {
    // The rule of thumb is 4.7 % small.
    expectNear(square(nm), (1.6 * nm) / 60, (0.05 * 1.6 * nm) / 60, 'NM');
  });

  it('grows as the crossing gets flatter: at 30 degrees the second radial alone counts double', () => {
    const flat = crossingRadial(
      { place, trackDegTrue: 30, rangeNm: 0, ...low },
      stationAt('ZUP', placeAt(place, trueDeg(0), 20)),
    );
    expect(flat?.angleDeg).toBeCloseTo(30, 6);
    expectNear(flat?.alongSdNm ?? NaN, 2 * square(20), 1e-6, 'NM');
  });
});
