/**
 * What is wrong with one field of some input, in words that a pilot understands.
 *
 * `field` is the dotted path of the field (`leg.courseDeg`, `readings.3.dmeNm`), `expected` says what
 * would have been accepted, `got` repeats what was given.
 */
export interface FieldProblem {
  readonly field: string;
  readonly expected: string;
  readonly got: string;
}

/** Either a value or the reasons why there is none. Refusals are values: nothing in `src` throws. */
export type Result<Value, Problem = readonly FieldProblem[]> =
  { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly problem: Problem };

/** Wraps a value that was accepted. */
export function accept<Value>(value: Value): Result<Value, never> {
  return { ok: true, value };
}

/** Wraps the reason why something was refused. */
export function refuse<Problem>(problem: Problem): Result<never, Problem> {
  return { ok: false, problem };
}
