import type { FastifyInstance } from 'fastify';
import type { Result } from '../../src/base/result.ts';
import type { ComputedRoute } from '../../src/leg/route/compute-legs.ts';
import { computeRoute } from '../../src/leg/route/route-warnings.ts';
import { AskedRouteSchema, ComputedRouteSchema } from '../../src/wire/legs-compute.ts';
import type { AskedRoute } from '../../src/wire/legs-compute.ts';
import { fieldRefusal } from '../problems.ts';
import { checkingAll } from '../validation.ts';
import { refusals } from './refusals.ts';

/** `POST /api/legs/compute`: stateless, the same code as in the page. Without a day, today's (UTC). */
export function legsRoute(app: FastifyInstance, now: () => number): void {
  const schema = {
    summary: 'Course, heading, time, fuel and reception of each leg of a route',
    body: AskedRouteSchema,
    response: { 200: ComputedRouteSchema, ...refusals(400, 413, 415, 422) },
  };
  const answer = (body: AskedRoute): Result<ComputedRoute> =>
    computeRoute({ ...body, dateIso: body.dateIso ?? new Date(now()).toISOString().slice(0, 10) });
  const validatorCompiler = checkingAll((whole) => {
    const result = answer(whole as AskedRoute);
    return result.ok ? [] : result.problem;
  });
  app.post<{ Body: AskedRoute }>('/api/legs/compute', { schema, validatorCompiler }, ({ body }) => {
    const result = answer(body);
    if (!result.ok) throw fieldRefusal(result.problem);
    return result.value;
  });
}
