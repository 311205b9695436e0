import { describe, expect, it } from 'vitest';
import { dmeAtEndNm } from '../../src/procedure/dme-at-end.ts';
import { INBOUND, OUTBOUND, QEV, XUN, dated } from './ocean-legs.ts';

describe('what the DME reads with so much to go', () => {
  it('outbound counts up to the end', () => {
    const leg = dated(OUTBOUND);
    expect(dmeAtEndNm(leg, 0)).toBeCloseTo(14, 6);
    // 14 NM slant are 13.984 NM over ground at 4,090 ft; two less, and back to slant.
    expect(dmeAtEndNm(leg, 2)).toBeCloseTo(12.003, 3);
  });

  it('inbound reads the height when nothing is left to go', () => {
    // 4,090 ft are 0.673 NM; with two miles over ground the hypotenuse is 2.110 NM.
    expect(dmeAtEndNm(dated(INBOUND), 0)).toBeCloseTo(0.673, 3);
    expect(dmeAtEndNm(dated(INBOUND), 2)).toBeCloseTo(2.11, 3);
  });

  it('is measured to the antenna of the DME where that stands elsewhere', () => {
    // Six minutes of latitude north of the station: 6.0 NM. Course 112 is 105 true, so two miles out the
    // aircraft is 1.93 NM west and 0.52 NM north: 1.93 and 5.48 from the antenna, 5.81; slant 5.85.
    const dme = { latitudeDeg: 46.6, longitudeDeg: -21.25, elevationFt: 410 };
    const leg = dated({ ...INBOUND, station: { ...QEV, dme } });
    expect(Math.abs((dmeAtEndNm(leg, 2) ?? 0) - 5.85)).toBeLessThan(0.02);
  });

  it('is unknown without DME, without an end and before the station', () => {
    const endless = { station: QEV, direction: 'from', courseDeg: 140, altitudeFt: 4500 } as const;
    expect(dmeAtEndNm(dated({ ...INBOUND, station: XUN }), 2)).toBeNull();
    expect(dmeAtEndNm(dated(endless), 2)).toBeNull();
    expect(dmeAtEndNm(dated(OUTBOUND), 15)).toBeNull();
  });
});
