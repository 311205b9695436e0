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
    ['a column twice', `${HEAD},ident\n${QEV},X\n`, 'more than one called ident'],
    ['a spreadsheet', 'PK\u0003\u0004', 'save it as CSV UTF-8'],
  ])('refuses %s and says what was expected', async (_what, body, words) => {
    const { status, json } = await bring(body);
    expect(status).toBe(422);
    expect((json as Refused).errors[0]?.field).toBe('body');
    expect(JSON.stringify(json)).toContain(words);
  });

  it('skips a line with a stray quote, names it, and reads on', async () => {
    const { port: own } = await serve();
    const { status, json } = await bring([HEAD, '9,"QEV,x', QEV, ZUP].join('\n'), own);
    expect(status).toBe(200);
    expect(json).toEqual({
      added: 2,
      updated: 0,
      skipped: [{ line: 2, reason: expect.stringContaining('never closed') as string }],
    });
  });

  it('takes a file that is not UTF-8 with a warning', async () => {
    const { port: own } = await serve();
    const csv = Buffer.from([HEAD, QEV.replace('Quiet', 'Qui\u00e9t')].join('\n'), 'latin1');
    const { json } = await bring(csv, own);
    expect(json).toMatchObject({
      added: 1,
      warnings: [expect.stringContaining('line 2') as string],
    });
    expect((await find('q=QEV', own))[0]).toMatchObject({ name: 'Qui\u00e9t Evening' });
  });

  it.each(['application/json', 'text/plain', 'application/xml', 'nonsense', ''])(
    'refuses the media type %j and names the one that it takes',
    async (type) => {
      const { status, json } = await send('POST', '/api/stations/import', type, QEV);
      expect(status).toBe(415);
      expect((json as Refused).errors).toEqual([
        { field: 'content-type', expected: 'text/csv', got: type === '' ? 'nothing' : type },
      ]);
    },
  );

  it('refuses a file that is too large', async () => {
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

/** So many stations that one of them at a time would take a while. */
const manyStations = (count: number): string =>
  [HEAD, ...Array.from({ length: count }, (_, at) => QEV.replace(/^1/, `m${at}`))].join('\n');

describe('an import that takes a while', () => {
  it('lets others be answered meanwhile', async () => {
    const { port: own } = await serve();
    const state = { isDone: false };
    const importing = bring(manyStations(40_000), own).finally(() => {
      state.isDone = true;
    });
    let answered = 0;
    while (!state.isDone) {
      expect((await get(own, '/api/health')).status).toBe(200);
      answered += 1;
    }
    expect((await importing).json).toMatchObject({ added: 40_000, updated: 0, skipped: [] });
    // On the server's own thread it would be one or two: before it and after it.
    expect(answered).toBeGreaterThan(20);
  });

  it('comes to the same as one after the other where two are sent at once', async () => {
    const { port: own } = await serve();
    const both = await Promise.all([bring(manyStations(500), own), bring(manyStations(700), own)]);
    const added = both.map(({ json }) => (json as Imported).added);
    expect(added.reduce((sum, each) => sum + each, 0)).toBe(700);
    expect(await find('limit=1000', own)).toHaveLength(700);
  });

  it('leaves a station alone that is put right by hand meanwhile', async () => {
    const { port: own } = await serve();
    const state = { isDone: false };
    const importing = bring(manyStations(3000), own).finally(() => {
      state.isDone = true;
    });
    const byHand = {
      ident: 'QEV',
      latitudeDeg: 45,
      longitudeDeg: -22,
      elevationFt: 1,
      hasDme: true,
      frequencyMhz: 114.7,
    };
    for (let at = 0; !state.isDone && at < 40; at += 1) {
      const path = `/api/stations/m${at}`;
      const answer = await send('PUT', path, 'application/json', JSON.stringify(byHand), own);
      expect(answer.status).toBeLessThan(300);
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
    expect([200, 503]).toContain((await importing).status);
    const kept = (await find('q=QEV&limit=4000', own)).filter(({ id }) => id === 'm0');
    expect(kept[0]).toMatchObject({ elevationFt: 1, isByHand: true });
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

  it.each([
    ['too long', 'a'.repeat(65), 422, 'id', '1 to 64 letters'],
    ['blank', '%20', 422, 'id', '1 to 64 letters'],
    ['of a control code', 'x%0Ay', 422, 'id', '1 to 64 letters'],
    ['too long for any address', 'a'.repeat(300), 414, 'address', 'at most 200 letters'],
  ])('says of an id that is %s what an id is', async (_what, id, status, field, words) => {
    const answer = await put(id, station);
    expect(answer.status).toBe(status);
    const [first] = (answer.json as Refused).errors;
    expect(first?.field).toBe(field);
    expect(first?.expected).toContain(words);
    const gone = await call(port, { method: 'DELETE', path: `/api/stations/${id}` });
    expect(gone.status).toBe(status);
  });
});
