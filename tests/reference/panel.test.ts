import { describe, expect, test } from 'vitest';
import { stationDeg } from '../../src/base/bearing.ts';
import { placeAt } from '../../src/earth/geodesic.ts';
import { indicationAt, type Indication } from '../../src/panel/indication.ts';
import { needleDotsOn } from '../../src/panel/needle.ts';
import { trueFromStation } from '../../src/station/radial.ts';
import type { Station } from '../../src/station/station.ts';
import table from './data/panel-indications.json' with { type: 'json' };

const QEV: Station = {
  ident: 'QEV',
  latitudeDeg: 46.5,
  longitudeDeg: -21.25,
  elevationFt: 410,
  declinationDegEast: -7,
  hasDme: true,
};

/** What is shown 20 NM out on a radial at 4,500 ft. */
function shown(radial: number, obs: number): Indication {
  const place = placeAt(QEV, trueFromStation(stationDeg(radial), QEV), 20);
  const scale = { degreesPerDot: 2, dotsFullScale: 5 };
  return indicationAt(place, 4_500, { station: QEV, courseSet: stationDeg(obs), scale });
}

describe('needle and flag: Instrument Flying Handbook ch. 9, FAA items', () => {
  test.each(table.rows)('$item ($source): radial $radial, OBS $obs: $flag, $needle', (row) => {
    const { flag, needleDots } = shown(row.radial, row.obs);
    const side =
      Math.abs(needleDots ?? NaN) < 0.005 ? 'centred' : (needleDots ?? NaN) < 0 ? 'left' : 'right';
    expect({ flag, side }).toEqual({ flag: row.flag, side: row.needle });
  });

  test('1.9: the inbound course to a station is the reciprocal of the radial', () => {
    for (const radial of [0, 35, 120, 215, 299]) {
      expect(shown(radial, radial + 180).flag).toBe('to');
      expect(shown(radial, radial + 180).needleDots).toBeCloseTo(0, 6);
    }
  });

  test('1.11: with the reciprocal of the course set the needle points the wrong way', () => {
    const right = shown(186, 180).needleDots ?? NaN;
    expect(right).toBeCloseTo(-3, 2);
    expect(shown(186, 0).needleDots).toBeCloseTo(-right, 9);
  });

  test('1.15 (Pilot’s Handbook 16-25): passing abeam the needle stands on the station’s side', () => {
    // Flying north, OBS 360, 20 NM east of the station: it lies to the left.
    expect(shown(101, 0)).toMatchObject({ flag: 'to', needleDots: -5 });
    expect(shown(79, 0)).toMatchObject({ flag: 'from', needleDots: -5 });
  });

  test('1.18 (public lecture notes): within 10 degrees of abeam the flag shows neither', () => {
    for (const radial of [81, 90, 99, 261, 270, 279]) {
      expect(shown(radial, 0)).toMatchObject({ flag: 'off', needleDots: null });
    }
  });

  test('1.20 (ICAO Doc 8168 vol. I): within 50 degrees of the vertical the flag is off', () => {
    const height = 4_500 - QEV.elevationFt;
    const at = (angleDeg: number): Indication => {
      const groundNm = (height / 6_076.1155) * Math.tan((angleDeg * Math.PI) / 180);
      const place = placeAt(QEV, trueFromStation(stationDeg(180), QEV), groundNm);
      return indicationAt(place, 4_500, {
        station: QEV,
        courseSet: stationDeg(0),
        scale: { degreesPerDot: 2, dotsFullScale: 5 },
      });
    };
    expect(at(49.9)).toMatchObject({ flag: 'off', needleDots: null });
    expect(at(50.1).flag).toBe('to');
    expect(at(0).dmeNm).toBeCloseTo(height / 6_076.1155, 6);
  });
});

describe('needle scales: Instrument Flying Handbook 9-11, Australian PPL text, USAF AFMAN 11-217', () => {
  const dots = (offDeg: number, degreesPerDot: number, dotsFullScale: number): number =>
    -needleDotsOn(stationDeg(offDeg), stationDeg(0), { degreesPerDot, dotsFullScale });

  test('1.1 (US): the edge of the ring is 2 degrees, each dot 2 more, the full needle 12 or more', () => {
    expect(dots(2, 2, 6)).toBeCloseTo(1, 9);
    expect(dots(8, 2, 6)).toBeCloseTo(4, 9);
    expect(dots(12, 2, 6)).toBeCloseTo(6, 9);
    expect(dots(25, 2, 6)).toBe(6);
  });

  test('1.3 (Australia): 5 dots of 2 degrees; the third dot is 6 degrees, the last one 10', () => {
    expect(dots(6, 2, 5)).toBeCloseTo(3, 9);
    expect(dots(10, 2, 5)).toBeCloseTo(5, 9);
    expect(dots(10.1, 2, 5)).toBe(5);
  });

  test('1.4 (USAF): 2 dots of 5 degrees; full deflection is 10', () => {
    expect(dots(5, 5, 2)).toBeCloseTo(1, 9);
    expect(dots(10, 5, 2)).toBeCloseTo(2, 9);
    expect(dots(11, 5, 2)).toBe(2);
  });
});
