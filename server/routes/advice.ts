import type { FastifyInstance } from 'fastify';
import type { FieldProblem, Result } from '../../src/base/result.ts';
import { USUAL_INDICATOR } from '../../src/leg/leg.ts';
import type { Advice } from '../../src/procedure/advice.ts';
import { advise } from '../../src/procedure/advise.ts';
import { AdviceSchema } from '../../src/wire/advice.ts';
import { AskedAdviceSchema, dmeProblems } from '../../src/wire/advice-request.ts';
import type { AskedAdvice } from '../../src/wire/advice-request.ts';
import { fieldRefusal } from '../problems.ts';
import { checkingAll } from '../validation.ts';
import { refusals } from './refusals.ts';

/** `POST /api/advice`: stateless, the same code as in the page. Without a day, today's (UTC). */
export function adviceRoute(app: FastifyInstance, now: () => number): void {
  const schema = {
    summary: 'How far to go and which way to correct, from the readings of one leg',
    body: AskedAdviceSchema,
    response: { 200: AdviceSchema, ...refusals(400, 413, 415, 422) },
  };
  const answer = (body: AskedAdvice): Result<Advice> =>
    advise({
      ...body,
      aircraft: { ...USUAL_INDICATOR, ...body.aircraft },
      dateIso: body.dateIso ?? new Date(now()).toISOString().slice(0, 10),
    });
  const problemsWith = (body: AskedAdvice, result: Result<Advice>): readonly FieldProblem[] => [
    ...dmeProblems(body),
    ...(result.ok ? [] : result.problem),
  ];
  const validatorCompiler = checkingAll((whole) => {
    const body = whole as AskedAdvice;
    return problemsWith(body, answer(body));
  });
  app.post<{ Body: AskedAdvice }>('/api/advice', { schema, validatorCompiler }, ({ body }) => {
    const result = answer(body);
    const problems = problemsWith(body, result);
    if (!result.ok || problems.length > 0) throw fieldRefusal(problems);
    return result.value;
  });
}
