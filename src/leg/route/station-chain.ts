import { geodesicTo, type LatLon } from '../../earth/geodesic.ts';
import { indexStations, stationsNear } from '../../station/library/find-stations.ts';
import type { LibraryStation } from '../../station/library/library-station.ts';
import { receptionNm } from '../../station/library/reception.ts';

/** One more station must save at least this, NM: each is another frequency, ident and cone for the pilot. */
export const STATION_PRICE_NM = 2;
/** A start or destination this near to a station is over it, NM. */
const OVER_NM = 0.5;

/** The stations to fly over from a start to a destination, and what that costs. */
export interface Chain {
  readonly stations: readonly LibraryStation[];
  readonly distanceNm: number;
  /** Distance and the price of each station: what was made least. */
  readonly costNm: number;
}

/** A station, how far it is received, and how far it still is to the destination. */
interface Node {
  readonly station: LibraryStation;
  readonly reachNm: number;
  readonly toGoNm: number;
}

/** The best way found so far to a station. */
interface Way {
  readonly node: Node;
  readonly flownNm: number;
  readonly costNm: number;
  readonly before: Way | null;
}

/** A library measured for one flight: how far each station is from its start and from its destination. */
export interface Survey {
  readonly directNm: number;
  readonly stations: readonly {
    readonly station: LibraryStation;
    readonly viaNm: number;
    readonly toGoNm: number;
  }[];
}

/** Measures every station of a library for a flight, once for all altitudes. */
export function surveyed(
  library: readonly LibraryStation[],
  start: LatLon,
  destination: LatLon,
): Survey {
  return {
    directNm: geodesicTo(start, destination).distanceNm,
    stations: library.map((station) => ({
      station,
      viaNm: geodesicTo(start, station).distanceNm,
      toGoNm: geodesicTo(station, destination).distanceNm,
    })),
  };
}

/**
 * The chain of stations from a start to a destination that costs least: its length, and 2 NM for each station.
 *
 * Start and destination lie within reception of the first and the last station at the altitude; of two that follow
 * each other, one is received until the other is (they are no farther apart than both their receptions together).
 * Null where there is none. The least cost is certain: a station left out of the search could not be on a cheaper
 * chain, because by way of it alone the flight would be longer.
 * *Source:* P. E. Hart, N. J. Nilsson, B. Raphael, "A formal basis for the heuristic determination of minimum cost
 * paths", IEEE Transactions SSC 4 (1968) 100-107 (A*, here with the geodesic to the destination as lower bound).
 */
export function cheapestChain({ directNm, stations }: Survey, altitudeFt: number): Chain | null {
  const all = stations
    .map(({ station, viaNm, toGoNm }) => ({
      node: { station, reachNm: receptionNm(station, altitudeFt), toGoNm },
      viaNm,
    }))
    .filter(({ node }) => node.reachNm > 0);
  for (const limitNm of [1.2 * directNm + 30, 2 * directNm + 200, Infinity]) {
    const within = all.filter(({ node, viaNm }) => viaNm + node.toGoNm <= limitNm);
    const chain = search(within);
    if (chain !== null && chain.costNm <= limitNm) return chain;
  }
  return null;
}

function search(within: readonly { readonly node: Node; readonly viaNm: number }[]): Chain | null {
  const nodeOf = new Map(within.map(({ node }) => [node.station.id, node]));
  const index = indexStations(within.map(({ node }) => node.station));
  const farthestNm = Math.max(0, ...within.map(({ node }) => node.reachNm));
  const open = new Map<string, Way>();
  const done = new Set<string>();
  const offer = (way: Way): void => {
    const { id } = way.node.station;
    const known = open.get(id);
    if (!done.has(id) && (known === undefined || way.costNm < known.costNm)) open.set(id, way);
  };
  for (const { node, viaNm } of within) {
    if (viaNm <= node.reachNm)
      offer({ node, flownNm: viaNm, costNm: viaNm + STATION_PRICE_NM, before: null });
  }
  let best: Chain | null = null;
  for (let way = nearestOf(open); way !== null; way = nearestOf(open)) {
    if (best !== null && way.costNm + way.node.toGoNm >= best.costNm) return best;
    open.delete(way.node.station.id);
    done.add(way.node.station.id);
    best = cheaper(best, ended(way));
    const reachNm = way.node.reachNm + farthestNm;
    for (const { station, distanceNm } of stationsNear(index, way.node.station, reachNm)) {
      const node = nodeOf.get(station.id);
      if (!node || done.has(station.id) || distanceNm > way.node.reachNm + node.reachNm) continue;
      offer({
        node,
        flownNm: way.flownNm + distanceNm,
        costNm: way.costNm + distanceNm + STATION_PRICE_NM,
        before: way,
      });
    }
  }
  return best;
}

/** The way that promises the least cost in all; null when none is left. */
function nearestOf(open: ReadonlyMap<string, Way>): Way | null {
  let nearest: Way | null = null;
  let least = Infinity;
  for (const way of open.values()) {
    const promised = way.costNm + way.node.toGoNm;
    if (promised < least || nearest === null) {
      least = promised;
      nearest = way;
    }
  }
  return nearest;
}

/** The chain that ends here, when the destination is within reception. */
function ended({ node, flownNm, costNm, before }: Way): Chain | null {
  if (node.toGoNm > node.reachNm) return null;
  const stations = [node.station];
  for (let way = before; way !== null; way = way.before) stations.unshift(way.node.station);
  return { stations, distanceNm: flownNm + node.toGoNm, costNm: costNm + node.toGoNm };
}

function cheaper(one: Chain | null, other: Chain | null): Chain | null {
  if (one === null || other === null) return one ?? other;
  return other.costNm < one.costNm ? other : one;
}

/** Whether a place is over a station, as near as matters to a leg. */
export function isOver(place: LatLon, station: LatLon): boolean {
  return geodesicTo(place, station).distanceNm <= OVER_NM;
}
