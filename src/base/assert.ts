/**
 * Stops the program on a caller's mistake, never on bad input (bad input is a refused `Result`).
 *
 * Throws an `Error` with the message when the claim is false. The only place in `src` that throws.
 */
export function assert(claim: boolean, message: string): asserts claim {
  if (!claim) throw new Error(message);
}
