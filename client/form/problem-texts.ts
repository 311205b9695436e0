import type { FieldProblem } from '../../src/base/result.ts';
import type { Problems } from './bound.ts';

/** What to write beside each field. */
export function problemTexts(problems: readonly FieldProblem[]): Problems {
  return new Map(
    problems.map(({ field, expected, got }) => {
      const sentence = /[.?]$/.test(expected) ? expected : `Expected ${expected}.`;
      return [field, ['', 'NaN', 'nothing'].includes(got) ? sentence : `${sentence} Not ${got}.`];
    }),
  );
}
