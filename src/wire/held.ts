import type { Static, TSchema } from 'typebox';

/**
 * The bare shape of a type: every `readonly` taken off, and every optional field turned into a required
 * one that says so, because `{ a }` and `{ a, b? }` are assignable to one another and yet not the same.
 */
type Shape<Value> = Value extends readonly (infer Item)[]
  ? Shape<Item>[]
  : Value extends object
    ? {
        -readonly [Key in keyof Value]-?: object extends Pick<Value, Key>
          ? { readonly optional: Shape<Exclude<Value[Key], undefined>> }
          : Shape<Value[Key]>;
      }
    : Value;

/** `true` only when each shape is assignable to the other. */
type Same<One, Other> = [One] extends [Other] ? ([Other] extends [One] ? true : false) : false;

/**
 * Marks a schema as describing a type that a room has written by hand: `heldTo<Leg>()(schema)`.
 *
 * Gives the schema back unchanged. Where the two drift apart (a field more, a field less, optional in
 * one only) the call does not compile, so the types, the checks and the OpenAPI text stay one truth.
 */
export function heldTo<Room>(): <Schema extends TSchema>(
  schema: Schema & (Same<Shape<Static<Schema>>, Shape<Room>> extends true ? unknown : never),
) => Schema {
  return (schema) => schema;
}
