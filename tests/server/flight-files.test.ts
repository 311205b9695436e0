import { XMLParser } from 'fast-xml-parser';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { gpxFaults } from '../gpx-schema.ts';
import { aircraft, idOf, leg } from './examples.ts';
import { get, post, serve } from './serve.ts';

const { port } = await serve();

const START_MS = 1_764_062_000_000;
const { json: made } = await post(port, '/api/flights', { name: 'Out <and> "back" & on' });
const { id } = made as { id: string };
await post(port, `/api/flights/${id}/events`, {
  events: [
    {
      id: idOf(1),
      atMs: START_MS,
      kind: 'plan',
      name: 'two legs',
      legs: [leg, { ...leg, direction: 'from', courseDeg: 68, endDmeNm: 14 }],
      aircraft,
      dateIso: '2026-11-25',
    },
    ...[11.2, 9.7, 8.2].map((dmeNm, at) => ({
      id: idOf(2 + at),
      atMs: START_MS + 60_000 * (at + 1),
      kind: 'reading',
      headingDeg: 112,
      courseSetDeg: 112,
      needleDots: 0,
      flag: 'to',
      dmeNm,
    })),
    { id: idOf(8), atMs: START_MS + 190_000, kind: 'reading', dmeNm: 7.9 },
    { id: idOf(9), atMs: START_MS + 200_000, kind: 'note', text: '=1+1, "quoted"' },
  ],
});

describe('GET /api/flights/:id.csv', () => {
  it('has a row for each event, with what was read and where that put the aircraft', async () => {
    const { status, headers, text } = await get(port, `/api/flights/${id}.csv`);
    expect(status).toBe(200);
    expect(headers['content-type']).toMatch(/^text\/csv/);
    const rows: Record<string, string>[] = parse(text, { columns: true });
    expect(rows.map(({ kind }) => kind).join(' ')).toBe(
      'plan reading reading reading reading note',
    );
    expect(rows[1]).toMatchObject({ ident: 'QEV', heading_deg: '112', dme_nm: '11.2', flag: 'to' });
    expect(Number(rows[2]?.['believed_latitude_deg'])).toBeCloseTo(46.5 + 9.7 / 60 / 4, 0);
    expect(rows[4]).toMatchObject({ dme_nm: '7.9', course_set_deg: '', needle_dots: '', flag: '' });
    expect(rows[5]?.['text']).toMatch(/^'=1\+1/);
  });
});

describe('GET /api/flights/:id.gpx', () => {
  it('is XML with the stations, the route and a track, in the order that GPX 1.1 asks for', async () => {
    const { status, headers, text } = await get(port, `/api/flights/${id}.gpx`);
    expect(status).toBe(200);
    expect(headers['content-type']).toMatch(/^application\/gpx\+xml/);
    expect(await gpxFaults(text)).toEqual([]);
    const { gpx } = new XMLParser({ ignoreAttributes: false }).parse(text) as {
      gpx: Record<string, unknown>;
    };
    expect(Object.keys(gpx).filter((key) => !key.startsWith('@'))).toEqual([
      'metadata',
      'wpt',
      'rte',
      'trk',
    ]);
    expect(gpx['rte']).toMatchObject({
      name: 'Out <and> "back" & on',
      rtept: [{ name: 'QEV' }, { name: 'QEV 068 DME 14' }],
    });
    const { trk } = gpx as { trk: { trkseg: { trkpt: Record<string, string>[] } } };
    expect(trk.trkseg.trkpt).toHaveLength(4);
    expect(trk.trkseg.trkpt[0]?.['time']).toBe(new Date(START_MS + 60_000).toISOString());
  });

  it('is a 404 for a flight that is not there', async () => {
    expect((await get(port, `/api/flights/${idOf(77)}.gpx`)).status).toBe(404);
  });
});
