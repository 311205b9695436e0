/** One figure that a bench has measured. */
export interface Figure {
  readonly name: string;
  readonly value: number;
  /** To stay under; null: none set. */
  readonly goal: number | null;
}

/** A number given on the command line as `--name number`, or the fallback. */
export function option(name: string, fallback: number): number {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? fallback : Number(process.argv[at + 1]);
}

/** Whether a bare `--name` was given. */
export function isAsked(name: string): boolean {
  return process.argv.includes(`--${name}`);
}

/** Prints figures, one a line, or as JSON when `--json` was given. */
export function printFigures(figures: readonly Figure[]): void {
  if (isAsked('json')) {
    console.log(JSON.stringify(figures, null, 2));
    return;
  }
  for (const { name, value, goal } of figures) {
    const verdict =
      goal === null ? '' : ` (goal: under ${goal}${value <= goal ? '' : ', NOT MET'})`;
    console.log(`${name}: ${Number(value.toPrecision(3))}${verdict}`);
  }
}

/** The value below which a part of the values lies. */
export function quantile(values: readonly number[], part: number): number {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? NaN;
}

/** The mean of some values. */
export function meanOf(values: readonly number[]): number {
  return values.reduce((sum, each) => sum + each, 0) / values.length;
}
