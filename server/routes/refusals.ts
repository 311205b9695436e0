import { ProblemSchema } from '../../src/wire/problem.ts';

const DESCRIPTIONS: Readonly<Record<number, string>> = {
  400: 'no JSON, or broken JSON',
  404: 'there is no such thing',
  413: 'the body is too large',
  414: 'a name or an id in the address is too long',
  415: 'the body is of another media type',
  422: 'fields are wrong; errors names them',
  503: 'it cannot be done now; later it can',
};

/** The answers of a route that refuse, for its schema: each a problem of RFC 9457. */
export function refusals(...statuses: readonly number[]): Record<string, unknown> {
  return Object.fromEntries(
    statuses.map((status) => [
      status,
      {
        description: DESCRIPTIONS[status] ?? 'refused',
        content: { 'application/problem+json': { schema: ProblemSchema } },
      },
    ]),
  );
}
