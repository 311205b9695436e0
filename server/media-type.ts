import type { FastifyInstance } from 'fastify';
import { answerError, refusal } from './problems.ts';

/** Throws a refusal (415) of a body of another media type than those; the first is the one that it names. */
export function checkType(given: string | undefined, types: readonly string[]): void {
  const type = given?.split(';')[0]?.trim().toLowerCase() ?? '';
  if (types.includes(type)) return;
  const expected = types[0] ?? 'another one';
  throw refusal(415, `The body must be ${expected}.`, [
    { field: 'content-type', expected, got: type === '' ? 'nothing' : type.slice(0, 60) },
  ]);
}

/** In a scope that takes only those: Fastify's own refusal of what is no media type at all names it too. */
export function namingTypes(scope: FastifyInstance, types: readonly string[]): void {
  scope.setErrorHandler((error: { readonly code?: string }, request, reply) => {
    if (error.code !== 'FST_ERR_CTP_INVALID_MEDIA_TYPE') return answerError(error, request, reply);
    try {
      checkType(request.headers['content-type'], types);
    } catch (named) {
      return answerError(named as Error, request, reply);
    }
    return answerError(error, request, reply);
  });
}
