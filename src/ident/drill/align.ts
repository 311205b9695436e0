/** Two rows laid side by side; null stands where one row has nothing to put beside the other. */
export interface Aligned<Each> {
  readonly one: Each | null;
  readonly other: Each | null;
}

/** What it costs to make one row out of the other. */
export interface Costs<Each> {
  /** For one element put in the place of another. */
  readonly swap: number;
  /** For the element of a row that has no partner in the other row. */
  readonly alone: (row: readonly Each[], index: number) => number;
}

/** Each difference costs the same. */
export const EVEN_COSTS: Costs<unknown> = { swap: 1, alone: () => 1 };

interface Step {
  readonly cost: number;
  readonly took: 'both' | 'one' | 'other' | null;
}

/**
 * The cheapest way to lay two rows side by side, with what it costs; equal elements cost nothing.
 *
 * Between ways of the same cost the one with more partners is taken.
 * *Source:* edit distance by dynamic programming (Wagner and Fischer, Journal of the ACM 21, 1974).
 */
export function align<Each>(
  one: readonly Each[],
  other: readonly Each[],
  costs: Costs<Each>,
): { readonly cost: number; readonly pairs: readonly Aligned<Each>[] } {
  const table: Step[][] = [];
  for (let i = 0; i <= one.length; i += 1) {
    const row: Step[] = [];
    table.push(row);
    for (let j = 0; j <= other.length; j += 1) row.push(cheapest(table, one, other, i, j, costs));
  }
  return { cost: at(table, one.length, other.length).cost, pairs: wayBack(table, one, other) };
}

function cheapest<Each>(
  table: readonly (readonly Step[])[],
  one: readonly Each[],
  other: readonly Each[],
  i: number,
  j: number,
  costs: Costs<Each>,
): Step {
  if (i === 0 && j === 0) return { cost: 0, took: null };
  const steps: Step[] = [];
  if (i > 0 && j > 0) {
    const swap = one[i - 1] === other[j - 1] ? 0 : costs.swap;
    steps.push({ cost: at(table, i - 1, j - 1).cost + swap, took: 'both' });
  }
  if (i > 0) steps.push({ cost: at(table, i - 1, j).cost + costs.alone(one, i - 1), took: 'one' });
  if (j > 0)
    steps.push({ cost: at(table, i, j - 1).cost + costs.alone(other, j - 1), took: 'other' });
  return steps.reduce((best, step) => (step.cost < best.cost - 1e-9 ? step : best));
}

function at(table: readonly (readonly Step[])[], i: number, j: number): Step {
  return table[i]?.[j] ?? { cost: Number.POSITIVE_INFINITY, took: null };
}

function wayBack<Each>(
  table: readonly (readonly Step[])[],
  one: readonly Each[],
  other: readonly Each[],
): readonly Aligned<Each>[] {
  const pairs: Aligned<Each>[] = [];
  let i = one.length;
  let j = other.length;
  while (i > 0 || j > 0) {
    const { took } = at(table, i, j);
    if (took !== 'other') i -= 1;
    if (took !== 'one') j -= 1;
    pairs.push({
      one: took === 'other' ? null : (one[i] ?? null),
      other: took === 'one' ? null : (other[j] ?? null),
    });
  }
  return pairs.reverse();
}
