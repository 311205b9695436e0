import { describe, expect, it } from 'vitest';
import { gpxText } from '../../src/flight/files/gpx.ts';
import { gpxFaults } from '../gpx-schema.ts';

const place = { latitudeDeg: 46.5, longitudeDeg: -21.25 };
const full = {
  name: 'Out & "back" <1> \u0000\u000b',
  places: [{ name: 'QEV', place }],
  route: [
    { name: 'start', place },
    { name: 'QEV 068 DME 14', place: { latitudeDeg: -90, longitudeDeg: 180 } },
  ],
  track: [{ timeIso: '2026-11-25T12:00:00.000Z', place }],
};

describe('GPX 1.1, by its schema (topografix.com/GPX/1/1) and libxml2', () => {
  it.each([
    ['everything', full],
    ['no track', { ...full, track: [] }],
    ['nothing but a name', { name: 'x', places: [], route: [], track: [] }],
    ['an empty name', { ...full, name: '' }],
  ])('is valid with %s', async (_what, content) => {
    expect(await gpxFaults(gpxText(content))).toEqual([]);
  });

  it('is told from what is not: the check can fail', async () => {
    const wrong = gpxText(full).replace('lat="46.500000"', 'lat="96.5"');
    expect(await gpxFaults(wrong)).not.toEqual([]);
    expect(await gpxFaults(gpxText(full).replace('<metadata>', '<metadata><x/>'))).not.toEqual([]);
  });
});
