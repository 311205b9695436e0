/** A radial that was read, by the station's declination, and when. */
export interface RadialRead {
  readonly radialDeg: number;
  readonly atMs: number;
}

/** What was read while the station was held abeam. */
export interface BearingChange {
  /** Heading held, magnetic. */
  readonly headingDeg: number;
  readonly startedAtMs: number;
  /** The first and the last radial that could be read; null: none yet. */
  readonly first: RadialRead | null;
  readonly last: RadialRead | null;
}

/**
 * Where the timed bearing-change check of a leg stands.
 *
 * It is begun by turning as was offered and given up by turning away: nobody has to say so. It is offered once
 * on a leg (`atMs`: by the reading of that time), and not again once it has been flown.
 */
export type RangeCheck =
  | { readonly kind: 'none' | 'done' }
  | { readonly kind: 'offered'; readonly atMs: number }
  | ({ readonly kind: 'flying' | 'ended' } & BearingChange);

/** Before the first reading of a leg. */
export const NO_RANGE_CHECK: RangeCheck = { kind: 'none' };
