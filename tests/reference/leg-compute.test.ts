import { describe, expect, it, test } from 'vitest';
import { trueDeg } from '../../src/base/bearing.ts';
import { placeAt, type LatLon } from '../../src/earth/geodesic.ts';
import { computeLegs, type RouteRequest } from '../../src/leg/route/compute-legs.ts';
import type { RouteLeg } from '../../src/leg/route/route-leg.ts';
import type { Station } from '../../src/station/station.ts';
import { expectNear, expectNearDeg } from './near.ts';

const station = (place: LatLon, more: Partial<Station> = {}): Station => ({
  ident: 'QEV',
  elevationFt: 0,
  declinationDegEast: 0,
  hasDme: true,
  ...place,
  ...more,
});

function only(leg: RouteLeg, request: Partial<RouteRequest> = {}) {
  const route = computeLegs({
    aircraft: { trueAirspeedKt: 100, fuelPerHour: 8, fuelUnit: 'gal' },
    wind: { fromDegTrue: 0, speedKt: 0 },
    altitudeFt: 4_500,
    dateIso: '2026-11-25',
    legs: [leg],
    ...request,
  });
  if (!route.ok) throw new Error(JSON.stringify(route.problem));
  const [computed] = route.value.legs;
  if (!computed) throw new Error('no leg');
  return computed;
}

const dms = (degrees: number, minutes: number, seconds: number) =>
  Math.sign(degrees) * (Math.abs(degrees) + minutes / 60 + seconds / 3600);

describe('track and distance of a leg: Geoscience Australia, Flinders Peak to Buninyong', () => {
  const flinders = { latitudeDeg: dms(-37, 57, 3.7203), longitudeDeg: dms(144, 25, 29.5244) };
  const buninyong = { latitudeDeg: dms(-37, 39, 10.1561), longitudeDeg: dms(143, 55, 35.3839) };

  it('outbound from Flinders Peak: 54,972.271 m on 306 52 05.37', () => {
    const leg = only({ station: station(flinders), direction: 'from', end: buninyong });
    expectNear(leg.distanceNm * 1852, 54_972.271, 0.001, 'metres');
    expectNearDeg(leg.trackTrueDeg, dms(306, 52, 5.37), 0.01 / 3600, 'track');
    expectNearDeg(leg.courseDeg, dms(306, 52, 5.37), 0.01 / 3600, 'course');
  });

  it('inbound to Buninyong the course is the direction of arrival: reverse azimuth 127 10 25.07', () => {
    const leg = only({ station: station(buninyong), direction: 'to', start: flinders });
    expectNearDeg(leg.courseDeg, dms(307, 10, 25.07), 0.01 / 3600, 'course');
    expectNearDeg(leg.radialDeg, dms(127, 10, 25.07), 0.01 / 3600, 'radial');
    expectNearDeg(leg.trackTrueDeg, dms(306, 52, 5.37), 0.01 / 3600, 'track');
  });
});

describe('a long leg: Vincenty pair of public test code, 969,954.166 m, 9.1419 to 11.2972 degrees', () => {
  const south = { latitudeDeg: 50.06632, longitudeDeg: -5.71475 };
  const north = { latitudeDeg: 58.64402, longitudeDeg: -3.07009 };

  it('is measured on the ellipsoid, and its direction turns on the way', () => {
    const leg = only({ station: station(north), direction: 'to', start: south });
    expectNear(leg.distanceNm * 1852, 969_954.166, 0.001, 'metres');
    expectNearDeg(leg.trackTrueDeg, 9.1419, 5e-5, 'initial');
    expectNearDeg(leg.courseDeg, 11.2972, 5e-5, 'final');
  });
});

describe('convergency: change of longitude x sine of the mean latitude (navigation textbooks, EASA question bank)', () => {
  test.each([
    [60, 4],
    [45, 5],
    [-50, 4],
  ])(
    'at latitude %i over %i degrees of longitude the track turns by it, and that is told',
    (latitudeDeg, eastDeg) => {
      const from = { latitudeDeg, longitudeDeg: -30 };
      const end = { latitudeDeg, longitudeDeg: -30 + eastDeg };
      const convergencyDeg = Math.abs(eastDeg * Math.sin((latitudeDeg * Math.PI) / 180));
      const leg = only({ station: station(from), direction: 'from', end });
      const told = /true track turns by (\d+\.\d) degrees/.exec(leg.warnings.join(' '))?.[1];
      expectNear(Number(told), convergencyDeg, 0.06, 'degrees (told to a tenth)');
    },
  );

  it('is no word on a leg of 30 NM, where it is half a degree', () => {
    const from = { latitudeDeg: 50, longitudeDeg: -30 };
    const leg = only({
      station: station(from),
      direction: 'from',
      end: placeAt(from, trueDeg(90), 30),
    });
    expect(leg.warnings.join(' ')).not.toContain('turns');
  });

  it('names both headings where the meridians and the variation together turn it', () => {
    const from = { latitudeDeg: 60, longitudeDeg: -60 };
    const end = { latitudeDeg: 60, longitudeDeg: -54 };
    const out = only({ station: station(from), direction: 'from', end });
    const back = only({ station: station(end), direction: 'from', end: from });
    const [first, last] = /from (\d{3}) to (\d{3})/.exec(out.warnings.join(' '))?.slice(1) ?? [];
    expectNearDeg(Number(first), out.headingDeg, 0.5, 'heading at the start, in whole degrees');
    // In still air the heading at the end is the reciprocal of that on which the leg is flown back.
    expectNearDeg(Number(last), back.headingDeg + 180, 0.5, 'heading at the end, in whole degrees');
  });
});

