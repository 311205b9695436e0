/** One number of a measurement, as `npm run bench` reads it from the output. */
export interface Measured {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** The value should stay under this. */
  readonly goal?: number;
  /** The value should reach this. */
  readonly goalAtLeast?: number;
  /** How many clips or trials it comes from. */
  readonly n?: number;
}

/** Prints a measured number as one line of JSON. */
export function report(measured: Measured): void {
  console.log(JSON.stringify(measured));
}

/** Middle value: a single slow run (another program, a garbage collection) does not move it. */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((one, other) => one - other);
  return sorted[Math.floor(sorted.length / 2)] ?? NaN;
}
