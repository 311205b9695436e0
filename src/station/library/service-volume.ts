/**
 * What a station was built to serve: terminal, low, high, and the newer low and high ones for VOR-only networks.
 * *Source:* FAA Aeronautical Information Manual, 1-1-8, standard service volumes.
 */
export type ServiceClass = 'T' | 'L' | 'H' | 'VL' | 'VH';

/** A band of heights above the antenna, feet (least included, most not), and how far the station serves there, NM. */
interface Band {
  readonly leastFt: number;
  readonly belowFt: number;
  readonly rangeNm: number;
}

const LEAST_FT = 1_000;
/** The table says "including" this height; heights are compared to the next foot above it. */
const upTo = (heightFt: number): number => heightFt + 1;

const HIGH_BANDS: readonly Band[] = [
  { leastFt: 14_500, belowFt: upTo(60_000), rangeNm: 100 },
  { leastFt: 18_000, belowFt: upTo(45_000), rangeNm: 130 },
];

const BANDS: Readonly<Record<ServiceClass, readonly Band[]>> = {
  T: [{ leastFt: LEAST_FT, belowFt: upTo(12_000), rangeNm: 25 }],
  L: [{ leastFt: LEAST_FT, belowFt: upTo(18_000), rangeNm: 40 }],
  H: [{ leastFt: LEAST_FT, belowFt: upTo(14_500), rangeNm: 40 }, ...HIGH_BANDS],
  VL: [
    { leastFt: LEAST_FT, belowFt: 5_000, rangeNm: 40 },
    { leastFt: 5_000, belowFt: 18_000, rangeNm: 70 },
  ],
  VH: [
    { leastFt: LEAST_FT, belowFt: 5_000, rangeNm: 40 },
    { leastFt: 5_000, belowFt: 14_500, rangeNm: 70 },
    ...HIGH_BANDS,
  ],
};

/** Taken where the class of a station is not known: the shortest of those made for flight between places. */
const UNKNOWN_CLASS: ServiceClass = 'L';

/**
 * How far a station serves at a height above its antenna, NM; null where its class promises nothing.
 *
 * `heightFt` above the antenna. Below 1,000 ft the range is a curve that is not in the text: null. Where two
 * bands hold, the farther one. Class left out: low (40 NM), the shortest of those made for flight between places.
 * The promise is of one state; terrain and other states' figures come first.
 * *Source:* FAA Aeronautical Information Manual, 1-1-8 and table 1-1-1 (standard service volumes).
 */
export function serviceVolumeNm(
  heightFt: number,
  serviceClass: ServiceClass = UNKNOWN_CLASS,
): number | null {
  const holding = BANDS[serviceClass].filter(
    ({ leastFt, belowFt }) => heightFt >= leastFt && heightFt < belowFt,
  );
  return holding.length === 0 ? null : Math.max(...holding.map(({ rangeNm }) => rangeNm));
}
