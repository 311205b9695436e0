import { describe, expect, test } from 'vitest';
import { stationDeg } from '../../src/base/bearing.ts';
import { placeAt } from '../../src/earth/geodesic.ts';
import { datedLeg, type DatedLeg } from '../../src/leg/leg-frame.ts';
import type { Leg } from '../../src/leg/leg.ts';
import { dmeAt } from '../../src/panel/indication.ts';
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

const open: Leg = { station: QEV, direction: 'from', courseDeg: 80, altitudeFt: 4_500 };
const outbound: Leg = { ...open, endDmeNm: 14 };

function dated(leg: Leg): DatedLeg {
  const result = datedLeg(leg, '2026-11-25');
  if (!result.ok) throw new Error(result.problem[0]?.expected);
  return result.value;
}

/** What the DME shows at the end that was worked out. */
function dmeAtEnd(leg: Leg): number | null {
  const outward = leg.direction === 'from' ? leg.courseDeg : leg.courseDeg + 180;
  const radial = trueFromStation(stationDeg(outward), leg.station);
  return dmeAt(
    placeAt(leg.station, radial, dated(leg).endGroundNm ?? NaN),
    leg.altitudeFt,
    leg.station,
  );
}

describe('a leg on its day', () => {
  test('a course by the station is true by its declination: 080 at 7 west is 073', () => {
    expect(dated(outbound).courseDegTrue).toBe(73);
  });

  test('heights are taken from each antenna', () => {
    const dme = { latitudeDeg: 46.6, longitudeDeg: -21.25, elevationFt: 1_410 };
    const leg = dated({ ...outbound, station: { ...QEV, dme } });
    expect(leg.heightAboveVorFt).toBe(4_090);
    expect(leg.dmeAntenna?.heightFt).toBe(3_090);
    // 0.1 degrees of latitude are 6.00 NM.
    expect(leg.dmeAntenna?.northNm).toBeCloseTo(6, 1);
    expect(leg.dmeAntenna?.eastNm).toBeCloseTo(0, 6);
  });

  test('without DME there is no antenna to take a height from', () => {
    expect(dated({ ...outbound, station: { ...QEV, hasDme: false } }).dmeAntenna).toBeNull();
  });

  test('where it ends the DME shows what was asked for', () => {
    expect(dmeAtEnd(outbound)).toBeCloseTo(14, 6);
    expect(dmeAtEnd({ ...outbound, direction: 'to', endDmeNm: 3 })).toBeCloseTo(3, 6);
  });

  test('so it does with the antenna of the DME elsewhere', () => {
    const dme = { latitudeDeg: 46.55, longitudeDeg: -21.2, elevationFt: 900 };
    const leg = { ...outbound, station: { ...QEV, dme } };
    // The plane of the frame costs less than a metre at these distances.
    expect(dmeAtEnd(leg)).toBeCloseTo(14, 3);
    expect(dmeAtEnd({ ...leg, direction: 'to', endDmeNm: 6 })).toBeCloseTo(6, 3);
  });

  test('inbound without an end, or with 0, it ends over the station', () => {
    expect(dated({ ...open, direction: 'to' }).endGroundNm).toBe(0);
    expect(dated({ ...open, direction: 'to', endDmeNm: 0 }).endGroundNm).toBe(0);
  });

  test('outbound without an end there is none', () => {
    expect(dated(open).endGroundNm).toBeNull();
  });

  test('an end that the DME never shows on this radial is refused by name', () => {
    const dme = { latitudeDeg: 47.5, longitudeDeg: -21.25, elevationFt: 0 };
    const result = datedLeg({ ...outbound, station: { ...QEV, dme }, endDmeNm: 20 }, '2026-11-25');
    expect(result).toMatchObject({ ok: false, problem: [{ field: 'leg.endDmeNm', got: '20' }] });
  });

  test('a day that the magnetic model was not made for is refused by name', () => {
    expect(datedLeg(outbound, '2031-01-01')).toMatchObject({
      ok: false,
      problem: [{ field: 'dateIso', got: '2031-01-01' }],
    });
  });
});
