import { describe, expect, it } from 'vitest';
import type { LibraryStation } from '../../src/station/library/library-station.ts';
import { openRecords } from '../../server/records.ts';
import { ownDir } from './serve.ts';

const station = (id: string, elevationFt = 0): LibraryStation => ({
  id,
  ident: 'QEV',
  latitudeDeg: 46.5,
  longitudeDeg: -21.25,
  elevationFt,
  declinationDegEast: -7,
  hasDme: true,
  frequencyMhz: 113.35,
  declinationFrom: 'published',
  isElevationKnown: true,
  isByHand: false,
});
const body = (each: LibraryStation) => [each.id, JSON.stringify(each)] as const;

describe('stations that arrive', () => {
  it('are seen when they are kept, not before, and are there when the record is opened anew', () => {
    const dir = ownDir();
    const records = openRecords(dir);
    records.stations.keep(station('1', 1));
    const arriving = records.stations.arriving();
    arriving.take([body(station('1', 10)), body(station('2', 20))]);
    arriving.take([body(station('3', 30))]);
    expect([...records.stations.all().values()]).toEqual([station('1', 1)]);
    expect(records.stations.index().stations).toHaveLength(1);
    arriving.keep();
    arriving.leave();
    const all = [station('1', 10), station('2', 20), station('3', 30)];
    expect(records.stations.index().stations).toEqual(all);
    records.close();
    const again = openRecords(dir);
    expect([...again.stations.all().values()]).toEqual(all);
    again.close();
  });

  it('leave nothing where they are left, neither then nor with those that come after them', () => {
    const records = openRecords(ownDir());
    const first = records.stations.arriving();
    first.take([body(station('1'))]);
    first.leave();
    const second = records.stations.arriving();
    second.take([body(station('2'))]);
    second.keep();
    expect([...records.stations.all().keys()]).toEqual(['2']);
    records.close();
  });

  it('do not hold up an event that is recorded meanwhile, and losing them does not lose it', () => {
    const dir = ownDir();
    const records = openRecords(dir);
    records.createFlight('f', 'Flight', 1);
    const arriving = records.stations.arriving();
    arriving.take([body(station('1'))]);
    records.append('f', [{ id: 'n1', atMs: 1, kind: 'note', text: 'TO' }]);
    records.close();
    const again = openRecords(dir);
    expect(again.flight('f')).toMatchObject({ eventCount: 1 });
    expect(again.stations.all().size).toBe(0);
    again.close();
  });
});

describe('the library of stations', () => {
  it('is told page by page, each station once, in the order of the ids', () => {
    const records = openRecords(ownDir());
    for (const id of ['c', 'a', 'e', 'b', 'd']) records.stations.keep(station(id));
    const told: string[] = [];
    for (let after: string | null = null; ;) {
      const page = records.stations.bodiesAfter(after, 2);
      told.push(...page.map(([id]) => id));
      if (page.length < 2) break;
      after = page.at(-1)?.[0] ?? null;
    }
    expect(told).toEqual(['a', 'b', 'c', 'd', 'e']);
    records.close();
  });

  it('has another revision after each change, and none where nothing changed', () => {
    const { stations, close } = openRecords(ownDir());
    const seen = [stations.revision()];
    stations.keep(station('1'));
    seen.push(stations.revision());
    stations.remove('1');
    seen.push(stations.revision());
    expect(new Set(seen).size).toBe(3);
    stations.remove('1');
    expect(stations.revision()).toBe(seen[2]);
    close();
  });
});
