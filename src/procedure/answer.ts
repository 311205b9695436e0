import { spokenBearing, spokenDistance, spokenDuration, spokenSpeed } from '../speech/numbers.ts';
import type { Alert, AlertKind } from '../track/guidance.ts';
import type { AnswerContext } from './answer-context.ts';
import { arcWords } from './arc-answer.ts';
import { isOtherCourse } from './course-set.ts';
import { findingWords, offerWords } from './range-words.ts';
import { spokenAsk } from './spoken-ask.ts';
import { QUESTION_WORDS, headingWords, milesWords, wayWords } from './phrases.ts';
import { saidBefore } from './said-before.ts';
import { sureWords } from './sure-words.ts';

/** Alerts that put the heading or the numbers in doubt: their check comes before the turn. */
const CHANGES_THE_ACTION: ReadonlySet<AlertKind> = new Set([
  'flag-off',
  'reverse-sensing',
  'wrong-station',
  'readings-disagree',
  'needle-not-moving',
  'dme-not-moving',
  'dme-disagrees',
  'heading-indicator-disagrees',
]);

/**
 * What the voice says: the check that decides everything first, then the turn, how far, the wind, how
 * sure, and what is needed. Figures as words; short sentences.
 */
export function sayOf(context: AnswerContext): string {
  const { alerts } = context;
  const isIdentOpen = alerts.some((alert) => alert.kind === 'ident-not-confirmed');
  return [
    unseenWords(context),
    ...(isOffUnexplained(context) ? offWords(context) : checkedWords(context)),
    isIdentOpen ? 'Ident not confirmed.' : null,
  ]
    .filter((each) => typeof each === 'string' && each !== '')
    .join(' ');
}

/** What was told before rested on a place that nobody has seen for too long. */
function unseenWords({ unseenS }: AnswerContext): string | null {
  if (unseenS === undefined) return null;
  return `No reading for ${spokenDuration(unseenS)}: I start again from this one.`;
}

function checkedWords(context: AnswerContext): readonly (string | null)[] {
  const { alerts } = context;
  const urgent = alerts.find((alert) => isUrgent(alert, context));
  const others = alerts.filter(
    (alert) => !CHANGES_THE_ACTION.has(alert.kind) && alert.kind !== 'ident-not-confirmed',
  );
  const unsaid = others.find((alert) => !wasTold(alert, context));
  // One question at a time: an alert's check takes the place of the question of the estimate.
  const isChecking = urgent !== undefined || others.length > 0;
  return [
    askWords(urgent, context),
    ...phaseWords(context),
    askWords(unsaid, context),
    setBackWords(context),
    isChecking ? null : (offerWords(context) ?? questionWords(context)),
  ];
}

/** Lost has a question of its own, so the panel is not asked for beside it. */
function isUrgent({ kind }: Alert, { guidance }: AnswerContext): boolean {
  if (guidance.phase === 'lost' && kind === 'readings-disagree') return false;
  return CHANGES_THE_ACTION.has(kind);
}

/** What changes nothing at once is said once. */
function wasTold({ kind }: Alert, { previous }: AnswerContext): boolean {
  return previous?.alerts.some((alert) => alert.kind === kind) ?? false;
}

function askWords(alert: Alert | undefined, { manner }: AnswerContext): string | null {
  return alert === undefined ? null : spokenAsk(alert.ask, manner);
}

function wayOf({ guidance, isHeadingRead }: AnswerContext): string {
  return wayWords(guidance.whichWay, isHeadingRead);
}

/** The flag is OFF on a leg to the station, and how far that is nobody knows. */
function isOffUnexplained({ flag, leg, guidance, alerts }: AnswerContext): boolean {
  if (flag !== 'off' || leg.leg.direction !== 'to' || guidance.phase === 'lost') return false;
  return guidance.howFar.toGoNm === null && alerts.some(({ kind }) => kind === 'flag-off');
}

function offWords(context: AnswerContext): readonly string[] {
  return ['Flag OFF: over the station, or the signal is lost.', wayOf(context), 'Check the ident.'];
}

/** The test of the needle, and the radial on an arc, can wait for the next reading, and is asked for then. */
function questionWords({ question, previous, guidance, finding }: AnswerContext): string | null {
  // While the range is being found the radial has been asked for already.
  if (question === null || finding?.kind === 'flying') return null;
  const isOnArc = guidance.arc?.isJoining === false && guidance.phase !== 'lost';
  const isRoutine =
    question === 'turn-obs-three-left' || (isOnArc && question === 'centre-needle-from');
  const canWait = isRoutine && previous !== undefined;
  return canWait ? null : QUESTION_WORDS[question];
}

/** After a reading with another course set (a test, or a radial looked for) the OBS goes back. */
function setBackWords({ courseSetDeg, leg, guidance, finding }: AnswerContext): string | null {
  if (courseSetDeg === null || guidance.phase === 'lost') return null;
  // On an arc, and with the station abeam, the OBS follows the radials.
  if (guidance.arc?.isJoining === false || finding?.kind === 'flying') return null;
  if (!isOtherCourse(courseSetDeg, leg.leg)) return null;
  return `Set course ${spokenBearing(leg.leg.courseDeg)} again.`;
}

