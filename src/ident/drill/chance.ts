/**
 * A row of numbers from 0 up to but not including 1 that look random and follow from the seed alone.
 *
 * `seed`: any finite number; only its whole part counts. Good enough to choose questions, not for secrets.
 * *Source:* the mixing of a counter known as splitmix32 (from memory).
 */
export function chanceFrom(seed: number): () => number {
  let state = Math.trunc(seed) | 0;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let mixed = state ^ (state >>> 16);
    mixed = Math.imul(mixed, 0x21f0aaad);
    mixed ^= mixed >>> 15;
    mixed = Math.imul(mixed, 0x735a2d97);
    mixed ^= mixed >>> 15;
    return (mixed >>> 0) / 0x1_0000_0000;
  };
}

/** One of several, each as likely; undefined when there is none. */
export function oneOf<Each>(several: readonly Each[], chance: () => number): Each | undefined {
  return several[Math.floor(chance() * several.length)];
}
