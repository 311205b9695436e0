import type { Why } from './heard.ts';

/**
 * Why an ident was not read or not confirmed, as told to the pilot: a sentence or two, the reason first.
 *
 * *Source:* TEST and a missing ident mean that the station is not to be used: AIM 1-1-3 c.
 */
export const WHY_WORDS: Readonly<Record<Why, string>> = {
  silent: 'There is no sound at all.',
  'too-short': 'This is too short for a whole ident. Listen for half a minute.',
  'too-weak': 'A tone is keyed, too weak to tell its letters. Turn the volume up or listen longer.',
  'no-complete-ident': 'No ident was heard from its first letter to its last. Listen longer.',
  'two-at-once': 'More than one ident was heard.',
  'voice-over-it': 'Speech covers the ident. Listen until it is heard alone.',
  'test-code': 'TEST is sent: the station is being worked on. Do not use it.',
  'ident-missing': 'No ident was heard. Do not use a station that sends none.',
  'dme-only': 'Only the ident of the DME was heard: the VOR is not identified. Listen for it.',
  'not-sure-yet': 'Another ident fits nearly as well. Listen to one more.',
  'uneven-keying': 'The marks are no clear dots and dashes. Listen to one more.',
  'steady-tone': 'A steady tone and no ident: a test signal sounds so. It is no station to fly on.',
  'even-pulses': 'Even dots and no letters: a test signal sounds so. It is no station to fly on.',
  'too-few-elements':
    'So few dots and dashes could be stray beeps. Listen to it four times; if that does not do, identify it by ear.',
  'has-figures': 'Only letters are read here, not figures. Identify this station by ear.',
  'off-tone': 'Something is keyed, not on the tone of a VOR (1020 Hz) or a DME (1350 Hz).',
};
