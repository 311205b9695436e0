import { describe, expect, test } from 'vitest';
import { trueDeg } from '../../src/base/bearing.ts';
import { timeToGoS } from '../../src/leg/time-to-go.ts';
import { windComponents } from '../../src/wind/components.ts';
import {
  headingForCourse,
  trackForHeading,
  windFromTrackAndHeading,
  type HeadingNeeded,
} from '../../src/wind/triangle.ts';
import table from './data/wind-triangles.json' with { type: 'json' };
import { expectNear, expectNearDeg } from './near.ts';

/** Whole degrees and knots, off a plotter. */
const WHOLE = 1;

function needed(row: { course: number; tas: number; from: number; wind: number }): HeadingNeeded {
  const result = headingForCourse({
    courseDegTrue: trueDeg(row.course),
    trueAirspeedKt: row.tas,
    wind: { fromDegTrue: row.from, speedKt: row.wind },
  });
  if (!result.ok) throw new Error(result.problem[0]?.expected);
  return result.value;
}

describe('course to heading: Pilot’s Handbook ch. 16, EASA and FAA items, US Navy P-305', () => {
  test.each(table.toHeading)(
    '$item ($source): course $course at $tas kt, wind $from/$wind',
    (row) => {
      const found = needed(row);
      if (row.wca !== undefined) expectNear(found.windCorrectionDeg, row.wca, WHOLE, row.item);
      if (row.heading !== undefined) {
        expectNearDeg(found.headingDegTrue, row.heading, WHOLE, row.item);
      }
      if (row.gs !== undefined) expectNear(found.groundSpeedKt, row.gs, WHOLE, row.item);
    },
  );

  test.each(table.times)('$item ($source): $nm NM take $minutes minutes', (row) => {
    const seconds = timeToGoS(row.nm, needed(row).groundSpeedKt);
    expectNear((seconds ?? NaN) / 60, row.minutes, WHOLE, row.item);
  });
});

describe('heading to track: US TM 1-900 exercise 2, EASA items, Pilot’s Handbook 16-10 and 16-11', () => {
  const track = (row: { heading: number; tas: number; from: number; wind: number }) =>
    trackForHeading({
      headingDegTrue: trueDeg(row.heading),
      trueAirspeedKt: row.tas,
      wind: { fromDegTrue: row.from, speedKt: row.wind },
    });

  test.each(table.toTrack)(
    '$item ($source): heading $heading at $tas kt, wind $from/$wind',
    (row) => {
      const made = track(row);
      expectNear(made.groundSpeedKt, row.gs, WHOLE, row.item);
      if (row.track !== undefined) expectNearDeg(made.trackDegTrue, row.track, WHOLE, row.item);
      if (row.drift !== undefined) expectNear(made.driftDeg, row.drift, WHOLE, row.item);
    },
  );

  test('5.15 (TM 1-900): heading 056 with 14 degrees of drift to the left makes course 042', () => {
    // A wind from the right that drifts 056 by 14 degrees: the drift carries its sign into the track.
    const made = track({ heading: 56, tas: 100, from: 132, wind: 25.85 });
    expectNear(made.driftDeg, -14, 1, '5.15');
    expectNearDeg(made.trackDegTrue, 56 + made.driftDeg, 1e-9, '5.15');
  });

  test('5.21 (Pilot’s Handbook Fig 16-14): an hour east at 120 kt, wind 360/20, ends 20 NM south', () => {
    const made = track({ heading: 90, tas: 120, from: 360, wind: 20 });
    expectNear(made.groundSpeedKt, Math.hypot(120, 20), 1e-9, '5.21');
    expectNear(
      -made.groundSpeedKt * Math.cos((made.trackDegTrue * Math.PI) / 180),
      20,
      1e-9,
      '5.21',
    );
  });
});

describe('wind from track and heading: USAF AFPAM 11-216, FAA and EASA items', () => {
  test.each(table.toWind)(
    '$item ($source): heading $heading, track $track: wind $from/$wind',
    (row) => {
      const wind = windFromTrackAndHeading({
        headingDegTrue: trueDeg(row.heading),
        trueAirspeedKt: row.tas,
        trackDegTrue: trueDeg(row.track),
        groundSpeedKt: row.gs,
      });
      expectNearDeg(wind.fromDegTrue, row.from, row.deg, row.item);
      expectNear(wind.speedKt, row.wind, WHOLE + 0.05, row.item);
    },
  );

  test('5.31 (EASA): track 321 at 123 kt over the ground, wind 213/21: heading 311, TAS 118', () => {
    const { headingDegTrue, groundSpeedKt } = needed({
      course: 321,
      tas: 118.2,
      from: 213,
      wind: 21,
    });
    expectNearDeg(headingDegTrue, 311, WHOLE, '5.31');
    expectNear(groundSpeedKt, 123, WHOLE, '5.31');
  });
});

describe('wind components: Pilot’s Handbook ch. 11 problem 10, FAA and EASA items', () => {
  test.each(table.components)('$item ($source): direction $direction, wind $from/$wind', (row) => {
    const parts = windComponents({ fromDegTrue: row.from, speedKt: row.wind }, row.direction);
    if (row.head !== undefined) expectNear(parts.headKt, row.head, WHOLE, row.item);
    if (row.cross !== undefined) expectNear(parts.crossKt, row.cross, WHOLE, row.item);
  });
});

describe('printed figures that are wrong or by another method', () => {
  test('5.63 (Pilot’s Handbook Fig 16-19) does not close: course 090 needs heading 074, not 080', () => {
    const { headingDegTrue, groundSpeedKt } = needed({ course: 90, tas: 120, from: 20, wind: 35 });
    expect(Math.abs(headingDegTrue - 80)).toBeGreaterThan(5);
    expect(Math.abs(groundSpeedKt - 110)).toBeGreaterThan(5);
  });

  test('5.35, 5.37 (US Navy P-305): components alone promise 1 to 4 kt that a beam wind takes', () => {
    expect(96 - needed({ course: 360, tas: 96, from: 90, wind: 15 }).groundSpeedKt).toBeGreaterThan(
      1,
    );
    expect(
      204 - needed({ course: 131, tas: 204, from: 40, wind: 40 }).groundSpeedKt,
    ).toBeGreaterThan(3);
  });
});
