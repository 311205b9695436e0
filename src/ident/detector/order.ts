/**
 * The value below which a share of the values lies (0: the least, 1: the greatest); 0 of none.
 *
 * The values are left as they are.
 */
export function quantile(values: Float64Array, share: number): number {
  if (values.length === 0) return 0;
  const sorted = values.slice().sort();
  const at = Math.round(share * (sorted.length - 1));
  return sorted[Math.min(sorted.length - 1, Math.max(0, at))] ?? 0;
}
