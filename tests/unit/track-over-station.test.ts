import { describe, expect, it } from 'vitest';
import { estimate, startEstimate } from '../../src/track/estimate.ts';
import type { WhichWay } from '../../src/track/guidance.ts';
import type { Flag, Reading } from '../../src/track/reading.ts';
import { AIRCRAFT } from './ocean-legs.ts';
import { answerTo } from './panel-rows.ts';
import type { Answer } from './panel-rows.ts';
import {
  FLAT_STATION,
  NORTHBOUND,
  flatLeg,
  panelAfter,
  placeAndWind,
  straightFlight,
} from './tracked-flight.ts';

/** Held in the wind of 20 kt from the left: asin(20 / 95). */
const HELD_DEG = 348;
const FLIGHT = { ...NORTHBOUND, rangeNm: 8 };
const IN = flatLeg(FLIGHT.leg);
const OUT = flatLeg({ ...FLIGHT.leg, direction: 'from', courseDeg: 0, endDmeNm: 20 });
/** 93 kt over the ground: overhead after 310 s, and within a mile of the station at 280 to 340 s. */
const APPROACH = straightFlight(FLIGHT, HELD_DEG, [0, 60, 120, 180, 240]);
const OVERHEAD_S = [280, 310, 340];
const BEYOND_S = [370, 400, 460, 520];

/** Over the station, with a needle and a flag that may show anything. */
function overhead(shown: readonly (readonly [number, Flag])[]): Reading[] {
  return OVERHEAD_S.map((atS, index) => {
    const [needleDots, flag] = shown[index] ?? [0, 'off'];
    return { ...panelAfter(FLIGHT, HELD_DEG, atS), needleDots, flag };
  });
}

const SHOWN: readonly (readonly [string, readonly (readonly [number, Flag])[]])[] = [
  [
    'OFF throughout',
    [
      [0, 'off'],
      [5, 'off'],
      [-5, 'off'],
    ],
  ],
  [
    'TO on the stop, then FROM on the other',
    [
      [-5, 'to'],
      [5, 'from'],
      [-5, 'from'],
    ],
  ],
  [
    'FROM before the station, OFF, and FROM half-way out',
    [
      [3, 'from'],
      [-5, 'off'],
      [4, 'from'],
    ],
  ],
  [
    'a needle that swings from stop to stop',
    [
      [5, 'to'],
      [-5, 'to'],
      [5, 'from'],
    ],
  ],
];

const answer = (readings: readonly Reading[], leg = IN): Answer =>
  answerTo(estimate(readings, leg, AIRCRAFT), leg);

const offHeld = (headingDeg: number): number =>
  Math.abs(((headingDeg - HELD_DEG + 540) % 360) - 180);

describe.each(SHOWN)('over the station: %s', (_, shown) => {
  const over = overhead(shown);

  it('the wind-corrected heading is held, without an alert, on the way in and on the way out', () => {
    for (let count = 1; count <= over.length; count += 1) {
      for (const leg of [IN, OUT]) {
        const { phase, whichWay, kinds } = answer([...APPROACH, ...over.slice(0, count)], leg);
        expect(['near-station', 'passage']).toContain(phase);
        expect(offHeld(whichWay.headingDeg)).toBeLessThanOrEqual(5);
        expect(kinds).toEqual([]);
      }
    }
  });

  it('an outbound leg goes on beyond it with place, speed and wind as they are', () => {
    const beyond = straightFlight(FLIGHT, HELD_DEG, BEYOND_S);
    for (let count = 1; count <= beyond.length; count += 1) {
      const { kinds, howFar, known, phase } = answer(
        [...APPROACH, ...over, ...beyond.slice(0, count)],
        OUT,
      );
      const pastNm = (((BEYOND_S[count - 1] ?? 0) - 310) * 92.9) / 3600;
      const { east, north, windEast, windNorth } = placeAndWind(known.belief.mean);
      expect(kinds).toEqual([]);
      expect(['outbound', 'near-station']).toContain(phase);
      expect(Math.abs(north - pastNm)).toBeLessThan(0.15);
      expect(Math.abs(east)).toBeLessThan(0.15);
      expect(Math.hypot(windEast - 20, windNorth)).toBeLessThan(6);
      expect(Math.abs((howFar.groundSpeedKt ?? 0) - 92.9)).toBeLessThan(4);
      // The leg ends at DME 20, 0.74 NM above the station.
      const toGoNm = Math.sqrt(20 ** 2 - 0.74 ** 2) - pastNm;
      expect(Math.abs((howFar.toGoNm ?? 0) - toGoNm)).toBeLessThan(3 * (howFar.sdNm ?? 0));
    }
  });

  it('needle and flag leave no trace in what is believed beyond it', () => {
    const beyond = straightFlight(FLIGHT, HELD_DEG, BEYOND_S);
    const shownAny = estimate([...APPROACH, ...over, ...beyond], OUT, AIRCRAFT);
    const calm = overhead([
      [0, 'off'],
      [0, 'off'],
      [0, 'off'],
    ]);
    const shownOff = estimate([...APPROACH, ...calm, ...beyond], OUT, AIRCRAFT);
    expect(shownAny.belief).toEqual(shownOff.belief);
  });
});

