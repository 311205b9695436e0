/** 26 characters of Crockford's base 32, of which the first carries three bits of the 48-bit time. */
const ULID = /^[0-7][0-9A-HJKMNP-TV-Z]{25}$/;

/**
 * Whether a text is a ULID in its canonical form (upper case, no I, L, O, U).
 *
 * *Source:* ULID specification, github.com/ulid/spec, "Canonical String Representation".
 */
export function isUlid(text: string): boolean {
  return ULID.test(text);
}
