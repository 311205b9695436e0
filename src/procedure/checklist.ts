/** The items of a leg's checklist, in the order in which they are read aloud. */
export const CHECK_ITEMS = ['tune', 'identify', 'flags', 'set-course', 'turn', 'look-out'] as const;

/** One item of a leg's checklist. */
export type CheckItem = (typeof CHECK_ITEMS)[number];
