import { SearchRiseSet, Body, Observer } from 'astronomy-engine';
import { getIssues } from '@placemarkio/check-geojson';
import { describe, expect, it } from 'vitest';
import { trueDeg } from '../../src/base/bearing.ts';
import { placeAt } from '../../src/earth/geodesic.ts';
import { legFixes } from '../../src/leg/route/leg-fixes.ts';
import { othersOnFrequency } from '../../src/leg/route/shared-frequency.ts';
import { indexStations } from '../../src/station/library/find-stations.ts';
import { routeGeoJson, routeGpx } from '../../client/route/exchange.ts';
import { withStation } from '../../client/route/put-in.ts';
import { readRoute, windKeysOf } from '../../client/route/read-route.ts';
import { openDesk } from '../../client/route/route-desk.ts';
import { emptyRoute, moved, routeTitle } from '../../client/route/route-draft.ts';
import { legSpeech, routeSpeech } from '../../client/route/route-speech.ts';
import { solarDay, sunAt } from '../../client/route/sun.ts';
import { flightOf } from '../../client/route/to-flight.ts';
import { gpxFaults } from '../gpx-schema.ts';
import { ocean, stationAt } from './station-sets.ts';

const aircraft = { trueAirspeedKt: 95, degreesPerDot: 2, dotsFullScale: 5 };
const qev = stationAt('QEV', placeAt(ocean, trueDeg(90), 30));
const zup = stationAt('ZUP', placeAt(ocean, trueDeg(90), 90));
const index = indexStations([qev, zup]);
const empty = emptyRoute('1', '2026-11-25');
const whole = {
  ...empty,
  start: '46.5 N 28 W',
  destination: 'ZUP 098 radial, 14 miles',
  altitude: '4500',
  windFrom: '330',
  windSpeed: '15',
  fuelPerHour: '24',
  via: [qev, zup],
};

function planned(draft: typeof whole) {
  const { plan } = readRoute(draft, aircraft, index);
  if (plan === null) throw new Error('no plan');
  return plan;
}

describe('a flight as typed', () => {
  it('is no problem while it is empty, and no plan', () => {
    const read = readRoute(empty, aircraft, index);
    expect([...read.problems]).toEqual([]);
    expect(read.plan).toBeNull();
  });

  it('is worked out once both ends, the altitude and the stations are there', () => {
    const plan = planned(whole);
    expect(plan.legs.map(({ station, direction }) => `${direction} ${station.ident}`)).toEqual([
      'to QEV',
      'from QEV',
      'to ZUP',
      'from ZUP',
    ]);
    expect(plan.computed.legs[3]?.dmeAtEndNm).toBeCloseTo(14, 1);
    expect(plan.computed.legs[3]?.radialDeg).toBeCloseTo(98, 6);
  });

  it('says beside the field what cannot be read', () => {
    const wrong = { ...whole, start: 'nowhere at all', windSpeed: '300', altitude: '-5' };
    const { problems } = readRoute(wrong, aircraft, index);
    expect([...problems.keys()].toSorted()).toEqual(['altitude', 'start', 'windSpeed']);
  });

  it('says beside the wind that it is stronger than the airspeed', () => {
    const { problems, plan } = readRoute({ ...whole, windSpeed: '100' }, aircraft, index);
    expect(plan).toBeNull();
    expect(problems.get('windSpeed')).toContain('95 kt');
  });

  it('asks which station is meant where several have the ident, and takes none by itself', () => {
    const far = { ...stationAt('ZUP', placeAt(ocean, trueDeg(180), 900)), id: 'far' };
    const both = indexStations([qev, zup, far]);
    const read = readRoute(whole, aircraft, both);
    expect(read.destination?.place).toBeNull();
    expect(read.destination?.choices.map(({ id }) => id)).toEqual(['ZUP', 'far']);
    const chosen = readRoute({ ...whole, destinationStationId: 'ZUP' }, aircraft, both);
    expect(chosen.plan).not.toBeNull();
  });

  it('says that a station is not in the library', () => {
    const { problems } = readRoute({ ...whole, start: 'XYZ' }, aircraft, index);
    expect(problems.get('start')).toContain('No station XYZ');
  });

  it('is flown with the course and the DME of each leg', () => {
    const flight = flightOf(whole, planned(whole), aircraft);
    if (!flight.ok) throw new Error(flight.problem);
    expect(flight.value.legs).toHaveLength(4);
    expect(flight.value.legs[0]).toMatchObject({ direction: 'to', endDmeNm: 0, altitudeFt: 4500 });
    expect(flight.value.legs[3]).toMatchObject({ direction: 'from', endDmeNm: 14 });
    expect(flight.value.forecastWind).toEqual({ fromDegTrue: 330, speedKt: 15 });
  });

  it('hands the winds of single legs to the flight, each with its leg', () => {
    const key = windKeysOf(planned(whole).legs)[2] ?? '';
    const draft = { ...whole, legWinds: { [key]: '090/40' } };
    const flight = flightOf(draft, planned(draft), aircraft);
    if (!flight.ok) throw new Error(flight.problem);
    expect(flight.value.legWinds).toEqual([
      { legIndex: 2, wind: { fromDegTrue: 90, speedKt: 40 } },
    ]);
    expect(flight.value.forecastWind).toEqual({ fromDegTrue: 330, speedKt: 15 });
    const plain = flightOf(whole, planned(whole), aircraft);
    expect(plain.ok && 'legWinds' in plain.value).toBe(false);
  });

  it('takes a wind for one leg alone, and says what cannot be read of it', () => {
    const key = windKeysOf(planned(whole).legs)[1] ?? '';
    const own = planned({ ...whole, legWinds: { [key]: '090/40' } });
    expect(own.computed.legs[1]?.groundSpeedKt).toBeLessThan(60);
    expect(own.computed.legs[0]).toEqual(planned(whole).computed.legs[0]);
    const wrong = readRoute({ ...whole, legWinds: { [key]: 'calm-ish' } }, aircraft, index);
    expect([...wrong.problems.keys()]).toEqual([`legWinds.${key}`]);
  });

  it('keeps the wind of each leg apart where a station is flown twice', () => {
    const back = { ...whole, destination: '46.5 N 28 W', via: [qev, zup, qev] };
    const keys = windKeysOf(planned(back).legs);
    expect(new Set(keys).size).toBe(keys.length);
    const own = planned({ ...back, legWinds: { [keys[4] ?? '']: '090/40' } });
    expect(own.legs.map(({ wind }) => wind !== undefined)).toEqual([
      false,
      false,
      false,
      false,
      true,
      false,
    ]);
    // A wind kept before a station was flown twice stays with the first time.
    expect(keys.slice(0, 4)).toEqual(windKeysOf(planned(whole).legs));
  });

  it('knows of other stations on the frequency that may be heard', () => {
    const twin = { ...stationAt('TWN', placeAt(ocean, trueDeg(0), 70)), id: 'twin' };
    const far = { ...stationAt('FAR', placeAt(ocean, trueDeg(0), 400)), id: 'far' };
    const [first] = planned(whole).legs;
    if (!first) throw new Error('no leg');
    const others = othersOnFrequency(first, 4500, [qev, twin, far]);
    expect(others.map(({ station }) => station.ident)).toEqual(['TWN']);
  });

  it('is called by its ends where it has no name', () => {
    expect(routeTitle(whole)).toBe('46.5 N 28 W to ZUP 098 radial, 14 miles');
    expect(routeTitle({ ...whole, name: ' Out ' })).toBe('Out');
  });
});

