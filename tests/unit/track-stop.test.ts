import { describe, expect, it } from 'vitest';
import { DEG_PER_RAD, wrap180 } from '../../src/base/angle.ts';
import { estimate } from '../../src/track/estimate.ts';
import { guide } from '../../src/track/guide.ts';
import { alertsOf } from '../../src/track/monitor.ts';
import { AIRCRAFT, OUTBOUND, dated } from './ocean-legs.ts';
import { FLAT_STATION, flatLeg, panelAfter } from './tracked-flight.ts';
import type { FlatFlight } from './tracked-flight.ts';
import type { Reading } from '../../src/track/reading.ts';

const OUT = dated(OUTBOUND);

/** Outbound with the needle on its left stop: the aircraft is right of the course, at least ten degrees. */
const onStop = (atS: number, dmeNm: number): Reading => ({
  atMs: atS * 1000,
  headingDeg: 140,
  courseSetDeg: 140,
  needleDots: -5,
  flag: 'from',
  dmeNm,
});

/** Degrees right of the course at which the readings put the aircraft. */
function rightOfCourseDeg(readings: readonly Reading[]): number {
  const { belief, scene } = estimate(readings, OUT, AIRCRAFT);
  return wrap180(belief.mean.bearingRad * DEG_PER_RAD - scene.courseDegTrue);
}

describe('a needle that rests on its stop from the first reading on', () => {
  const rest = [0, 20, 40, 60, 80].map((atS) => onStop(atS, 20 + atS / 40));

  it('tells only a side, and tells it once: the place does not creep outward', () => {
    const first = rightOfCourseDeg(rest.slice(0, 1));
    const last = rightOfCourseDeg(rest);
    expect(first).toBeGreaterThan(10);
    expect(first).toBeLessThan(25);
    expect(last - first).toBeLessThan(1);
    expect(last).toBeGreaterThan(10);
  });

  it('leaves the radial open: whatever the centred needle then shows is believed without a word', () => {
    for (const offDeg of [12, 30, 60]) {
      const centred: Reading = { ...onStop(100, 22.5), courseSetDeg: 140 + offDeg, needleDots: 0 };
      const known = estimate([...rest, centred], OUT, AIRCRAFT);
      expect(alertsOf(known)).toEqual([]);
      expect(rightOfCourseDeg([...rest, centred])).toBeGreaterThan(offDeg - 3);
      expect(rightOfCourseDeg([...rest, centred])).toBeLessThan(offDeg + 3);
    }
  });
});

/** Flights begun far off the line, with the needle on its stop: the course is 0, the wind 4 kt towards the east. */
const FAR_OFF = [
  { name: 'a leg to the station, 60 degrees off', direction: 'to', bearingDeg: 120 },
  { name: 'a leg to the station, 45 degrees off the other way', direction: 'to', bearingDeg: 225 },
  { name: 'a leg from the station, begun before it', direction: 'from', bearingDeg: 130 },
  { name: 'a leg from the station, 70 degrees off', direction: 'from', bearingDeg: 290 },
] as const;

const HEADINGS_DEG = [0, 60, 140, 260];

function farFlight(direction: 'to' | 'from', bearingDeg: number): FlatFlight {
  const leg = { station: FLAT_STATION, direction, courseDeg: 0, altitudeFt: 4500 };
  return { leg, rangeNm: 14, bearingDeg, windToEastKt: 4, windToNorthKt: 0 };
}

/** What the readings of one straight flight lead to, and the truth at the last of them. */
function flown(flight: FlatFlight, headingDeg: number, atS: readonly number[], obsDeg?: number) {
  const leg = flatLeg(flight.leg);
  const rest = atS.map((each) => rounded(panelAfter(flight, headingDeg, each)));
  const endS = (atS.at(-1) ?? 0) + (obsDeg === undefined ? 0 : 40);
  const readings =
    obsDeg === undefined ? rest : [...rest, rounded(panelAfter(flight, headingDeg, endS, obsDeg))];
  const known = estimate(readings, leg, AIRCRAFT);
  return { known, guidance: guide(known, leg), alerts: alertsOf(known), end: readings.at(-1) };
}

/** As a pilot reads: the needle in half dots, the DME in tenths. */
function rounded(reading: Reading): Reading {
  return {
    ...reading,
    needleDots: Math.round(2 * (reading.needleDots ?? 0)) / 2,
    dmeNm: Math.round(10 * (reading.dmeNm ?? 0)) / 10,
  };
}

/** The radial that the aircraft is on, to whole degrees, as an OBS is set. */
function radialOf(flight: FlatFlight, headingDeg: number, atS: number): number {
  const radial = [...Array(360).keys()].find((each) => {
    const { flag, needleDots } = panelAfter(flight, headingDeg, atS, each);
    return flag === 'from' && Math.abs(needleDots ?? 5) <= 0.26;
  });
  return radial ?? NaN;
}

const crossTrackOf = (flight: FlatFlight, headingDeg: number, atS: number): number => {
  const speed = AIRCRAFT.trueAirspeedKt / 3600;
  const east = flight.rangeNm * Math.sin(flight.bearingDeg / DEG_PER_RAD);
  return east + atS * (speed * Math.sin(headingDeg / DEG_PER_RAD) + flight.windToEastKt / 3600);
};

describe.each(FAR_OFF)('begun far off: $name', ({ direction, bearingDeg }) => {
  const flight = farFlight(direction, bearingDeg);
  const onStopFor = (headingDeg: number): number[] =>
    [0, 50, 100, 150, 200, 250].filter(
      (each) => Math.abs(panelAfter(flight, headingDeg, each).needleDots ?? 0) === 5,
    );

  it('tells nothing with confidence that is not so, and blames no instrument, while the needle is on its stop', () => {
    for (const headingDeg of HEADINGS_DEG) {
      const all = onStopFor(headingDeg);
      for (let count = 1; count <= all.length; count += 1) {
        const { guidance, alerts } = flown(flight, headingDeg, all.slice(0, count));
        const { crossTrackNm, crossTrackSdNm, wind } = guidance.seen;
        if (crossTrackNm !== null) {
          const truth = crossTrackOf(flight, headingDeg, all[count - 1] ?? 0);
          expect(Math.abs(crossTrackNm - truth)).toBeLessThan(3 * (crossTrackSdNm ?? 0));
        }
        if (wind) expect(wind.speedKt).toBeLessThan(4 + 3 * wind.sdKt);
        expect(alerts).toEqual([]);
        expect(guidance.nextQuestion).toBe('centre-needle-from');
      }
    }
  });

  it('believes the radial that the centred needle then shows, whatever was inferred before', () => {
    for (const headingDeg of HEADINGS_DEG) {
      const times = [0, 60, 120];
      const radialDeg = radialOf(flight, headingDeg, 160);
      const { guidance, alerts, known } = flown(flight, headingDeg, times, radialDeg);
      expect(alerts).toEqual([]);
      expect(known.openBearing).toBeNull();
      const truth = crossTrackOf(flight, headingDeg, 160);
      const { crossTrackNm, crossTrackSdNm } = guidance.seen;
      expect(Math.abs((crossTrackNm ?? NaN) - truth)).toBeLessThan(3 * (crossTrackSdNm ?? 0));
    }
  });
});
