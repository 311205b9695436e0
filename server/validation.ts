import type { FastifySchemaCompiler } from 'fastify';
import type { TSchema } from 'typebox';
import type { FieldProblem } from '../src/base/result.ts';
import { problemsOf } from '../src/wire/problems-of.ts';
import { problemsInAll } from '../src/wire/whole-of.ts';
import { fieldRefusal, refusal } from './problems.ts';

interface Properties {
  readonly properties?: Readonly<Record<string, { readonly type?: string }>>;
}

/**
 * Lets Fastify check bodies and queries with the schemas of `src/wire` and its words.
 *
 * A body is taken as it is: nothing is converted, filled in or dropped. A query is text: what its
 * schema calls a number is read as one.
 */
export const checkBySchema: FastifySchemaCompiler<TSchema> = ({ schema, httpPart }) => {
  const isQuery = httpPart === 'querystring';
  return (given: unknown) => {
    if (httpPart === 'body' && (given === undefined || given === null))
      return { error: refusal(400, 'The body is missing: JSON is expected.', [NO_BODY]) };
    const value = isQuery ? withNumbers(given, schema) : given;
    const problems = problemsOf(schema, value);
    return problems.length === 0 ? { value } : { error: fieldRefusal(problems) };
  };
};

/**
 * The same for a body whose values can be judged too: what is wrong with its form and with its values is told at
 * once. A body of the right form passes; the route judges it.
 */
export function checkingAll(
  judge: (whole: unknown) => readonly FieldProblem[],
): FastifySchemaCompiler<TSchema> {
  return (route) => {
    const checkForm = checkBySchema(route);
    if (route.httpPart !== 'body') return checkForm;
    return (given: unknown) => {
      if (given === undefined || given === null) return checkForm(given);
      const problems = problemsInAll(route.schema, given, judge);
      return problems.length === 0 ? { value: given } : { error: fieldRefusal(problems) };
    };
  };
}

const NO_BODY = { field: 'body', expected: 'JSON', got: 'nothing' };

const DECIMAL = /^[+-]?\d+(\.\d+)?$/;

function withNumbers(given: unknown, schema: TSchema): Record<string, unknown> {
  const properties = (schema as Properties).properties ?? {};
  const entries = Object.entries(given as Record<string, unknown>).map(([key, value]) => {
    const type = Object.hasOwn(properties, key) ? properties[key]?.type : undefined;
    const isNumber = type === 'number' || type === 'integer';
    return [
      key,
      isNumber && typeof value === 'string' && DECIMAL.test(value) ? Number(value) : value,
    ];
  });
  return Object.fromEntries(entries) as Record<string, unknown>;
}
