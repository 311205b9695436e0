import { spokenBearing, spokenDistance, spokenDuration } from '../speech/numbers.ts';
import type { Alert, AlertKind } from '../track/guidance.ts';
import type { Advice } from './advice.ts';
import type { AnswerContext } from './answer-context.ts';
import { arcWords } from './arc-answer.ts';
import { isOtherCourse } from './course-set.ts';
import { spokenAsk } from './spoken-ask.ts';
import {
  QUESTION_WORDS,
  headingWords,
  isWindLight,
  milesWords,
  offCourseWords,
  wayWords,
  windDirectionDeg,
  windWords,
} from './phrases.ts';

/** Alerts that put the heading itself in doubt: their question comes before the turn. */
const CHANGES_THE_ACTION: ReadonlySet<AlertKind> = new Set([
  'flag-off',
  'reverse-sensing',
  'wrong-station',
  'readings-disagree',
  'needle-not-moving',
  'heading-indicator-disagrees',
]);

/** Below this share of the distance to go its uncertainty changes nothing that a pilot does. */
const SD_SHARE_THAT_MATTERS = 0.05;
const SD_NM_THAT_MATTERS = 0.3;

/**
 * What the voice says: the check that decides everything first, then the turn, how far, the wind, how
 * sure, and what is needed. Figures as words; short sentences.
 */
export function sayOf(context: AnswerContext): string {
  const { alerts } = context;
  const urgent = alerts.filter((alert) => CHANGES_THE_ACTION.has(alert.kind));
  const others = alerts.filter(
    (alert) => !CHANGES_THE_ACTION.has(alert.kind) && alert.kind !== 'ident-not-confirmed',
  );
  const isIdentOpen = alerts.some((alert) => alert.kind === 'ident-not-confirmed');
  // One question at a time: an alert's check takes the place of the question of the estimate.
  const question = urgent.length + others.length === 0 ? questionWords(context) : null;
  return [
    askWords(urgent[0], context),
    ...phaseWords(context),
    askWords(others[0], context),
    setBackWords(context),
    question,
    isIdentOpen ? 'Ident not confirmed.' : null,
  ]
    .filter((each) => typeof each === 'string' && each !== '')
    .join(' ');
}

function askWords(alert: Alert | undefined, { manner }: AnswerContext): string | null {
  return alert === undefined ? null : spokenAsk(alert.ask, manner);
}

/** The test of the needle, and the radial on an arc, can wait for the next reading, and is asked for then. */
function questionWords({ question, previous, guidance }: AnswerContext): string | null {
  if (question === null) return null;
  const isOnArc = guidance.arc?.isJoining === false && guidance.phase !== 'lost';
  const isRoutine =
    question === 'turn-obs-three-left' || (isOnArc && question === 'centre-needle-from');
  const canWait = isRoutine && previous !== undefined;
  return canWait ? null : QUESTION_WORDS[question];
}

/** After a reading with another course set (a test, or a radial looked for) the OBS goes back. */
function setBackWords({ courseSetDeg, leg, guidance }: AnswerContext): string | null {
  if (courseSetDeg === null || guidance.phase === 'lost') return null;
  // On an arc the OBS follows the radials.
  if (guidance.arc?.isJoining === false) return null;
  if (!isOtherCourse(courseSetDeg, leg.leg)) return null;
  return `Set course ${spokenBearing(leg.leg.courseDeg)} again.`;
}

function phaseWords(context: AnswerContext): readonly (string | null)[] {
  const { guidance } = context;
  const way = wayWords(guidance.whichWay);
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
        QUESTION_WORDS[guidance.nextQuestion ?? 'centre-needle-from'],
      ];
    case 'arriving':
      return arcSaid(context) ?? [way, farWords(context), endReads(context)];
    case 'intercept':
    case 'track':
    case 'outbound':
      return [...(arcSaid(context) ?? [way, farWords(context)]), ...sureWords(context)];
  }
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
function overheadWords({ flag, guidance, previous }: AnswerContext): readonly string[] {
  const way = wayWords(guidance.whichWay);
  if (flag === 'off') return ['Over the station.', way, 'Say when the flag shows FROM.'];
  return [previous?.phase === 'passage' && previous.say.startsWith(PASSAGE) ? PAST : PASSAGE, way];
}

const PASSAGE = 'Station passage.';
const PAST = 'Past the station.';

function hasKnownEnd({ leg }: AnswerContext): boolean {
  return leg.leg.direction === 'to' || leg.leg.endDmeNm !== undefined;
}

function farWords(context: AnswerContext): string | null {
  const { toGoNm, toGoS } = context.guidance.howFar;
  if (toGoNm === null) {
    return hasKnownEnd(context) && !saidBefore(context, (was) => was.howFar.toGoNm === null)
      ? 'I cannot tell the distance yet.'
      : null;
  }
  if (toGoNm < 0.05) return 'You are there.';
  const miles = `${milesWords(toGoNm, context.manner)} to go`;
  return toGoS === null ? `${capital(miles)}.` : `${capital(miles)}, ${spokenDuration(toGoS)}.`;
}

/** What the DME will show where the leg ends, when that is a place with a DME distance of its own. */
function endReads({ leg, manner }: AnswerContext): string | null {
  const end = leg.leg.endDmeNm ?? 0;
  if (!leg.leg.station.hasDme || end <= 0) return null;
  return `D M E will read ${spokenDistance(end, manner)}.`;
}

/** The wind and how far the numbers can be trusted. */
function sureWords(context: AnswerContext): readonly (string | null)[] {
  return [distanceSure(context), windSure(context)];
}

function distanceSure(context: AnswerContext): string | null {
  const { toGoNm, sdNm } = context.guidance.howFar;
  if (!matters(toGoNm, sdNm)) return null;
  if (saidBefore(context, (was) => matters(was.howFar.toGoNm, was.howFar.sdNm))) return null;
  return `Distance give or take ${offCourseWords(sdNm ?? 0, context.manner)}.`;
}

function matters(toGoNm: number | null, sdNm: number | null): boolean {
  if (toGoNm === null || sdNm === null) return false;
  return sdNm > Math.max(SD_NM_THAT_MATTERS, SD_SHARE_THAT_MATTERS * toGoNm);
}

function windSure(context: AnswerContext): string | null {
  const wind = context.guidance.seen.wind;
  if (wind === null) {
    return saidBefore(context, (was) => was.estimate.wind === null)
      ? null
      : 'I cannot tell the wind yet.';
  }
  const isSame = saidBefore(context, ({ estimate }) => {
    if (estimate.wind === null) return false;
    if (isWindLight(estimate.wind) || isWindLight(wind)) {
      return isWindLight(estimate.wind) && isWindLight(wind);
    }
    return (
      windDirectionDeg(estimate.wind.fromDegMag) === windDirectionDeg(wind.fromDegMag) &&
      Math.abs(estimate.wind.speedKt - wind.speedKt) < 3
    );
  });
  return isSame ? null : windWords(wind);
}

/** Whether the answer before, if there is one, already said this; other phases say neither wind nor doubt. */
function saidBefore({ previous }: AnswerContext, said: (was: Advice) => boolean): boolean {
  if (previous === undefined) return false;
  const spoke = ['intercept', 'track', 'outbound'].includes(previous.phase);
  return spoke && said(previous);
}

function capital(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}
