import { describe, expect, test } from 'vitest';
import { stationDeg } from '../../src/base/bearing.ts';
import { placeAt } from '../../src/earth/geodesic.ts';
import { dmeAt, indicationAt } from '../../src/panel/indication.ts';
import { trueFromStation } from '../../src/station/radial.ts';
import type { Station } from '../../src/station/station.ts';

const QEV: Station = {
  ident: 'QEV',
  latitudeDeg: 46.5,
  longitudeDeg: -21.25,
  elevationFt: 410,
  declinationDegEast: -7,
  hasDme: true,
};
const scale = { degreesPerDot: 2, dotsFullScale: 5 };

const out = (radial: number, nm: number) =>
  placeAt(QEV, trueFromStation(stationDeg(radial), QEV), nm);

describe('the panel', () => {
  test('right of the course the needle is left: fly left', () => {
    const tuned = { station: QEV, courseSet: stationDeg(80), scale };
    expect(indicationAt(out(83, 20), 4_500, tuned).needleDots).toBeCloseTo(-1.5, 6);
  });

  test('out of sight of the station shows neither flag nor distance', () => {
    // 1.23 x (sqrt 4500 + sqrt 410) is 107 NM.
    const tuned = { station: QEV, courseSet: stationDeg(80), scale };
    expect(indicationAt(out(80, 106), 4_500, tuned).flag).toBe('from');
    expect(indicationAt(out(80, 109), 4_500, tuned)).toEqual({
      needleDots: null,
      flag: 'off',
      dmeNm: null,
    });
  });

  test('shows no distance without DME', () => {
    expect(dmeAt(out(80, 20), 4_500, { ...QEV, hasDme: false })).toBeNull();
  });

  test('shows the distance to the DME’s own antenna where it stands elsewhere', () => {
    const dme = { ...out(80, 5), elevationFt: 4_500 };
    expect(dmeAt(out(80, 20), 4_500, { ...QEV, dme })).toBeCloseTo(15, 6);
  });

  test('keeps showing distance in the cone, where the needle is blind', () => {
    const shown = indicationAt(QEV, 4_500, { station: QEV, courseSet: stationDeg(80), scale });
    expect(shown.flag).toBe('off');
    expect(shown.dmeNm).toBeCloseTo(4_090 / 6_076.1155, 6);
  });
});
