import type { TSchema } from 'typebox';
import { Check } from 'typebox/value';
import type { FieldProblem } from '../base/result.ts';
import { isRecord, problemsOf, type SchemaNode } from './problems-of.ts';

const MOST_PROBLEMS = 50;

/**
 * What is wrong with a value that came over the wire: with its form, and with whatever else can be judged at once.
 *
 * `judge` tells what is wrong with a value of the right form (ranges, for instance). Where the form is wrong it
 * is given the same value made whole: a figure that is none or missing is NaN, which no range allows. What it
 * says about such a field has been said already. Empty when the form is right: the value is then judged by
 * whoever uses it. At most 50 problems are told.
 */
export function problemsInAll(
  schema: TSchema,
  value: unknown,
  judge: (whole: unknown) => readonly FieldProblem[],
): readonly FieldProblem[] {
  const inForm = problemsOf(schema, value);
  if (inForm.length === 0) return [];
  const told = inForm.map(({ field }) => field);
  const isTold = (field: string): boolean =>
    told.some((each) => each === 'body' || each === field || field.startsWith(`${each}.`));
  const beyond = judge(wholeOf(schema, value)).filter(({ field }) => !isTold(field));
  return [...inForm, ...beyond].slice(0, MOST_PROBLEMS);
}

function wholeOf(node: SchemaNode, value: unknown): unknown {
  if (node.anyOf !== undefined) return wholeOfUnion(node, node.anyOf, value);
  if (node.type === 'object') return wholeOfObject(node, isRecord(value) ? value : {});
  if (node.type === 'array') {
    const items = Array.isArray(value) ? value.slice(0, node.maxItems) : [];
    return items.map((item) => wholeOf(node.items ?? {}, item));
  }
  return Check(node as TSchema, value) ? value : standIn(node);
}

function wholeOfObject(node: SchemaNode, value: Readonly<Record<string, unknown>>): unknown {
  const wanted = Object.entries(node.properties ?? {}).filter(
    ([key]) => Object.hasOwn(value, key) || node.required?.includes(key) === true,
  );
  return Object.fromEntries(wanted.map(([key, inner]) => [key, wholeOf(inner, value[key])]));
}

function wholeOfUnion(node: SchemaNode, branches: readonly SchemaNode[], value: unknown): unknown {
  if (Check(node as TSchema, value)) return value;
  if (!isRecord(value) || !Object.hasOwn(value, 'kind')) return null;
  const { kind } = value;
  const branch = branches.find((each) => each.properties?.['kind']?.const === kind);
  return branch === undefined ? null : wholeOf(branch, value);
}

/** In the place of what is missing or of another type: what no check takes for a good value, or at least harmless. */
function standIn({ type, enum: words, const: only }: SchemaNode): unknown {
  if (words !== undefined) return words[0];
  if (only !== undefined) return only;
  if (type === 'number' || type === 'integer') return Number.NaN;
  return type === 'boolean' ? true : '';
}
