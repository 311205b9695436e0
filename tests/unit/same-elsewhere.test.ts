import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { stationByHand } from '../../src/station/library/given-station.ts';
import { stationDoubts, type LibraryStation } from '../../src/station/library/library-station.ts';
import { readNavaids } from '../../src/station/library/read-navaids.ts';
import { nearestFirst, sameElsewhere } from '../../src/station/library/same-elsewhere.ts';

const station = (
  id: string,
  ident: string,
  frequencyMhz: number,
  longitudeDeg: number,
  latitudeDeg = 0,
): LibraryStation => ({
  id,
  ident,
  frequencyMhz,
  latitudeDeg,
  longitudeDeg,
  elevationFt: 0,
  declinationDegEast: 0,
  hasDme: true,
  declinationFrom: 'published',
  isElevationKnown: true,
  isByHand: false,
});

describe('what else has the ident or the frequency of a station', () => {
  const here = station('1', 'QEV', 113.35, 179.5);
  const far = station('2', 'QEV', 112.1, 175);
  const across = station('3', 'QEV', 113.35, -179.5);
  const other = station('4', 'ZUP', 113.35, 170);
  const stations = [far, here, other, across, station('5', 'WOK', 113.4, 179)];

  it('is all of it but itself, and nothing on the next channel', () => {
    const { ident, frequency } = sameElsewhere(stations, here);
    expect(ident).toEqual([far, across]);
    expect(frequency).toEqual([other, across]);
  });

  it('stands nearest first, across the antimeridian too', () => {
    const { ident } = sameElsewhere(stations, here);
    const [first, second] = nearestFirst(ident, here);
    expect(first?.station).toBe(across);
    // One degree of the equator is 60.1 NM.
    expect(first?.distanceNm).toBeCloseTo(60.1, 1);
    expect(second?.station).toBe(far);
  });

  it('is told from a station at the pole', () => {
    const pole = station('9', 'QEV', 113.35, 42, 90);
    const [nearest] = nearestFirst(
      sameElsewhere([pole, station('8', 'QEV', 113.35, -100, 89)], pole).ident,
      pole,
    );
    // One degree of the meridian at the pole is 60.3 NM.
    expect(nearest?.distanceNm).toBeCloseTo(60.3, 1);
  });
});

describe('the open data of the world (OurAirports, public domain)', () => {
  it('has SIE five times among its VORs, and never the same place twice', () => {
    const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
    const bytes = new Uint8Array(readFileSync('../shared/data/navaids.csv'));
    const read = readNavaids(bytes, (line) => decoder.decode(line), new Map(), 2026.9);
    const stations = read.ok ? read.value.changes : [];
    const sie = stations.find(({ name }) => name === 'Sea Isle');
    expect(sie).toBeDefined();
    if (sie === undefined) return;
    const { ident } = sameElsewhere(stations, sie);
    expect(ident).toHaveLength(4);
    const distances = nearestFirst(ident, sie).map(({ distanceNm }) => distanceNm);
    expect(distances).toEqual(distances.toSorted((one, another) => one - another));
    expect(distances[0]).toBeGreaterThan(3000);
  });
});

describe('a station by hand without a declination', () => {
  const entered = {
    ident: 'QEV',
    latitudeDeg: 46.5,
    longitudeDeg: -21.25,
    elevationFt: 410,
    hasDme: true,
    frequencyMhz: 113.35,
  };
  const doubts = (part: Partial<typeof entered> = {}): readonly string[] => {
    const made = stationByHand('1', { ...entered, ...part }, 2026.9);
    return made.ok ? stationDoubts(made.value) : [JSON.stringify(made.problem)];
  };

  it('takes it from the magnetic model and says so', () => {
    expect(doubts()).toEqual([expect.stringContaining('No declination is published for QEV')]);
  });

  it.each([90, -90, 70])(
    'says at latitude %s that its radials may be aligned to true north',
    (latitudeDeg) => {
      expect(doubts({ latitudeDeg }).join(' ')).toContain('may be aligned to true north');
    },
  );

  it('is refused for its height alone where that is no number', () => {
    const made = stationByHand('1', { ...entered, elevationFt: Number.NaN }, 2026.9);
    expect(made.ok ? [] : made.problem.map(({ field }) => field)).toEqual(['elevationFt']);
  });
});
