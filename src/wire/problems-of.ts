import type { TSchema } from 'typebox';
import { Check } from 'typebox/value';
import type { FieldProblem } from '../base/result.ts';

/** More problems than this help nobody; the rest are left out. */
const MOST_PROBLEMS = 50;

/** The part of a JSON schema that the schemas of this room use. */
/** What of a schema is looked at. */
export interface SchemaNode {
  readonly type?: string;
  readonly description?: string;
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly required?: readonly string[];
  readonly items?: SchemaNode;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly anyOf?: readonly SchemaNode[];
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
}

/**
 * What is wrong with a value that came over the wire, field by field, in words that a pilot understands.
 *
 * `schema`: one of this room's schemas; its descriptions say what is expected. `field`: name put before
 * every field (left out: the fields stand for themselves). Empty when the value fits. A field that no
 * schema knows is refused by its name. At most 50 problems are told.
 */
export function problemsOf(schema: TSchema, value: unknown, field = ''): readonly FieldProblem[] {
  const problems: FieldProblem[] = [];
  visit(schema, value, field, problems);
  return problems.slice(0, MOST_PROBLEMS);
}

function visit(node: SchemaNode, value: unknown, field: string, problems: FieldProblem[]): void {
  if (problems.length >= MOST_PROBLEMS) return;
  if (node.anyOf !== undefined) visitUnion(node, node.anyOf, value, field, problems);
  else if (node.type === 'object') visitObject(node, value, field, problems);
  else if (node.type === 'array') visitArray(node, value, field, problems);
  else if (!Check(node as TSchema, value)) problems.push(problem(node, value, field));
}

function visitObject(
  node: SchemaNode,
  value: unknown,
  field: string,
  problems: FieldProblem[],
): void {
  if (!isRecord(value)) {
    problems.push(problem(node, value, field));
    return;
  }
  const known = node.properties ?? {};
  for (const key of Object.keys(value)) {
    if (Object.hasOwn(known, key)) continue;
    problems.push({
      field: join(field, shortened(key)),
      expected: 'no such field',
      got: written(value[key]),
    });
    if (problems.length >= MOST_PROBLEMS) return;
  }
  for (const [key, inner] of Object.entries(known)) {
    if (Object.hasOwn(value, key)) visit(inner, value[key], join(field, key), problems);
    else if (node.required?.includes(key) === true)
      problems.push(problem(inner, undefined, join(field, key)));
  }
}

function visitArray(
  node: SchemaNode,
  value: unknown,
  field: string,
  problems: FieldProblem[],
): void {
  const { items, minItems = 0, maxItems = Infinity } = node;
  if (!Array.isArray(value) || value.length < minItems || value.length > maxItems) {
    problems.push(problem(node, value, field));
    return;
  }
  if (items === undefined) return;
  for (const [index, item] of value.entries()) visit(items, item, join(field, index), problems);
}

/** A union is told apart by its `kind`; one without (something or null) is taken as a whole. */
function visitUnion(
  node: SchemaNode,
  branches: readonly SchemaNode[],
  value: unknown,
  field: string,
  problems: FieldProblem[],
): void {
  if (Check(node as TSchema, value)) return;
  const kinds = branches.map((each) => each.properties?.['kind']?.const);
  if (!isRecord(value) || kinds.includes(undefined)) {
    problems.push(problem(node, value, field));
    return;
  }
  const { kind } = value;
  const branch = branches[kinds.indexOf(kind)];
  if (branch !== undefined) {
    visit(branch, value, field, problems);
    return;
  }
  const expected = `one of ${kinds.map(String).join(', ')}`;
  problems.push({ field: join(field, 'kind'), expected, got: written(kind) });
}

function problem(node: SchemaNode, value: unknown, field: string): FieldProblem {
  return {
    field: field === '' ? 'body' : field,
    expected: node.description ?? `a value of type ${node.type ?? 'known to the schema'}`,
    got: written(value),
  };
}

/** Whether a value is an object with fields, no list. */
export function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function join(field: string, key: string | number): string {
  return field === '' ? `${key}` : `${field}.${key}`;
}

/** Repeats what was given, short; a list or a record only by its size (it may be very deep). */
function written(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'string') return `"${shortened(value)}"`;
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  return value === null ? 'null' : 'an object';
}

function shortened(text: string): string {
  return text.length > 60 ? `${text.slice(0, 60)}...` : text;
}
