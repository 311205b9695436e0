import { LONGEST_S } from './file-limits.ts';
import type { Lost } from './mic-path.ts';

/** What is said when the sound stops coming. */
export const LOST_WORDS: Readonly<Record<Lost | 'taken', string>> = {
  unplugged:
    'The microphone is gone: unplugged, or taken away by the device. Plug it in, then press Listen again.',
  asleep:
    'The device has put the sound to sleep (the page in the background, a call, the screen off). Keep the page in front, then press Listen again.',
  taken: 'Another window of this page has begun to listen, so this one has stopped.',
};

/** Nothing but zeros. */
export const FLAT_WORDS =
  'The microphone gives no sound at all, not even noise: it is switched off or muted. Check its switch and the settings of the device.';

/** The worker died. */
export const BROKEN_WORDS =
  'The listener has stopped working. Press Listen again; if it stays so, load the page again.';

/** What has to be known of a recording that was read; null: nothing. */
export function recordingNote(lengthS: number, isCutShort: boolean): string | null {
  const notes = [
    ...(isCutShort ? ['The recording is cut short: the file ends before its sound does.'] : []),
    ...(lengthS > LONGEST_S
      ? [`Only the first ${LONGEST_S / 60} minutes of it are listened to.`]
      : []),
  ];
  return notes.length === 0 ? null : notes.join(' ');
}
