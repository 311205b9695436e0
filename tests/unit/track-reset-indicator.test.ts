import { describe, expect, it } from 'vitest';
import { addReading, startEstimate } from '../../src/track/estimate.ts';
import { guide } from '../../src/track/guide.ts';
import { alertsOf } from '../../src/track/monitor.ts';
import type { Reading } from '../../src/track/reading.ts';
import { AIRCRAFT } from './ocean-legs.ts';
import { FLAT_STATION, NORTHBOUND, flatLeg } from './tracked-flight.ts';

const RAD = Math.PI / 180;
const LEG = flatLeg({ ...NORTHBOUND.leg, station: FLAT_STATION });
const MINUTES = 40;

/** What became of a flight to the station, 70 NM out, in a wind of 20 kt from the west. */
interface Flown {
  /** Minutes at which the direction indicator was told. */
  readonly told: readonly number[];
  /** Heading flown less heading shown, as believed after the last reading, degrees. */
  readonly headingErrorDeg: number;
}

/**
 * Flown on the answers, with an indicator that drifts by so much in two minutes after the sixth reading; it
 * is set again by the compass as soon as that is told.
 */
function flown(driftDeg: number): Flown {
  const told: number[] = [];
  let known = startEstimate(LEG, AIRCRAFT);
  let [east, north, offDeg, headingDeg] = [0, -70, 0, 0];
  for (let minute = 0; minute <= MINUTES; minute += 1) {
    const radial = Math.atan2(east, north) / RAD;
    const off = radial - 180 - 360 * Math.round((radial - 180) / 360);
    const needleDots = Math.min(5, Math.max(-5, Math.round(off) / 2));
    const reading: Reading = {
      atMs: minute * 60_000,
      headingDeg: (Math.round(headingDeg) + 360) % 360,
      courseSetDeg: 0,
      needleDots,
      flag: 'to',
      dmeNm: Math.round(Math.hypot(east, north, 0.74) * 10) / 10,
    };
    known = addReading(known, reading);
    if (alertsOf(known).some(({ kind }) => kind === 'heading-indicator-disagrees')) {
      told.push(minute);
      offDeg = 0;
    }
    headingDeg = guide(known, LEG).whichWay.headingDeg;
    for (let second = 0; second < 60; second += 1) {
      if (minute >= 6 && minute < 8) offDeg += driftDeg / 120;
      const speed = AIRCRAFT.trueAirspeedKt / 3600;
      east += speed * Math.sin((headingDeg + offDeg) * RAD) + 20 / 3600;
      north += speed * Math.cos((headingDeg + offDeg) * RAD);
    }
  }
  return { told, headingErrorDeg: known.belief.mean.headingErrorDeg };
}

describe('a direction indicator that has drifted', () => {
  it.each([-30, -25, 20, 25])(
    'by %s degrees is told, and not any more from the second reading after it was set again',
    (driftDeg) => {
      const { told, headingErrorDeg } = flown(driftDeg);
      const first = told[0] ?? Infinity;
      expect(first).toBeGreaterThan(6);
      expect(first).toBeLessThan(20);
      expect(told.filter((minute) => minute >= first + 2)).toEqual([]);
      expect(Math.abs(headingErrorDeg)).toBeLessThan(4);
    },
  );
});