describe('a leg as it is read out', () => {
  const manner = { decimalWord: 'decimal' } as const;
  const abeam = stationAt('ABM', placeAt(placeAt(ocean, trueDeg(90), 60), trueDeg(0), 15));
  const plan = planned(whole);
  const fixes = legFixes(
    plan.legs,
    indexStations([qev, zup, { ...abeam, frequencyMhz: 114.7 }]),
    plan.altitudeFt,
  );
  const said = legSpeech(plan, 1, fixes[1] ?? [], manner);

  it('says what to tune, set and fly, and what the DME will show', () => {
    expect(said).toMatch(/^Leg 2\. Quebec Echo Victor, one one three decimal three five\. O B S/);
    expect(said).toContain(', from. Heading ');
    expect(said).toMatch(/D M E zero decimal seven to three zero decimal zero\./);
    expect(said).toContain(
      'Then change over to Zulu Uniform Papa, one one three decimal three five.',
    );
  });

  it('says the radial of the second station where it crosses', () => {
    expect(said).toMatch(/After one \w+ minutes, radial one \w+ \w+ of Alfa Bravo Mike\./);
    expect(legSpeech(plan, 1, [], manner)).not.toContain('Alfa Bravo Mike');
  });

  it('is part of the whole flight read out', () => {
    expect(routeSpeech(whole, plan, manner)).toContain(legSpeech(plan, 1, [], manner));
  });
});

describe('the stations on the way', () => {
  it('move by one place, and stay at the ends', () => {
    expect(moved(['a', 'b', 'c'], 0, 1)).toEqual(['b', 'a', 'c']);
    expect(moved(['a', 'b', 'c'], 0, -1)).toEqual(['a', 'b', 'c']);
  });

  it('take a new one in where it lengthens the flight least, and none twice', () => {
    const middle = stationAt('MID', placeAt(ocean, trueDeg(90), 60));
    const end = placeAt(ocean, trueDeg(90), 120);
    const put = withStation([qev, zup], middle, ocean, end);
    expect(put.map(({ ident }) => ident)).toEqual(['QEV', 'MID', 'ZUP']);
    expect(withStation(put, middle, ocean, end)).toBe(put);
  });
});

