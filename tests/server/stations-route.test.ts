import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { call, get, serve } from './serve.ts';

const { port } = await serve();

const HEAD =
  'id,ident,name,type,frequency_khz,latitude_deg,longitude_deg,elevation_ft,slaved_variation_deg,usageType';
const QEV = '1,QEV,Quiet Evening,VOR-DME,113350,46.5,-21.25,410,-7.0,LO';
const ZUP = '2,ZUP,Zero Up,VOR,112100,46.1,-20.2,,,TERMINAL';

interface Imported {
  readonly added: number;
  readonly updated: number;
  readonly skipped: readonly { line: number; reason: string }[];
}
interface Found {
  readonly stations: readonly {
    readonly id: string;
    readonly ident: string;
    readonly distanceNm?: number;
    readonly declinationDegEast: number;
    readonly doubts: readonly string[];
  }[];
}
interface Refused {
  readonly detail: string;
  readonly errors: readonly { field: string; expected: string; got: string }[];
}

const send = (method: string, path: string, type: string, body: string | Buffer, at = port) =>
  call(at, { method, path, headers: { 'content-type': type } }, body);
const bring = (body: string | Buffer, at = port) =>
  send('POST', '/api/stations/import', 'text/csv', body, at);
const find = async (query: string, at = port) =>
  ((await get(at, `/api/stations?${query}`)).json as Found).stations;

describe('POST /api/stations/import', () => {
  it('adds what has radials, skips the rest line by line, and changes nothing the second time', async () => {
    const csv = [HEAD, QEV, '3,AB,Beacon,NDB,350,40,-30,,,LO', ZUP, '4,X,short'].join('\n');
    const first = await bring(csv);
    expect(first.status).toBe(200);
    expect(first.json).toMatchObject({ added: 2, updated: 0 });
    expect((first.json as Imported).skipped).toEqual([
      { line: 3, reason: expect.stringContaining('without radials') as string },
      { line: 5, reason: expect.stringContaining('expected 10 columns') as string },
    ]);
    expect((await bring(csv)).json).toMatchObject({ added: 0, updated: 0 });
    expect((await bring([HEAD, QEV.replace('410', '420')].join('\n'))).json).toMatchObject({
      added: 0,
      updated: 1,
    });
  });

  it('marks a declination that is missing and an elevation that is not known', async () => {
    const [zup] = await find('q=ZUP');
    expect(zup?.doubts.join(' ')).toMatch(/No declination.*elevation/);
    expect(zup?.declinationDegEast).toBeCloseTo(-5, -1);
  });

  it.each([
    ['nothing', '', 'got nothing'],
    ['other columns', 'a,b\n1,2\n', 'none called id'],
    ['an open quote', `${HEAD}\n1,"QEV,x\n`, 'never closed'],
  ])('refuses %s and says what was expected', async (_what, body, words) => {
    const { status, json } = await bring(body);
    expect(status).toBe(422);
    expect((json as Refused).errors[0]?.field).toBe('body');
    expect(JSON.stringify(json)).toContain(words);
  });

  it('refuses another media type, and a file that is too large', async () => {
    expect((await send('POST', '/api/stations/import', 'application/json', '{}')).status).toBe(415);
    const large = await bring(Buffer.alloc(25 * 1024 * 1024, '1,2\n'));
    expect(large.status).toBe(413);
    expect((large.json as Refused).detail).toContain('24 MB');
  });

  it('takes only the rows with a VOR frequency on the grid', async () => {
    const row = '7,ODD,Odd Tenth,VOR,111550,40,-30,0,0,LO';
    const { json } = await bring([HEAD, row].join('\n'));
    expect((json as Imported).skipped[0]?.reason).toContain('even tenth');
  });
});

describe('the open data of the world, through the import (OurAirports, public domain)', () => {
  const csv = readFileSync('../shared/data/navaids.csv');

  it('takes the 3,648 VORs on a VOR frequency out of 11,005 rows and accounts for every other', async () => {
    const { port: own } = await serve();
    const { json } = await bring(csv, own);
    const { added, updated, skipped } = json as Imported;
    expect({ added, updated, skipped: skipped.length }).toEqual({
      added: 3648,
      updated: 0,
      skipped: 11_005 - 3648,
    });
    expect((await bring(csv, own)).json).toMatchObject({ added: 0, updated: 0 });
    const sie = await find('q=SIE&nearLatitudeDeg=39.1&nearLongitudeDeg=-74.8', own);
    expect(sie[0]).toMatchObject({ ident: 'SIE' });
    expect(sie[0]?.distanceNm).toBeLessThan(1);
  });
});

describe('GET /api/stations', () => {
  it('finds by ident, name, frequency and distance', async () => {
    expect((await find('q=qe'))[0]).toMatchObject({ ident: 'QEV' });
    expect((await find('q=evening'))[0]).toMatchObject({ ident: 'QEV' });
    expect((await find('frequencyMhz=112.1')).map(({ ident }) => ident)).toEqual(['ZUP']);
    const near = await find('nearLatitudeDeg=46.1&nearLongitudeDeg=-20.2&withinNm=60');
    expect(near.map(({ ident }) => ident)).toEqual(['ZUP', 'QEV']);
    expect(near[1]?.distanceNm).toBeGreaterThan(40);
    expect(await find('nearLatitudeDeg=46.1&nearLongitudeDeg=-20.2&withinNm=10')).toHaveLength(1);
  });

  it('refuses half a place', async () => {
    const { status, json } = await get(port, '/api/stations?nearLatitudeDeg=46');
    expect(status).toBe(422);
    expect((json as Refused).errors[0]?.field).toBe('nearLongitudeDeg');
  });
});

describe('PUT and DELETE /api/stations/:id', () => {
  const station = {
    ident: 'WOK',
    latitudeDeg: 45,
    longitudeDeg: -22,
    elevationFt: 0,
    hasDme: true,
    frequencyMhz: 114.7,
  };
  const put = (id: string, body: unknown) =>
    send('PUT', `/api/stations/${id}`, 'application/json', JSON.stringify(body));

  it('adds, corrects and removes; a correction by hand survives an import', async () => {
    expect((await put('mine', station)).status).toBe(201);
    expect((await put('mine', { ...station, elevationFt: 90 })).status).toBe(200);
    expect((await put('1', { ...station, ident: 'QEV' })).status).toBe(200);
    const again = (await bring([HEAD, QEV].join('\n'))).json as Imported;
    expect(again.skipped[0]?.reason).toContain('by hand');
    expect((await call(port, { method: 'DELETE', path: '/api/stations/mine' })).status).toBe(204);
    expect((await call(port, { method: 'DELETE', path: '/api/stations/mine' })).status).toBe(404);
  });

  it('fills a declination that was left out and says so', async () => {
    const { json } = await put('mine', station);
    expect(json).toMatchObject({ declinationFrom: 'model' });
  });

  it.each([
    ['frequencyMhz', { frequencyMhz: 110.1 }],
    ['ident', { ident: 'TOOLONG' }],
    ['latitudeDeg', { latitudeDeg: 91 }],
    ['colour', { colour: 'red' }],
  ])('refuses a wrong %s by its name', async (field, change) => {
    const { status, json } = await put('mine', { ...station, ...change });
    expect(status).toBe(422);
    expect((json as Refused).errors.map((each) => each.field)).toContain(field);
  });
});
