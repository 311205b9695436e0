/**
 * A list that grows at its end without being copied, so that every step of a fold can be kept.
 * Null is the empty chain.
 */
export type Chain<Item> = { readonly last: Item; readonly before: Chain<Item> } | null;

/** The chain as a list, oldest first. */
export function listOf<Item>(chain: Chain<Item>): readonly Item[] {
  const list: Item[] = [];
  for (let link = chain; link !== null; link = link.before) list.push(link.last);
  return list.reverse();
}