describe('a flight on the desk', () => {
  it('goes back and forth through its changes, letters of one field together', () => {
    const desk = openDesk(empty);
    desk.change({ start: '4' }, 'start');
    desk.change({ start: '46' }, 'start');
    desk.change({ via: [qev] });
    desk.undo();
    expect(desk.draft.value).toMatchObject({ start: '46', via: [] });
    desk.undo();
    expect(desk.draft.value.start).toBe('');
    expect(desk.canUndo.value).toBe(false);
    desk.redo();
    desk.redo();
    expect(desk.draft.value).toMatchObject({ start: '46', via: [{ ident: 'QEV' }] });
    desk.change({ name: 'x' }, 'name');
    expect(desk.canRedo.value).toBe(false);
  });
});

describe('a flight in open formats', () => {
  it('is GPX 1.1, valid by its schema, with the ends and the stations in order', async () => {
    const gpx = routeGpx({ ...whole, start: 'Start & <more>' }, planned(whole));
    expect(await gpxFaults(gpx)).toEqual([]);
    expect([...gpx.matchAll(/<rtept/g)]).toHaveLength(4);
    expect(gpx).toContain('Start &amp; &lt;more&gt;');
  });

  it('is GeoJSON (RFC 7946) with longitude first, a point a station and a line a leg', () => {
    const { type, features } = JSON.parse(routeGeoJson(whole, planned(whole))) as {
      type: string;
      features: { geometry: { type: string; coordinates: unknown }; properties: object }[];
    };
    expect(type).toBe('FeatureCollection');
    expect(features.map(({ geometry }) => geometry.type)).toEqual([
      'Point',
      'Point',
      ...Array.from({ length: 4 }, () => 'LineString'),
    ]);
    expect(features[0]?.geometry.coordinates).toEqual([qev.longitudeDeg, qev.latitudeDeg]);
  });

  it('is GeoJSON without a fault for the general-purpose checker check-geojson, which finds one', () => {
    const text = routeGeoJson(whole, planned(whole));
    expect(getIssues(text)).toEqual([]);
    expect(getIssues(text.replace('"Point"', '"Spot"'))).not.toEqual([]);
    expect(getIssues(text.replace('"coordinates"', '"places"'))).not.toEqual([]);
  });

  it('cuts a line at the antimeridian (RFC 7946, 3.1.9)', () => {
    const west = { latitudeDeg: 10, longitudeDeg: 179.7 };
    const station = stationAt('AM', { latitudeDeg: 10, longitudeDeg: -179.9 });
    const draft = {
      ...whole,
      start: '10 N 179.7 E',
      destination: 'AM 090 radial, 10 miles',
      via: [station],
    };
    const read = readRoute(draft, aircraft, indexStations([station]));
    if (read.plan === null) throw new Error('no plan');
    const { features } = JSON.parse(routeGeoJson(draft, read.plan)) as {
      features: { geometry: { type: string; coordinates: number[][][] } }[];
    };
    expect(getIssues(routeGeoJson(draft, read.plan))).toEqual([]);
    expect(features[1]?.geometry.type).toBe('MultiLineString');
    expect(features[1]?.geometry.coordinates[0]?.[0]).toEqual([west.longitudeDeg, 10]);
    expect(features[1]?.geometry.coordinates[0]?.[1]?.[0]).toBe(180);
  });
});

describe('sunset: against the general-purpose library astronomy-engine, within two minutes', () => {
  it.each([
    ['2026-11-25', 46.5, -21.25],
    ['2026-06-21', 60, 10],
    ['2027-03-20', 0, 0],
    ['2028-12-21', -45, 170],
    ['2026-08-01', 35, -140],
  ])('%s at %d, %d', (dateIso, latitudeDeg, longitudeDeg) => {
    const noonMs = Date.parse(`${dateIso}T12:00:00Z`) - longitudeDeg * 240_000;
    const other = SearchRiseSet(
      Body.Sun,
      new Observer(latitudeDeg, longitudeDeg, 0),
      -1,
      new Date(noonMs),
      1,
    );
    const mine = sunAt({ latitudeDeg, longitudeDeg }, dateIso).sunsetMs ?? Number.NaN;
    expect(Math.abs(mine - (other?.date.getTime() ?? 0)) / 60_000).toBeLessThan(2);
  });

  it('goes by the solar day of the place, far from Greenwich too', () => {
    const east = { latitudeDeg: -40, longitudeDeg: 175 };
    const arrivesMs = Date.parse('2026-11-25T20:00:00Z');
    expect(solarDay(arrivesMs, east)).toBe('2026-11-26');
    const { sunriseMs, sunsetMs } = sunAt(east, solarDay(arrivesMs, east));
    expect(sunriseMs).toBeLessThan(arrivesMs);
    expect(sunsetMs).toBeGreaterThan(arrivesMs);
  });

  it('does not set in the polar summer and does not rise in the polar night', () => {
    const north = { latitudeDeg: 75, longitudeDeg: 20 };
    expect(sunAt(north, '2026-06-21')).toMatchObject({ sunsetMs: null, isAlwaysUp: true });
    expect(sunAt(north, '2026-12-21')).toMatchObject({ sunsetMs: null, isAlwaysDown: true });
  });
});