function phaseWords(context: AnswerContext): readonly (string | null)[] {
  const { guidance } = context;
  const way = wayOf(context);
  if (isUnread(context)) return [way, 'No reading yet.'];
  switch (guidance.phase) {
    case 'near-station':
      return [stationWords(context), way, 'Ignore the needle.'];
    case 'passage':
      return overheadWords(context);
    case 'lost':
      return [
        'I have lost the picture.',
        `Hold ${headingWords(guidance.whichWay.headingDeg)}.`,
        lostQuestion(context),
      ];
    case 'arriving':
      return arcSaid(context) ?? [way, farWords(context), endReads(context)];
    case 'intercept':
    case 'track':
    case 'outbound':
      return legWords(context);
  }
}

function legWords(context: AnswerContext): readonly (string | null)[] {
  // With the station behind there is no way on to be told, only that.
  if (context.guidance.reverseSensing === 'station-behind') return [farWords(context)];
  const found = findingWords(context);
  if (found !== null) return [wayOf(context), found];
  return [...(arcSaid(context) ?? [wayOf(context), farWords(context)]), ...sureWords(context)];
}

/** Without a signal there is no needle to centre; an alert about the flag has asked for the same already. */
function lostQuestion({ flag, guidance, alerts }: AnswerContext): string | null {
  if (flag !== 'off') return QUESTION_WORDS[guidance.nextQuestion ?? 'centre-needle-from'];
  const isAsked = alerts.some(({ kind }) => kind === 'flag-off');
  return isAsked ? null : 'Check frequency, ident and altitude.';
}

/** Way and distance where the leg is an arc and the place is known; else null. */
function arcSaid(context: AnswerContext): readonly string[] | null {
  const { leg, guidance } = context;
  return leg.leg.arc && guidance.arc ? arcWords(context, leg.leg.arc, guidance.arc) : null;
}

/** Nothing has been read and nothing was carried over: there is only the heading along the course. */
function isUnread({ readingCount, guidance }: AnswerContext): boolean {
  return readingCount === 0 && guidance.seen.crossTrackNm === null;
}

/** A time to go that has passed by the time it is spoken, s. */
const LEAST_TIME_S = 5;

/** Only on a leg that ends over its station is the time to go the time to the station. */
function stationWords({ leg, guidance }: AnswerContext): string {
  const { toGoS } = guidance.howFar;
  const isAhead = leg.leg.direction === 'to' && leg.endGroundNm === 0;
  if (!isAhead || toGoS === null) return 'Close to the station.';
  if (toGoS < LEAST_TIME_S) return 'Station now.';
  return `Station in ${spokenDuration(toGoS)}.`;
}

/** OFF in the cone is not yet the passage: that is the first FROM. */
function overheadWords(context: AnswerContext): readonly string[] {
  const { flag, previous } = context;
  const way = wayOf(context);
  if (flag === 'off') return ['Over the station.', way, 'Say when the flag shows FROM.'];
  const wasPassed = previous?.phase === 'passage' && /^(Station passage|Past)/.test(previous.say);
  return [wasPassed ? pastWords(context) : 'Station passage.', way];
}

function pastWords({ guidance, manner }: AnswerContext): string {
  const pastNm = guidance.howFar.pastEndNm ?? 0;
  return pastNm > PAST_NM
    ? `Past the station by ${milesWords(pastNm, manner)}.`
    : 'Past the station.';
}

function hasKnownEnd({ leg }: AnswerContext): boolean {
  return leg.leg.direction === 'to' || leg.leg.endDmeNm !== undefined;
}

/** Past the end by more than this it is not "there" any more, NM. */
const PAST_NM = 0.3;

function farWords(context: AnswerContext): string | null {
  const { manner, aircraft, guidance } = context;
  const { toGoNm, toGoS, pastEndNm } = guidance.howFar;
  if (guidance.isWindTooStrong === true) {
    const speed = spokenSpeed(aircraft.trueAirspeedKt);
    return `The wind is too strong to hold this course at ${speed}.`;
  }
  if (toGoNm === null) {
    return hasKnownEnd(context) && !saidBefore(context, (was) => was.howFar.toGoNm === null)
      ? 'I cannot tell the distance yet.'
      : null;
  }
  if (guidance.reverseSensing === 'station-behind') {
    return `The station is ${milesWords(pastEndNm ?? 0, manner)} behind.`;
  }
  if ((pastEndNm ?? 0) > PAST_NM) return `You passed it ${milesWords(pastEndNm ?? 0, manner)} ago.`;
  if (toGoNm < 0.05) return 'You are there.';
  const miles = `${milesWords(toGoNm, manner)} to go`;
  return toGoS === null ? `${capital(miles)}.` : `${capital(miles)}, ${spokenDuration(toGoS)}.`;
}

const END_READS = 'D M E will read';

/** Nearer than this the DME at the end is the one that is shown, NM. */
const DME_WORTH_SAYING_NM = 0.2;

/** What the DME will show where the leg ends, when that is a place with a DME distance of its own. */
function endReads({ leg, guidance, manner, previous }: AnswerContext): string | null {
  if (previous?.say.includes(END_READS) === true) return null;
  const end = leg.leg.endDmeNm ?? 0;
  if (!leg.leg.station.hasDme || end <= 0) return null;
  if ((guidance.howFar.toGoNm ?? Infinity) <= DME_WORTH_SAYING_NM) return null;
  return `${END_READS} ${spokenDistance(end, manner)}.`;
}

function capital(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}
