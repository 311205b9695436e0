/** A seeded source of chance for the benches: uniform and normal numbers. */
export interface Chance {
  readonly uniform: (low: number, high: number) => number;
  readonly normal: (sd: number) => number;
}

/** Chance from a seed (mulberry32; Box-Muller for the normal numbers). */
export function chanceFrom(seed: number): Chance {
  let state = seed >>> 0;
  const unit = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return {
    uniform: (low, high) => low + (high - low) * unit(),
    normal: (sd) => sd * Math.sqrt(-2 * Math.log(1 - unit())) * Math.cos(2 * Math.PI * unit()),
  };
}
