import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { turnDeg } from '../../src/base/angle.ts';
import { trueDeg } from '../../src/base/bearing.ts';
import { windComponents } from '../../src/wind/components.ts';
import {
  headingForCourse,
  trackForHeading,
  windFromTrackAndHeading,
} from '../../src/wind/triangle.ts';
import { anyTrue, anyWind, within } from './flying.ts';

/** Airspeeds from those that no wind here can stop down to those that some can. */
const anyAirspeed = within(30, 200);

describe('wind triangle', () => {
  test('the heading for a course, flown, makes that course good at that groundspeed', () => {
    fc.assert(
      fc.property(anyTrue, anyAirspeed, anyWind, (courseDegTrue, trueAirspeedKt, wind) => {
        const needed = headingForCourse({ courseDegTrue, trueAirspeedKt, wind });
        fc.pre(needed.ok && needed.value.groundSpeedKt > 0.01);
        const { headingDegTrue, groundSpeedKt, windCorrectionDeg } = needed.value;
        const made = trackForHeading({ headingDegTrue, trueAirspeedKt, wind });
        expect(turnDeg(courseDegTrue, made.trackDegTrue)).toBeCloseTo(0, 6);
        expect(made.groundSpeedKt).toBeCloseTo(groundSpeedKt, 6);
        expect(made.driftDeg).toBeCloseTo(-windCorrectionDeg, 6);
      }),
    );
  });

  test('heading, airspeed, track and groundspeed give the wind back', () => {
    fc.assert(
      fc.property(anyTrue, anyAirspeed, anyWind, (headingDegTrue, trueAirspeedKt, wind) => {
        const made = trackForHeading({ headingDegTrue, trueAirspeedKt, wind });
        const found = windFromTrackAndHeading({ headingDegTrue, trueAirspeedKt, ...made });
        expect(found.speedKt).toBeCloseTo(wind.speedKt, 6);
        if (wind.speedKt > 0.01) {
          expect(turnDeg(wind.fromDegTrue, found.fromDegTrue)).toBeCloseTo(0, 4);
        }
      }),
    );
  });

  test('mirrored about the course, wind and correction change sides and the groundspeed stays', () => {
    fc.assert(
      fc.property(within(-180, 180), anyAirspeed, within(0, 70), (off, trueAirspeedKt, speedKt) => {
        const courseDegTrue = trueDeg(70);
        const [right, left] = [70 + off, 70 - off].map((from) =>
          headingForCourse({
            courseDegTrue,
            trueAirspeedKt,
            wind: { fromDegTrue: trueDeg(from), speedKt },
          }),
        );
        expect(right?.ok).toBe(left?.ok);
        if (!right?.ok || !left?.ok) return;
        expect(right.value.windCorrectionDeg).toBeCloseTo(-left.value.windCorrectionDeg, 9);
        expect(right.value.groundSpeedKt).toBeCloseTo(left.value.groundSpeedKt, 9);
      }),
    );
  });

  test('a wind is refused exactly when it cannot be flown against', () => {
    fc.assert(
      fc.property(anyTrue, anyAirspeed, anyWind, (courseDegTrue, trueAirspeedKt, wind) => {
        const { headKt, crossKt } = windComponents(wind, courseDegTrue);
        const alongKt = Math.sqrt(Math.max(0, trueAirspeedKt ** 2 - crossKt ** 2));
        // Right at the edge rounding decides; nobody flies there.
        fc.pre(Math.abs(alongKt - headKt) > 1e-6);
        const canBeFlown = Math.abs(crossKt) < trueAirspeedKt && alongKt > headKt;
        expect(headingForCourse({ courseDegTrue, trueAirspeedKt, wind }).ok).toBe(canBeFlown);
      }),
    );
  });

  test('the components of a wind have its speed', () => {
    fc.assert(
      fc.property(anyTrue, anyWind, (direction, wind) => {
        const { headKt, crossKt } = windComponents(wind, direction);
        expect(Math.hypot(headKt, crossKt)).toBeCloseTo(wind.speedKt, 9);
      }),
    );
  });
});
