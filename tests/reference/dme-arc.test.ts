import { describe, expect, test } from 'vitest';
import type { Leg } from '../../src/leg/leg.ts';
import { leadRadialsDeg, turnRadiusNm } from '../../src/track/arc-lead.ts';
import { planOnArc } from '../../src/track/arc-plan.ts';
import { turnOntoArcNm } from '../../src/track/arc-place.ts';
import type { StateMean } from '../../src/track/belief.ts';
import { sceneOf } from '../../src/track/scene.ts';
import { flyArc } from '../unit/arc-flight.ts';
import { FLAT_STATION, flatLeg } from '../unit/tracked-flight.ts';
import table from './data/dme-arcs.json' with { type: 'json' };
import { expectNear, expectNearDeg } from './near.ts';

type Rate = 'standard' | 'half';
type Onto = 'inbound' | 'outbound' | null;

function turnAtDmeNm(groundSpeedKt: number, dmeNm: number, isInbound: boolean): number {
  const leadNm = turnOntoArcNm(turnRadiusNm(groundSpeedKt), dmeNm, isInbound);
  return isInbound ? dmeNm + leadNm : dmeNm - leadNm;
}

describe('turn onto an arc: FAA Instrument Flying Handbook 9-17, US Navy P-871', () => {
  test.each(table.turnOnto)(
    '$item ($source): $groundSpeedKt kt, $dmeNm DME, inbound $isInbound: at $turnAtDmeNm',
    (row) => {
      const at = turnAtDmeNm(row.groundSpeedKt, row.dmeNm, row.isInbound);
      expectNear(at, row.turnAtDmeNm, row.tolerance, row.item);
    },
  );

  test('2.25: at 150 kt the lead lies between the FAA’s 0.5 NM and the Navy’s 0.8', () => {
    const leadNm = turnOntoArcNm(turnRadiusNm(150), 10, true);
    expect(leadNm).toBeGreaterThan(0.5);
    expect(leadNm).toBeLessThan(0.8);
  });

  test('2.31 (P-1265, p. 74): close in, outbound leads by more than the radius and inbound by less', () => {
    const radiusNm = turnRadiusNm(250, 'half');
    // "Half a mile" for arcs inside 12 DME: between a quarter and three quarters at 10.
    expectNear(turnOntoArcNm(radiusNm, 10, false) - radiusNm, 0.5, 0.25, 'outbound');
    expectNear(radiusNm - turnOntoArcNm(radiusNm, 10, true), 0.5, 0.25, 'inbound');
  });
});

describe('turn radius: US Navy P-340, P-871, P-1265', () => {
  test.each(table.radius)('$item ($source): $groundSpeedKt kt: $radiusNm NM', (row) => {
    const radius = turnRadiusNm(row.groundSpeedKt, row.rate as Rate);
    expectNear(radius, row.radiusNm, row.tolerance, row.item);
  });
});

describe('lead radial: US Navy P-340, P-871, P-1204', () => {
  test.each(table.leadRadials)(
    '$item ($source): $groundSpeedKt kt, $dmeNm DME, $onto: $radials radials',
    ({ item, radials, tolerance, groundSpeedKt, dmeNm, ...how }) => {
      const exit = { groundSpeedKt, dmeNm, onto: how.onto as Onto, rate: how.rate as Rate };
      expectNear(leadRadialsDeg(exit), radials, tolerance, item);
    },
  );

  test('2.16 (FAA 9-18): a light aircraft at 150 kt or less leads by under 5 degrees at 10 DME and beyond', () => {
    for (const groundSpeedKt of [70, 100, 150]) {
      for (const onto of ['inbound', 'outbound'] as const) {
        expect(leadRadialsDeg({ groundSpeedKt, dmeNm: 10, onto })).toBeLessThan(5);
      }
    }
  });

  test('2.30 (P-1265, p. 74): inbound and outbound differ by a third at 5 DME', () => {
    const lead = (onto: Onto): number =>
      leadRadialsDeg({ groundSpeedKt: 250, dmeNm: 5, onto, rate: 'half' });
    expectNear(lead('inbound') / lead(null), 4 / 3, 0.01, 'inbound');
    expectNear(lead('outbound') / lead(null), 2 / 3, 0.01, 'outbound');
  });
});

const ARC_LEG: Leg = {
  station: FLAT_STATION,
  direction: 'to',
  courseDeg: 145,
  altitudeFt: 3000,
  arc: { dmeNm: 12, toRadialDeg: 85, turn: 'clockwise' },
};

