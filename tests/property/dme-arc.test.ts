import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { wrap180, wrap360 } from '../../src/base/angle.ts';
import { headingAlongDeg, speedAlongKt, timeAlongArcS } from '../../src/track/arc-air.ts';
import { leadRadialsDeg, turnRadiusNm } from '../../src/track/arc-lead.ts';
import { arcPlaceOf, turnOntoArcNm } from '../../src/track/arc-place.ts';
import type { ArcScene } from '../../src/track/arc-scene.ts';
import { crossingDegTrue } from '../../src/track/arc-scene.ts';
import type { StateMean } from '../../src/track/belief.ts';
import { within } from './flying.ts';

const RAD = Math.PI / 180;

const sense: fc.Arbitrary<1 | -1> = fc.constantFrom(1, -1);

/** An arc about a DME that may stand up to a mile from the VOR. */
const anyArc: fc.Arbitrary<ArcScene> = fc
  .record({
    radiusNm: within(3, 40),
    sense,
    join: within(0, 360),
    sweep: within(5, 300),
    eastNm: within(-0.7, 0.7),
    northNm: within(-0.7, 0.7),
  })
  .map(({ join, sweep, ...arc }) => ({
    ...arc,
    dmeNm: arc.radiusNm,
    joinRadialDegTrue: wrap360(join),
    endRadialDegTrue: wrap360(join + arc.sense * sweep),
  }));

function meanAt(eastNm: number, northNm: number): StateMean {
  return {
    lnRange: Math.log(Math.hypot(eastNm, northNm)),
    bearingRad: Math.atan2(eastNm, northNm),
    windEastKt: 0,
    windNorthKt: 0,
    vorBiasDeg: 0,
    airspeedErrorKt: 0,
    headingErrorDeg: 0,
  };
}

/** The place on the arc at a bearing from its middle. */
function onArc(arc: ArcScene, bearingDeg: number, outsideNm = 0): StateMean {
  const range = arc.radiusNm + outsideNm;
  return meanAt(
    arc.eastNm + range * Math.sin(bearingDeg * RAD),
    arc.northNm + range * Math.cos(bearingDeg * RAD),
  );
}

describe('where an aircraft is on its arc (plane geometry)', () => {
  test('a radial crosses the arc where the station sees that radial at that distance from the DME', () => {
    fc.assert(
      fc.property(anyArc, within(0, 360), (arc, radialDeg) => {
        const mean = onArc(arc, crossingDegTrue(arc, radialDeg));
        expect(wrap180(mean.bearingRad / RAD - radialDeg)).toBeCloseTo(0, 6);
      }),
    );
  });

  test('what is flown and what is left make up the whole arc, and the radial ends it', () => {
    fc.assert(
      fc.property(anyArc, within(0, 1), within(-1, 1), (arc, part, outsideNm) => {
        const start = crossingDegTrue(arc, arc.joinRadialDegTrue);
        const end = crossingDegTrue(arc, arc.endRadialDegTrue);
        const sweep = wrap360(arc.sense * (end - start));
        const place = arcPlaceOf(onArc(arc, start + arc.sense * part * sweep, outsideNm), arc);
        expect(place.sweptDeg).toBeCloseTo(part * sweep, 5);
        expect(place.toGoDeg).toBeCloseTo((1 - part) * sweep, 5);
        expect(place.toGoNm).toBeCloseTo((1 - part) * sweep * RAD * arc.radiusNm, 5);
        expect(place.outsideNm).toBeCloseTo(outsideNm, 9);
      }),
    );
  });

  test('just past the radial nothing is left: the angle goes on below 0', () => {
    fc.assert(
      fc.property(anyArc, within(0.1, 20), (arc, pastDeg) => {
        const end = crossingDegTrue(arc, arc.endRadialDegTrue);
        const place = arcPlaceOf(onArc(arc, end + arc.sense * pastDeg), arc);
        expect(place.toGoDeg).toBeCloseTo(-pastDeg, 5);
      }),
    );
  });

  test('the way along the arc is square to the line from its middle', () => {
    fc.assert(
      fc.property(anyArc, within(0, 360), (arc, bearingDeg) => {
        const { alongDeg } = arcPlaceOf(onArc(arc, bearingDeg), arc);
        expect(wrap180(alongDeg - bearingDeg)).toBeCloseTo(90 * arc.sense, 5);
      }),
    );
  });
});

describe('leads', () => {
  test('the circle of the turn touches the arc: inside it outbound, outside it inbound', () => {
    fc.assert(
      fc.property(within(0.2, 1.2), within(5, 40), (turnNm, arcNm) => {
        const inbound = arcNm + turnOntoArcNm(turnNm, arcNm, true);
        expect(Math.hypot(inbound, turnNm)).toBeCloseTo(arcNm + turnNm, 9);
        const outbound = arcNm - turnOntoArcNm(turnNm, arcNm, false);
        expect(Math.hypot(outbound, turnNm)).toBeCloseTo(arcNm - turnNm, 9);
      }),
    );
  });

  test('a lead radial is longer inbound than outbound, and grows with the speed', () => {
    fc.assert(
      fc.property(within(60, 250), within(5, 40), (groundSpeedKt, dmeNm) => {
        const lead = (onto: 'inbound' | 'outbound' | null): number =>
          leadRadialsDeg({ groundSpeedKt, dmeNm, onto });
        expect(lead('outbound')).toBeLessThan(lead(null));
        expect(lead(null)).toBeLessThan(lead('inbound'));
        expect(
          leadRadialsDeg({ groundSpeedKt: groundSpeedKt + 10, dmeNm, onto: null }),
        ).toBeGreaterThan(lead(null));
        // 60-to-1: that many radials at that distance are the radius of the turn.
        expect((lead(null) * dmeNm) / 60).toBeCloseTo(turnRadiusNm(groundSpeedKt), 9);
      }),
    );
  });
});

describe('the air on an arc', () => {
  const anyAir = fc.record({
    trueAirspeedKt: within(70, 180),
    windEastKt: within(-40, 40),
    windNorthKt: within(-40, 40),
    toPlaneDeg: within(-30, 30),
  });

  test('the heading along a way makes it good at the groundspeed along it', () => {
    fc.assert(
      fc.property(anyAir, within(0, 360), (air, alongDeg) => {
        const heading = (headingAlongDeg(air, alongDeg) + air.toPlaneDeg) * RAD;
        const east = air.trueAirspeedKt * Math.sin(heading) + air.windEastKt;
        const north = air.trueAirspeedKt * Math.cos(heading) + air.windNorthKt;
        expect(wrap180(Math.atan2(east, north) / RAD - alongDeg)).toBeCloseTo(0, 5);
        expect(Math.hypot(east, north)).toBeCloseTo(speedAlongKt(air, alongDeg), 6);
      }),
    );
  });

  test('without wind the time along the arc is its length by the airspeed', () => {
    fc.assert(
      fc.property(anyArc, within(70, 180), within(1, 300), (arc, trueAirspeedKt, angleDeg) => {
        const air = { trueAirspeedKt, windEastKt: 0, windNorthKt: 0, toPlaneDeg: 0 };
        const place = arcPlaceOf(onArc(arc, 10), arc);
        const hours = (arc.radiusNm * angleDeg * RAD) / trueAirspeedKt;
        expect(timeAlongArcS(air, place, arc, angleDeg)).toBeCloseTo(hours * 3600, 6);
      }),
    );
  });
});
