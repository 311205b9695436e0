// What proposing a route costs against trying every chain, and what an import costs against parsing alone.
import { readFileSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import { parse } from 'csv-parse/sync';
import { proposeRoute, type RouteWish } from '../../src/leg/route/propose-route.ts';
import { STATION_PRICE_NM } from '../../src/leg/route/station-chain.ts';
import { trueDeg } from '../../src/base/bearing.ts';
import { placeAt } from '../../src/earth/geodesic.ts';
import { readNavaids } from '../../src/station/library/read-navaids.ts';
import { allChains, ocean, scattered } from '../unit/station-sets.ts';
import { median, report } from './report.ts';

const FILE = '../shared/data/navaids.csv';
const RUNS = 5;

function timeMs(work: () => void): number {
  const startMs = performance.now();
  work();
  return performance.now() - startMs;
}

const bytes = readFileSync(FILE);
const text = bytes.toString('utf8');
const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
const parseAll = (): string[][] => parse(text, { bom: true });
const importAll = (): ReturnType<typeof readNavaids> =>
  readNavaids(bytes, (line) => decoder.decode(line), new Map(), 2026.9);
const rows = parseAll().length - 1;
const parseMs = median(Array.from({ length: RUNS }, () => timeMs(parseAll)));
const importMs = median(Array.from({ length: RUNS }, () => timeMs(importAll)));
const imported = importAll();
const library = imported.ok ? imported.value.changes : [];
report({
  name: 'import: rows a second, read and merged',
  value: (1000 * rows) / importMs,
  unit: 'rows/s',
  n: rows,
});
report({
  name: 'import over plain parsing of the same file by csv-parse',
  value: importMs / parseMs,
  unit: 'times',
  goal: 4,
});

/** Five flights of 280 to 520 NM over land with many stations, and one where there are none. */
const FLIGHTS: readonly (readonly [number, number, number, number, number])[] = [
  [48.1, 11.5, 52.4, 13.1, 5500],
  [40, -75, 33.6, -84.4, 6500],
  [51.5, -0.1, 43.6, 7.2, 7500],
  [35.5, -97.5, 41.8, -87.6, 6500],
  [-33.9, 151.2, -27.5, 153, 7500],
  [46, -30, 50, -20, 8000],
];
const wishes = FLIGHTS.map(
  ([latitude, longitude, toLatitude, toLongitude, altitudeFt]): RouteWish => ({
    start: { latitudeDeg: latitude, longitudeDeg: longitude },
    destination: { latitudeDeg: toLatitude, longitudeDeg: toLongitude },
    altitudeFt,
  }),
);
const worldMs = wishes.map((wish) =>
  median(Array.from({ length: 3 }, () => timeMs(() => void proposeRoute(library, wish)))),
);
report({
  name: 'proposal over the world file, the slowest of six flights',
  value: Math.max(...worldMs) / 1000,
  unit: 's',
  goal: 1,
});

const destination = placeAt(ocean, trueDeg(90), 200);
let same = 0;
let searchMs = 0;
let triedMs = 0;
const SETS = 20;
for (let seed = 101; seed < 101 + SETS; seed += 1) {
  const set = scattered(seed, 9);
  const wish = { start: ocean, destination, altitudeFt: 4500 };
  let found = proposeRoute(set, wish);
  searchMs += timeMs(() => {
    found = proposeRoute(set, wish);
  });
  const startMs = performance.now();
  const best = allChains(set, ocean, destination, 4500);
  triedMs += performance.now() - startMs;
  const cost = found.ok
    ? found.value.distanceNm + STATION_PRICE_NM * found.value.stations.length
    : null;
  if (cost === best || Math.abs((cost ?? NaN) - (best ?? NaN)) < 1e-6) same += 1;
}
report({
  name: 'proposals that cost what the best of all chains costs, of 20 small sets',
  value: same,
  unit: 'of 20',
  goalAtLeast: SETS,
  n: SETS,
});
report({
  name: 'time of the search over trying every chain (sets of 9 stations)',
  value: searchMs / triedMs,
  unit: 'times',
});
