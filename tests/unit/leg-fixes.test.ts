import { describe, expect, it } from 'vitest';
import { trueDeg } from '../../src/base/bearing.ts';
import { geodesicTo, placeAt, type LatLon } from '../../src/earth/geodesic.ts';
import { bestCrossing, crossingRadial } from '../../src/leg/route/crossing-radial.ts';
import { legFixes } from '../../src/leg/route/leg-fixes.ts';
import { placeLegs } from '../../src/leg/route/place-legs.ts';
import { legsOf } from '../../src/leg/route/propose-route.ts';
import { indexStations } from '../../src/station/library/find-stations.ts';
import type { LibraryStation } from '../../src/station/library/library-station.ts';
import { ocean, stationAt } from './station-sets.ts';

const altitudeFt = 4_500;
const east = (nm: number) => placeAt(ocean, trueDeg(90), nm);
const beside = (nm: number, offNm: number) => placeAt(east(nm), trueDeg(0), offNm);
const at = { place: ocean, trackDegTrue: 90, rangeNm: 20, altitudeFt };

let channel = 0;
/** A station on a frequency of its own. */
const apart = (ident: string, place: LatLon): LibraryStation => {
  channel += 1;
  return { ...stationAt(ident, place), frequencyMhz: 112 + channel / 20 };
};

/** From 50 NM west of QEV by QEV and ZUP, 60 NM apart, to 25 NM beyond. */
function fixesOf(
  around: readonly LibraryStation[],
  via = [apart('QEV', east(35)), apart('ZUP', east(95))],
) {
  const wish = { start: ocean, destination: east(120), altitudeFt };
  const placed = placeLegs(legsOf(via, wish));
  if (!placed.ok) throw new Error('not placed');
  return legFixes(placed.value, indexStations([...via, ...around]), altitudeFt);
}
const words = (fixes: ReturnType<typeof fixesOf>) =>
  fixes.map((leg) =>
    leg.map(({ kind, crossing }) => `${kind} ${crossing?.station.ident ?? '-'}`).join(', '),
  );

describe('a crossing radial', () => {
  it('is not offered where it crosses flatly', () => {
    const north = apart('ZUP', placeAt(ocean, trueDeg(0), 20));
    expect(crossingRadial({ ...at, trackDegTrue: 10 }, north)).toBeNull();
    expect(crossingRadial({ ...at, trackDegTrue: 31 }, north)).not.toBeNull();
  });

  it('is not offered in the blind cone of its own station: no radial can be read there', () => {
    const over = apart('OVR', placeAt(ocean, trueDeg(0), 0.8));
    expect(crossingRadial(at, over)).toBeNull();
    expect(crossingRadial({ ...at, altitudeFt: 3_000 }, over)).not.toBeNull();
  });

  it('is taken from the station that tells the place best, a square one before a flat one', () => {
    const abeam = apart('ABM', placeAt(ocean, trueDeg(0), 30));
    const near = apart('NER', placeAt(ocean, trueDeg(180), 12));
    const flat = apart('FLT', placeAt(ocean, trueDeg(50), 5));
    expect(bestCrossing(at, [abeam, near])?.station.ident).toBe('NER');
    expect(bestCrossing(at, [flat, abeam])?.station.ident).toBe('ABM');
    expect(bestCrossing(at, [flat])?.station.ident).toBe('FLT');
    expect(bestCrossing(at, [])).toBeNull();
  });
});

describe('the checkpoints of a flight with DME', () => {
  it('are halfway on long legs and the change-over, each with the station beside it', () => {
    const around = [apart('NOR', beside(17, 20)), apart('MID', beside(58, 15))];
    expect(words(fixesOf(around))).toEqual(['halfway NOR', 'halfway MID, change-over MID', '', '']);
  });

  it('are left out where nothing crosses at 60 to 120 degrees', () => {
    const flat = apart('FLT', beside(59, 5));
    expect(words(fixesOf([flat]))).toEqual(['', '', '', '']);
  });

  it('take no station that is out of reception at the altitude', () => {
    const far = apart('FAR', beside(65, 45));
    expect(words(fixesOf([far]))).toEqual(['', '', '', '']);
    const served = { ...apart('FAR', beside(65, 30)), serviceClass: 'T' as const };
    expect(words(fixesOf([served]))).toEqual(['', '', '', '']);
  });
});

describe('a second station that shares its frequency', () => {
  const mid = apart('MID', beside(58, 15));
  const twin = (place: LatLon) => ({ ...apart('TWN', place), frequencyMhz: mid.frequencyMhz });

  it('is left out where the other one may be heard', () => {
    // From 4,500 ft the horizon of a station at sea level is at 1.23 sqrt 4,500 = 82.5 NM.
    expect(words(fixesOf([mid, twin(beside(58, -70))]))).toEqual(['', '', '', '']);
    expect(words(fixesOf([mid, twin(beside(58, -95))]))[1]).toBe('halfway MID, change-over MID');
  });

  it('is no other one where two rows stand for it', () => {
    const again = { ...mid, id: 'again' };
    expect(words(fixesOf([mid, again]))[1]).toBe('halfway MID, change-over MID');
  });
});

describe('the checkpoints of a flight without DME', () => {
  const mute = (ident: string, nm: number) => ({ ...apart(ident, east(nm)), hasDme: false });
  const via = [mute('QEV', 35), mute('ZUP', 95)];

  it('come about every 10 NM, at the change-over and at the destination, told or not', () => {
    const around = [apart('MID', beside(65, 15))];
    const [first, second, third, last] = fixesOf(around, via);
    expect(first?.map(({ flownNm }) => Math.round(flownNm))).toEqual([12, 23]);
    expect(first?.every(({ crossing }) => crossing === null)).toBe(true);
    expect(second?.map(({ kind }) => kind)).toEqual(['on-the-way', 'on-the-way', 'change-over']);
    expect(second?.at(-1)?.crossing?.station.ident).toBe('MID');
    expect(third?.map(({ kind }) => kind)).toEqual(['on-the-way', 'on-the-way']);
    expect(last?.map(({ kind }) => kind)).toEqual(['on-the-way', 'destination']);
  });

  it('are told by a flat crossing where there is no better one, and with its uncertainty', () => {
    const trackDeg = geodesicTo(ocean, east(120)).azimuthThereDeg;
    const flat = apart('FLT', placeAt(east(120), trueDeg(trackDeg - 45), 15));
    const crossing = fixesOf([flat], via).at(-1)?.at(-1)?.crossing;
    expect(crossing?.station.ident).toBe('FLT');
    expect(crossing?.angleDeg).toBeCloseTo(45, 0);
    // 15 NM: 0.42 over sine 45; 25 NM of its own radial: 0.70 over tangent 45.
    expect(crossing?.alongSdNm).toBeCloseTo(Math.hypot(0.592, 0.698), 1);
  });

  it('are not told by the leg’s own station, nor by a second row of it', () => {
    const twin = apart('TWN', placeAt(east(95), trueDeg(0), 0.5));
    expect(
      fixesOf([twin], via)
        .flat()
        .filter(({ crossing }) => crossing !== null),
    ).toEqual([]);
  });
});
