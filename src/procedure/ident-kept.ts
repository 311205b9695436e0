/** What is known of the ident of the leg's station, and how often it is to be heard again. */
export interface IdentKept {
  /** When it was confirmed last; null: not yet, or in doubt again: every answer says so anyway. */
  readonly confirmedAtMs: number | null;
  /** Minutes after which it is asked for again; null: never. */
  readonly againMin: number | null;
  /** Since when the answers say that this may be another station, or the DME another's; null: they do not. */
  readonly doubtedSinceMs: number | null;
}
