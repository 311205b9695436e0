/** Longer recordings are heard this far, seconds: four of the longest intervals between idents. */
export const LONGEST_S = 120;

/** Two minutes of sound as good as anybody records it are smaller; it is all read into memory. */
const MOST_BYTES = 64_000_000;

const megabytes = (bytes: number): string => (bytes / 1_000_000).toFixed(0);

/** Why a file is not even opened; null: it may be. */
export function refusedUnread(file: { readonly size: number }): string | null {
  if (file.size === 0) return 'This file is empty. Choose another recording.';
  return file.size > MOST_BYTES
    ? `This file has ${megabytes(file.size)} MB; the most is ${megabytes(MOST_BYTES)}. Cut out a minute or two with the ident in it and choose that.`
    : null;
}
