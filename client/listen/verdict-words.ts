import type { Confirmation, IdentHeard, Why } from '../../src/ident/heard.ts';
import { phonetic } from '../../src/speech/phonetic.ts';

/** What is to be done about what was heard. */
export type VerdictKind = 'confirmed' | 'different' | 'do-not-use' | 'cannot-tell';

/** What was heard, in a pilot's words. */
export interface VerdictWords {
  readonly kind: VerdictKind;
  readonly headline: string;
  readonly advice: string;
  /** The ident that another station sends: whose is it? */
  readonly askWhose: string | null;
}

const DO_NOT_USE =
  'Do not use this station. Check the frequency, listen again; another station may share it.';

/** Annex 10 volume I, 3.3.6.5: at least once every 30 seconds. */
const WAIT = 'Keep listening: an ident comes at least once every 30 seconds.';

/** *Source:* AIM 1-1-4 b: a VOT is identified by a series of dots or by a continuous tone. */
const TEST_SIGNAL =
  'A test signal (VOT) sounds so: it checks a receiver on the ground. It is no station to fly on.';

interface Reason {
  readonly headline: string;
  readonly advice: string;
  readonly isUnusable?: boolean;
}

/** So long has to be listened before an ident is missing: the longest interval, 30 s, and the ident itself. */
const MISSING_AFTER_S = 35;

const REASONS: Readonly<Record<Why, Reason>> = {
  silent: {
    headline: 'No sound yet.',
    advice: 'Turn the receiver’s ident up; hold the microphone to the headset or the speaker.',
  },
  'too-short': { headline: 'Too short for an ident so far.', advice: WAIT },
  'too-weak': {
    headline: 'Too weak to read.',
    advice: 'Turn the ident up, or bring the microphone closer. Each repeat makes it surer.',
  },
  'no-complete-ident': { headline: 'No complete ident yet.', advice: WAIT },
  'two-at-once': {
    headline: 'Two idents at once.',
    advice:
      'Two stations on one frequency. Do not use it while both are heard: check the frequency and where you are.',
  },
  'voice-over-it': {
    headline: 'A voice lies over the ident.',
    advice: 'Wait until it has ended; turn the radio down beside the microphone.',
  },
  'test-code': {
    headline: 'TEST: the station is being worked on.',
    advice:
      'It may point anywhere. Do not use it, whatever the needle shows. Look into the NOTAMs.',
    isUnusable: true,
  },
  'ident-missing': {
    headline: 'There is no ident.',
    advice:
      'A station without its ident is off the air, being worked on, or not the one you tuned. Do not use it. Is the ident turned up?',
    isUnusable: true,
  },
  'dme-only': {
    headline: 'Only the DME sends its ident.',
    advice:
      'The VOR is not identified: do not use its needle. It sends on a lower tone, three times for each one of the DME.',
  },
  'uneven-keying': {
    headline: 'No clear dots and dashes.',
    advice: 'Wait for the next repeat. Compare what you hear with the chart yourself.',
  },
  'steady-tone': {
    headline: 'A steady tone, no ident.',
    advice: `${TEST_SIGNAL} It may also be a whistle in the sound.`,
  },
  'even-pulses': {
    headline: 'Even dots, no letters.',
    advice: TEST_SIGNAL,
    isUnusable: true,
  },
  'too-few-elements': {
    headline: 'Too short an ident to be sure.',
    advice:
      'So few dots and dashes could be stray beeps. Wait until it is heard four times; if that does not do, identify it by ear.',
  },
  'has-figures': {
    headline: 'An ident with figures.',
    advice: 'Only letters are read here. Compare what you hear with its dots and dashes yourself.',
  },
  'off-tone': {
    headline: 'Not the tone of a VOR or a DME.',
    advice:
      'An ident is keyed near 1020 Hz, that of a DME near 1350 Hz. Play the recording at its own speed.',
  },
  'not-sure-yet': {
    headline: 'Not sure yet: another ident fits nearly as well.',
    advice: 'Wait for the next repeat.',
  },
};

const times = (count: number): string => {
  if (count === 1) return 'once';
  return count === 2 ? 'twice' : `${count} times`;
};

/** The verdict about an expected ident, after so many seconds of sound. */
export function verdictWords(
  confirmation: Confirmation,
  expected: string,
  listenedS: number,
): VerdictWords {
  const { verdict, heard, detail } = confirmation;
  if (verdict === 'confirmed') {
    return {
      kind: 'confirmed',
      headline: `It sends ${expected}.`,
      advice: `${phonetic(expected)}, heard ${times(Math.max(1, detail.repeats))}. Have you heard it too? You decide.`,
      askWhose: null,
    };
  }
  if (verdict === 'different' && heard !== null) {
    const isTest = confirmation.why === 'test-code' || heard === 'TEST';
    if (isTest) return reasonWords('test-code', listenedS);
    return {
      kind: 'different',
      headline: `Not ${expected}: it sends ${heard}.`,
      advice: `${phonetic(heard)}. ${DO_NOT_USE}`,
      askWhose: heard,
    };
  }
  return reasonWords(confirmation.why ?? 'not-sure-yet', listenedS);
}

/** What was heard where no ident was expected, after so many seconds of sound. */
export function heardWords({ letters, why, repeats }: IdentHeard, listenedS: number): VerdictWords {
  if (why === 'test-code' || letters === null) return reasonWords(why ?? 'not-sure-yet', listenedS);
  if (why === 'dme-only') {
    const words = reasonWords(why, listenedS);
    return { ...words, headline: `${letters}. ${words.headline}` };
  }
  return {
    kind: 'cannot-tell',
    headline: `It sends ${letters}.`,
    advice: `${phonetic(letters)}, heard ${times(Math.max(1, repeats))}. Compare it with the chart: is it the one you tuned?`,
    askWhose: letters,
  };
}

function reasonWords(why: Why, listenedS: number): VerdictWords {
  const isEarly = why === 'ident-missing' && listenedS < MISSING_AFTER_S;
  const { headline, advice, isUnusable = false } = REASONS[isEarly ? 'no-complete-ident' : why];
  return { kind: isUnusable ? 'do-not-use' : 'cannot-tell', headline, advice, askWhose: null };
}
