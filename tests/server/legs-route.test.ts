import { describe, expect, it } from 'vitest';
import { post, serve } from './serve.ts';

const { port } = await serve();
const ask = (body: unknown) => post(port, '/api/legs/compute', body);

const station = {
  ident: 'QEV',
  latitudeDeg: 46.5,
  longitudeDeg: -21.25,
  elevationFt: 410,
  declinationDegEast: -7,
  hasDme: true,
};
const next = { ...station, ident: 'ZUP', latitudeDeg: 46.1, longitudeDeg: -20.2, hasDme: false };
const away = { latitudeDeg: 46.8, longitudeDeg: -21.9 };
const route = {
  aircraft: { trueAirspeedKt: 95, fuelPerHour: 24, fuelUnit: 'L' },
  wind: { fromDegTrue: 330, speedKt: 15 },
  altitudeFt: 4500,
  dateIso: '2026-11-25',
  legs: [
    { station, direction: 'to', start: away },
    { station, direction: 'from', end: { latitudeDeg: 46.3, longitudeDeg: -20.7 } },
    { station: next, direction: 'to' },
  ],
};

interface Answer {
  readonly legs: readonly Record<string, number>[];
  readonly totals: Record<string, number>;
}

async function warningsOf(legs: readonly object[]): Promise<readonly (readonly string[])[]> {
  const { json } = await ask({ ...route, legs });
  return (json as { legs: { warnings: string[] }[] }).legs.map((leg) => leg.warnings);
}

interface Refused {
  readonly errors: readonly { field: string; got: string; expected: string }[];
}

