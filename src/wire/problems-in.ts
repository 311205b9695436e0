import type { FieldProblem, Result } from '../base/result.ts';

/** The problems of a refusal; none of what was accepted. */
export function problemsIn(result: Result<unknown>): readonly FieldProblem[] {
  return result.ok ? [] : result.problem;
}