describe('heading, groundspeed, time and fuel of a leg', () => {
  const ocean = { latitudeDeg: 46.5, longitudeDeg: -21.25 };
  const along = (courseDeg: number, nm: number): RouteLeg => ({
    station: station(ocean),
    direction: 'from',
    end: placeAt(ocean, trueDeg(courseDeg), nm),
  });

  test.each([
    ['Pilot’s Handbook 16-13 to 16-16', 90, 120, 45, 40, -14, 88],
    ['Pilot’s Handbook 16-20', 31, 115, 360, 10, -3, 106],
    ['EASA question bank', 110, 200, 15, 40, -11, 199],
    ['EASA question bank', 343, 166, 163, 15, 0, 181],
  ])('%s: course %i, %i kt, wind %i/%i', (_source, course, tas, from, wind, wca, gs) => {
    const leg = only(along(course, 30), {
      aircraft: { trueAirspeedKt: tas, fuelPerHour: 8, fuelUnit: 'gal' },
      wind: { fromDegTrue: from, speedKt: wind },
    });
    expectNear(leg.windCorrectionDeg, wca, 1, 'wind correction');
    expectNear(leg.groundSpeedKt, gs, 1, 'groundspeed');
    expectNearDeg(
      leg.headingDeg,
      course + leg.windCorrectionDeg - leg.variationDegEast,
      1e-6,
      'heading: variation east is taken off (Pilot’s Handbook 16-8)',
    );
  });

  it('220 NM at 88 kt take 2:30 and 20 gal at 8 gal/h (Pilot’s Handbook 16-15)', () => {
    const leg = only(along(0, 220), {
      aircraft: { trueAirspeedKt: 88, fuelPerHour: 8, fuelUnit: 'gal' },
    });
    expectNear(leg.timeS, 2.5 * 3600, 1, 'seconds');
    expectNear(leg.fuel, 20, 0.01, 'gallons');
  });

  it('radial 090 of a station 16 E is flown on true 106, by its own declination (Eurocontrol AIXM rules)', () => {
    const aligned = station(ocean, { declinationDegEast: 16 });
    const leg = only({
      station: aligned,
      direction: 'from',
      end: placeAt(ocean, trueDeg(106), 20),
    });
    expectNearDeg(leg.radialDeg, 90, 1e-9, 'radial');
    expectNearDeg(leg.trackTrueDeg, 106, 1e-9, 'track');
  });
});

describe('what the station gives', () => {
  const ocean = { latitudeDeg: 46.5, longitudeDeg: -21.25 };
  const inbound = (elevationFt: number): RouteLeg => ({
    station: station(ocean, { elevationFt }),
    direction: 'to',
    start: placeAt(ocean, trueDeg(270), 15),
  });

  it('the DME shows about 1.0 NM at 6,076 ft overhead (Pilot’s Handbook 16-27)', () => {
    expectNear(only(inbound(0), { altitudeFt: 6_076 }).dmeAtEndNm ?? 0, 1, 0.001, 'NM');
  });

  it('the DME shows 16.1 NM at 15 NM and FL370 over a station at 1,000 ft (EASA question bank)', () => {
    expectNear(only(inbound(1_000), { altitudeFt: 37_000 }).dmeAtStartNm ?? 0, 16.13, 0.02, 'NM');
  });

  it('the cone is 1.96 NM wide at 10,000 ft (ICAO Doc 8168, 50 degrees)', () => {
    expectNear(only(inbound(0), { altitudeFt: 10_000 }).coneRadiusNm, 1.961, 0.002, 'NM');
  });

  it('the horizon is at 149 NM for FL80 and a station at 1,026 ft (EASA question bank)', () => {
    expectNear(only(inbound(1_026), { altitudeFt: 8_000 }).lineOfSightNm, 149, 1, 'NM');
  });
});
