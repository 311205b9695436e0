import type { LibraryStation } from '../../src/station/library/library-station.ts';
import type { Merge } from '../../src/station/library/merge-stations.ts';

/** What the worker is given. */
export interface ToImport {
  readonly file: File;
  readonly library: ReadonlyMap<string, LibraryStation>;
  /** Decimal, for declinations that are missing. */
  readonly year: number;
}

/** What it tells: how far it has come, what the import does, or why there is none. */
export type FromImport =
  | { readonly kind: 'progress'; readonly rows: number; readonly fraction: number }
  | { readonly kind: 'done'; readonly merge: Merge }
  | { readonly kind: 'refused'; readonly problem: string };
