import type { FieldProblem } from './result.ts';

/** What a number of the input may be. */
export interface Allowed {
  readonly least: number;
  readonly most: number;
  /** What it is, in a pilot's words, with its unit: `a course in degrees`. */
  readonly what: string;
}

/**
 * The problem with a number that is not in its range; empty when there is none.
 *
 * Both ends are allowed. What is no finite number is refused like any other.
 */
export function rangeProblems(field: string, value: number, allowed: Allowed): FieldProblem[] {
  const { least, most, what } = allowed;
  if (value >= least && value <= most) return [];
  return [
    { field, expected: `${what}, ${inFigures(least)} to ${inFigures(most)}`, got: `${value}` },
  ];
}

/** 45000 as `45,000`. */
function inFigures(value: number): string {
  return String(value).replace(/\B(?=(\d{3})+$)/, ',');
}
