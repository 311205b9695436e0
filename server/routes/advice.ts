import type { FastifyInstance } from 'fastify';
import { advise } from '../../src/procedure/advise.ts';
import { AdviceSchema } from '../../src/wire/advice.ts';
import { AskedAdviceSchema, crossBearingProblems } from '../../src/wire/advice-request.ts';
import type { AskedAdvice } from '../../src/wire/advice-request.ts';
import { fieldRefusal } from '../problems.ts';
import { refusals } from './refusals.ts';

/** `POST /api/advice`: stateless, the same code as in the page. Without a day, today's (UTC). */
export function adviceRoute(app: FastifyInstance, now: () => number): void {
  const schema = {
    summary: 'How far to go and which way to correct, from the readings of one leg',
    body: AskedAdviceSchema,
    response: { 200: AdviceSchema, ...refusals(400, 413, 415, 422) },
  };
  app.post<{ Body: AskedAdvice }>('/api/advice', { schema }, ({ body }) => {
    const dateIso = body.dateIso ?? new Date(now()).toISOString().slice(0, 10);
    const stationProblems = crossBearingProblems(body);
    if (stationProblems.length > 0) throw fieldRefusal(stationProblems);
    const advice = advise({ ...body, dateIso });
    if (!advice.ok) throw fieldRefusal(advice.problem);
    return advice.value;
  });
}
