import { useState } from 'preact/hooks';
import type { FieldProblem } from '../../src/base/result.ts';
import { boundTo, type Bound, type Problems } from './bound.ts';
import { focusFirstProblem } from './field.tsx';
import { problemTexts } from './problem-texts.ts';

/** A form while it is filled in. */
interface Draft<Typed extends object> {
  readonly draft: Typed;
  readonly put: (part: Partial<Typed>) => void;
  readonly of: <Key extends keyof Typed>(key: Key) => Bound<Typed[Key]>;
  readonly problems: Problems;
  /** Writes what is wrong beside the fields and takes the focus to the first; with nothing wrong, wipes it off. */
  readonly tell: (problems: readonly FieldProblem[]) => void;
}

/** What is typed into a form, and what is wrong with it. */
export function useDraft<Typed extends object>(first: () => Typed): Draft<Typed> {
  const [draft, setDraft] = useState(first);
  const [problems, setProblems] = useState<Problems>(new Map());
  const put = (part: Partial<Typed>): void => {
    setDraft((now) => ({ ...now, ...part }));
  };
  const tell = (found: readonly FieldProblem[]): void => {
    setProblems(problemTexts(found));
    if (found.length > 0) focusFirstProblem();
  };
  return { draft, put, of: boundTo(draft, put, problems), problems, tell };
}