/** An aircraft that flies what it is told: five seconds of reaction, then three degrees a second. */
function flightAt(
  eastNm: number,
  northNm: number,
  windToEastKt: number,
): {
  northNm: () => number;
  panel: (atS: number) => Reading;
  fly: (way: WhichWay, forS: number) => void;
} {
  let east = eastNm;
  let north = northNm;
  let headingDeg = 0;
  return {
    northNm: () => north,
    panel: (atS) => {
      const still = { windToEastKt: 0, windToNorthKt: 0 };
      const rangeNm = Math.hypot(east, north);
      const bearingDeg = (Math.atan2(east, north) * 180) / Math.PI;
      const shown = panelAfter({ ...FLIGHT, ...still, rangeNm, bearingDeg }, headingDeg, 0);
      return { ...shown, atMs: atS * 1000 };
    },
    fly: ({ headingDeg: firstDeg, holdS, thenHeadingDeg }, forS) => {
      for (let atS = 1; atS <= forS; atS += 1) {
        const toDeg = atS > holdS + 5 ? thenHeadingDeg : atS > 5 ? firstDeg : headingDeg;
        const turn = ((toDeg - headingDeg + 540) % 360) - 180;
        headingDeg = (headingDeg + Math.max(-3, Math.min(3, turn)) + 360) % 360;
        east += (95 * Math.sin((headingDeg * Math.PI) / 180) + windToEastKt) / 3600;
        north += (95 * Math.cos((headingDeg * Math.PI) / 180)) / 3600;
      }
    },
  };
}

describe('the station', () => {
  const over = overhead([
    [-5, 'to'],
    [5, 'from'],
    [-5, 'from'],
  ]);

  it('is left on another course by the turn that the wind asks for', () => {
    const leg = flatLeg({ ...FLIGHT.leg, direction: 'from', courseDeg: 90, endDmeNm: 20 });
    const { phase, whichWay, kinds } = answer([...APPROACH, ...over.slice(0, 2)], leg);
    expect(phase).toBe('near-station');
    // The wind blows along this course: no correction.
    expect(Math.abs(whichWay.headingDeg - 90)).toBeLessThanOrEqual(5);
    expect(whichWay.turn).toBe('right');
    expect(kinds).toEqual([]);
  });

  it('is come to by the headings of the leg before, whichever leg is asked', () => {
    // Half a mile left of the line to the station; each answer of the leg to it is flown as told.
    const readings: Reading[] = [];
    const flight = flightAt(-0.5, -12, 20);
    for (let atS = 0; flight.northNm() < -1.2; atS += 90) {
      readings.push(flight.panel(atS));
      flight.fly(answer(readings).whichWay, 90);
    }
    const south = flatLeg({ ...FLIGHT.leg, direction: 'from', courseDeg: 60, endDmeNm: 20 });
    const { known, kinds } = answer(readings, south);
    const asked = placeAndWind(known.belief.mean);
    const flown = placeAndWind(answer(readings).known.belief.mean);
    expect(kinds).toEqual([]);
    expect(asked.east).toBeCloseTo(flown.east, 2);
    expect(asked.north).toBeCloseTo(flown.north, 2);
    expect(asked.windEast).toBeCloseTo(flown.windEast, 1);
    expect(asked.windNorth).toBeCloseTo(flown.windNorth, 1);
  });

  it('hands the place over to the next leg as it was known before it', () => {
    const inbound = estimate([...APPROACH, ...over.slice(0, 2)], IN, AIRCRAFT);
    const carried = startEstimate(OUT, AIRCRAFT, undefined, inbound);
    const beyond = straightFlight(FLIGHT, HELD_DEG, BEYOND_S);
    const known = estimate(beyond, OUT, AIRCRAFT, undefined, inbound);
    expect(offHeld(answerTo(carried, OUT).whichWay.headingDeg)).toBeLessThanOrEqual(5);
    const { east, north } = placeAndWind(known.belief.mean);
    expect(Math.abs(north - ((520 - 310) * 92.9) / 3600)).toBeLessThan(0.15);
    expect(Math.abs(east)).toBeLessThan(0.2);
    expect(answerTo(known, OUT).kinds).toEqual([]);
  });

  it('begun over, a leg waits for the first reading beyond to tell the radial', () => {
    const first = { ...panelAfter(FLIGHT, HELD_DEG, 310), needleDots: 3, flag: 'from' as const };
    const begun = answer([first], OUT);
    expect(begun.phase).toBe('near-station');
    expect(begun.seen.crossTrackNm).toBeNull();
    const beyond = answer([first, ...straightFlight(FLIGHT, HELD_DEG, [400])], OUT);
    expect(beyond.phase).toBe('outbound');
    expect(Math.abs(beyond.seen.crossTrackNm ?? 9)).toBeLessThan(0.1);
  });

  it('is not where a distance was read that no flight can have brought about', () => {
    // Three miles out a minute after five: 0.8 was misread.
    const early = straightFlight(FLIGHT, HELD_DEG, [0, 60, 120]);
    const slip = { ...panelAfter(FLIGHT, HELD_DEG, 180), dmeNm: 0.8 };
    const { phase, kinds } = answer([...early, slip]);
    expect(phase).toBe('track');
    expect(kinds).toEqual(['readings-disagree']);
  });

  it('low down, half a mile counts as over it, whatever the cone', () => {
    const low = { ...FLIGHT, leg: { ...FLIGHT.leg, station: FLAT_STATION, altitudeFt: 800 } };
    const leg = flatLeg(low.leg);
    const near = { ...panelAfter(low, HELD_DEG, 298), needleDots: 4 };
    const readings = [...straightFlight(low, HELD_DEG, [0, 60, 120, 180, 240]), near];
    const { phase, whichWay, kinds } = answerTo(estimate(readings, leg, AIRCRAFT), leg);
    expect(phase).toBe('near-station');
    expect(offHeld(whichWay.headingDeg)).toBeLessThanOrEqual(5);
    expect(kinds).toEqual([]);
  });
});