/** Heading told abeam the station to its north, flying east along the arc, so far outside it. */
function headingWhenOff(outsideNm: number, horizonS: number): number {
  const scene = sceneOf(flatLeg(ARC_LEG), {
    trueAirspeedKt: 100,
    degreesPerDot: 2,
    dotsFullScale: 5,
  });
  const { arc } = scene;
  if (!arc) throw new Error('the leg is an arc');
  const mean: StateMean = {
    lnRange: Math.log(arc.radiusNm + outsideNm),
    bearingRad: 0,
    windEastKt: 0,
    windNorthKt: 0,
    vorBiasDeg: 0,
    airspeedErrorKt: 0,
    headingErrorDeg: 0,
  };
  const situation = { mean, presentHeadingDeg: 90, horizonS, holdsLine: false };
  return planOnArc(mean, situation, scene, arc).headingDeg;
}

describe('correction on an arc: FAA 9-18 (10 to 20 degrees for half a mile), US Navy P-871 p. 60 (5 inside, 10 outside)', () => {
  test.each([30, 60, 120])(
    '2.12, 2.14: half a mile off costs 5 to 20 degrees of heading, towards the arc (readings each %i s)',
    (horizonS) => {
      const outside = headingWhenOff(0.5, horizonS);
      const inside = headingWhenOff(-0.5, horizonS);
      // The station lies to the right: outside means more to the right.
      expect(outside).toBeGreaterThan(90);
      expect(inside).toBeLessThan(90);
      const forHalfMile = (outside - inside) / 2;
      expect(forHalfMile).toBeGreaterThanOrEqual(5);
      expect(forHalfMile).toBeLessThanOrEqual(20);
    },
  );

  test('2.12: half to one mile outside with the station on the wingtip: about 20 degrees towards it', () => {
    for (const outsideNm of [0.5, 0.75]) {
      expectNear(headingWhenOff(outsideNm, 60) - 90, 20, 10, `${outsideNm} NM`);
    }
  });
});

/** No wind, no errors, the advice flown to the degree. */
const CALM = {
  arc: { dmeNm: 12, toRadialDeg: 85, turn: 'clockwise' },
  direction: 'to',
  courseDeg: 145,
  startNm: 16,
  airspeedKt: 100,
  windFromDeg: 0,
  windKt: 0,
  everyS: 60,
  seed: null,
} as const;

describe('an arc without wind: FAA Instrument Flying Handbook 9-17 to 9-18, Fig 9-17', () => {
  test('2.23: inbound on the 325 radial, a left turn of 90 degrees rolls out on 055', () => {
    const { answers } = flyArc(CALM);
    const turn = answers.find(({ guidance }) => {
      const { headingDeg, thenHeadingDeg } = guidance.whichWay;
      return guidance.arc?.isJoining && Math.abs(thenHeadingDeg - headingDeg) > 60;
    });
    expect(turn?.guidance.arc?.turn).toBe('left');
    expectNearDeg(turn?.guidance.whichWay.thenHeadingDeg ?? 0, 55, 1, '2.23');
  });

  test('2.11, 2.22: the turn is told at about 12.5 DME (half a mile and the reaction time before 12)', () => {
    const { answers, estimates } = flyArc({ ...CALM, everyS: 10 });
    const last = answers.findLastIndex(({ guidance }) => guidance.arc?.isJoining);
    const dmeNm = estimates[last]?.readings.at(-1)?.dmeNm ?? 0;
    const { turnInS } = answers[last]?.guidance.arc ?? {};
    // At 100 kt: 36 s a mile, and 5 s to react.
    expectNear(dmeNm - ((turnInS ?? 0) + 5) / 36, 12.5, 0.1, '2.22');
  });

  test('2.12, 2.13, 2.19: the station stays within 10 degrees of the wingtip', () => {
    // The first half minute is the turn; a step of 5 degrees may stand at 10 and a half.
    const settled = flyArc(CALM).besideDeg.slice(60);
    expect(Math.min(...settled)).toBeGreaterThan(79);
    expect(Math.max(...settled)).toBeLessThan(101);
  });
});

describe('where the handbooks disagree: the list in dme-arcs.json', () => {
  test('every row names its source, what is printed and why it is not followed', () => {
    for (const { item, source, printed, reason } of table.disagreements) {
      expect(Math.min(item.length, source.length, printed.length, reason.length)).toBeGreaterThan(
        3,
      );
    }
  });

  test('2.22: the FAA’s 10.5 at 150 kt is not what comes out', () => {
    expect(turnAtDmeNm(150, 10, true) - 10.5).toBeGreaterThan(0.15);
  });
});
