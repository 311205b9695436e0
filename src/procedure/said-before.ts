import type { Advice } from './advice.ts';
import type { AnswerContext } from './answer-context.ts';

/** Whether the answer before, if there is one, already said this; other phases say neither wind nor doubt. */
export function saidBefore({ previous }: AnswerContext, said: (was: Advice) => boolean): boolean {
  if (previous === undefined) return false;
  const spoke = ['intercept', 'track', 'outbound'].includes(previous.phase);
  return spoke && said(previous);
}
