/** Nautical miles for one square root of a foot. *Source:* as for `lineOfSightNm`. */
const NM_PER_ROOT_FT = 1.23;

/**
 * How far two antennas can see each other over a smooth Earth, NM, with the usual bending of the waves.
 *
 * Heights in feet above mean sea level; below it counts as at it. Hills in between are not known.
 * *Source:* 1.23 x (sqrt h1 + sqrt h2), as printed in EASA question-bank workings (no standard found).
 */
export function lineOfSightNm(oneHeightFt: number, otherHeightFt: number): number {
  return NM_PER_ROOT_FT * (rootOfHeight(oneHeightFt) + rootOfHeight(otherHeightFt));
}

function rootOfHeight(heightFt: number): number {
  return Math.sqrt(Math.max(0, heightFt));
}
