import { cosDeg, sinDeg } from '../../src/base/angle.ts';
import { trueDeg } from '../../src/base/bearing.ts';
import { geodesicTo, placeAt, type LatLon } from '../../src/earth/geodesic.ts';

/** A point of the plan view: NM east and south of its middle, as a screen counts. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * Lays places out in a plane about a middle: distances and directions from the middle are exact (azimuthal
 * equidistant), whatever meridian or pole lies between.
 */
export function projection(middle: LatLon): (place: LatLon) => Point {
  return (place) => {
    const { distanceNm, azimuthDeg } = geodesicTo(middle, place);
    return { x: distanceNm * sinDeg(azimuthDeg), y: -distanceNm * cosDeg(azimuthDeg) };
  };
}

/** The middle of a route: halfway between its two places that are farthest apart. */
export function middleOf(places: readonly LatLon[]): LatLon {
  let longest = { from: places[0] ?? { latitudeDeg: 0, longitudeDeg: 0 }, azimuth: 0, nm: 0 };
  for (const [at, from] of places.entries()) {
    for (const to of places.slice(at + 1)) {
      const line = geodesicTo(from, to);
      if (line.distanceNm > longest.nm)
        longest = { from, azimuth: line.azimuthDeg, nm: line.distanceNm };
    }
  }
  return placeAt(longest.from, trueDeg(longest.azimuth), longest.nm / 2);
}

/** What has to be in sight: a box about points, with a margin, NM. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The box about points, at least so large, with a margin of an eighth on each side. */
export function boxOf(points: readonly Point[], leastNm = 10): Box {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
  const width = Math.max(leastNm, right - left);
  const height = Math.max(leastNm, bottom - top);
  const margin = Math.max(width, height) / 8;
  return {
    x: (left + right - width) / 2 - margin,
    y: (top + bottom - height) / 2 - margin,
    width: width + 2 * margin,
    height: height + 2 * margin,
  };
}

/** A round length for a scale bar: the largest of 1, 2, 5, 10, ... that is not longer than this, NM. */
export function roundLengthNm(mostNm: number): number {
  const power = 10 ** Math.floor(Math.log10(mostNm));
  const step = [5, 2, 1].find((each) => each * power <= mostNm) ?? 1;
  return step * power;
}