describe('POST /api/legs/compute', () => {
  it('warns of a gap between two legs, which no distance counts', async () => {
    const legs = [
      { station, direction: 'to', start: away },
      { station: next, direction: 'to', start: { latitudeDeg: 46.6, longitudeDeg: -20.2 } },
    ];
    const warnings = await warningsOf(legs);
    expect(warnings[0]?.join(' ')).not.toContain('leg before it');
    // From 46.5 N 21.25 W to 46.6 N 20.2 W: 1.05 degrees of longitude are 43 NM there.
    expect(warnings[1]?.join(' ')).toMatch(/begins 4[34] NM from where the leg before it ends/);
  });

  it('warns of a second station of the route that is on the frequency of a leg', async () => {
    const onOne = (first: number, second: number) =>
      warningsOf([
        { station: { ...station, frequencyMhz: first }, direction: 'to', start: away },
        { station: { ...next, frequencyMhz: second }, direction: 'to' },
      ]);
    const same = await onOne(113.35, 113.35);
    expect(same[0]?.join(' ')).toMatch(/ZUP is on the same frequency, 50 NM from this leg/);
    expect(same[1]?.join(' ')).toMatch(/QEV is on the same frequency/);
    expect((await onOne(113.35, 113.45)).flat().join(' ')).not.toContain('same frequency');
  });

  it('answers every leg with the names of the interface, and the totals', async () => {
    const { status, json } = await ask(route);
    expect(status).toBe(200);
    const { legs, totals } = json as Answer;
    expect(Object.keys(legs[0] ?? {}).toSorted()).toEqual(
      [
        'trackTrueDeg courseDeg radialDeg distanceNm headingDeg windCorrectionDeg groundSpeedKt timeS fuel',
        'dmeAtStartNm dmeAtEndNm coneRadiusNm lineOfSightNm serviceVolumeNm variationDegEast warnings',
      ]
        .join(' ')
        .split(' ')
        .toSorted(),
    );
    for (const name of ['distanceNm', 'timeS', 'fuel']) {
      const sum = legs.reduce((total, leg) => total + (leg[name] ?? Number.NaN), 0);
      expect(totals[name]).toBeCloseTo(sum, 6);
    }
  });

  it('gives a leg to a station the reciprocal radial, and one from it its course', async () => {
    const { legs } = (await ask(route)).json as Answer;
    expect(legs[0]?.['radialDeg']).toBeCloseTo(((legs[0]?.['courseDeg'] ?? 0) + 180) % 360, 6);
    expect(legs[1]?.['radialDeg']).toBe(legs[1]?.['courseDeg']);
  });

  it('ends a leg to a station over it: the DME then shows the height above its antenna', async () => {
    const { legs } = (await ask(route)).json as Answer;
    expect(legs[0]?.['dmeAtEndNm']).toBeCloseTo((4500 - 410) / 6076.12, 3);
  });

  it('says that a station without DME has none, and gives no DME figures there', async () => {
    const { legs } = (await ask(route)).json as Answer;
    expect(legs[2]).toMatchObject({ dmeAtStartNm: null, dmeAtEndNm: null });
    expect(String(legs[2]?.['warnings'])).toContain('no DME');
  });

  it('begins a leg where the one before it ends', async () => {
    const { legs } = (await ask(route)).json as Answer;
    const given = {
      ...route,
      legs: [{ station: next, direction: 'to', start: { latitudeDeg: 46.3, longitudeDeg: -20.7 } }],
    };
    const alone = (await ask(given)).json as Answer;
    expect(legs[2]?.['distanceNm']).toBeCloseTo(alone.legs[0]?.['distanceNm'] ?? 0, 9);
  });

  it('refuses a wind stronger than the airspeed, in words', async () => {
    const { status, json } = await ask({ ...route, wind: { fromDegTrue: 330, speedKt: 120 } });
    expect(status).toBe(422);
    expect((json as Refused).errors[0]).toMatchObject({
      field: 'wind.speedKt',
      expected: expect.stringContaining('95 kt') as string,
      got: expect.stringContaining('too strong') as string,
    });
  });

  it.each([
    ['legs.0.start', { legs: [{ station, direction: 'to' }] }],
    ['legs.0.end', { legs: [{ station, direction: 'from' }] }],
    ['legs.0.start', { legs: [{ station, direction: 'to', start: station2d() }] }],
    ['legs.0.end', { legs: [{ station, direction: 'to', start: away, end: away }] }],
    ['legs', { legs: [] }],
    ['altitudeFt', { altitudeFt: 300 }],
    ['dateIso', { dateIso: '2031-01-01' }],
    ['aircraft.trueAirspeedKt', { aircraft: { ...route.aircraft, trueAirspeedKt: 0 } }],
    ['aircraft.weightKg', { aircraft: { ...route.aircraft, weightKg: 1 } }],
    ['legs.0.start.latitudeDeg', { legs: [legTo({ latitudeDeg: 91, longitudeDeg: 0 })] }],
  ])('refuses with the field %s', async (field, change) => {
    const { status, json } = await ask({ ...route, ...change });
    expect(status).toBe(422);
    expect((json as Refused).errors.map((each) => each.field)).toContain(field);
  });

  it('computes a leg across the antimeridian and one at the pole', async () => {
    const across = { ...station, latitudeDeg: 10, longitudeDeg: 179.8 };
    const pole = { ...station, latitudeDeg: 90, longitudeDeg: 0 };
    const legs = [
      { station: across, direction: 'to', start: { latitudeDeg: 10, longitudeDeg: -179.8 } },
      { station: pole, direction: 'to', start: { latitudeDeg: 89.5, longitudeDeg: 40 } },
    ];
    const { status, json } = await ask({ ...route, legs });
    expect(status).toBe(200);
    const [one, other] = (json as Answer).legs;
    expect(one?.['distanceNm']).toBeCloseTo(23.7, 0);
    expect(other?.['distanceNm']).toBeCloseTo(30.2, 0);
  });
});

function station2d() {
  return { latitudeDeg: station.latitudeDeg, longitudeDeg: station.longitudeDeg };
}

function legTo(start: unknown) {
  return { station, direction: 'to', start };
}
