import type { DatedLeg } from '../leg/leg-frame.ts';
import { spokenDistance, spokenDuration } from '../speech/numbers.ts';
import type { Manner } from '../speech/numbers.ts';
import type { Alert, AlertKind, Guidance, HowFar } from '../track/guidance.ts';
import type { Advice } from './advice.ts';
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

/** What the words of an answer are made from. */
export interface AnswerContext {
  readonly leg: DatedLeg;
  readonly guidance: Guidance;
  readonly alerts: readonly Alert[];
  /** How many readings the answer rests on. */
  readonly readingCount: number;
  readonly manner: Manner;
  /** The answer before, where the pilot has heard it: what has not changed is not said again. */
  readonly previous?: Advice;
}

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
  const { guidance, alerts } = context;
  const urgent = alerts.filter((alert) => CHANGES_THE_ACTION.has(alert.kind));
  const others = alerts.filter(
    (alert) => !CHANGES_THE_ACTION.has(alert.kind) && alert.kind !== 'ident-not-confirmed',
  );
  const isIdentOpen = alerts.some((alert) => alert.kind === 'ident-not-confirmed');
  // One question at a time: an alert's check takes the place of the question of the estimate.
  const question = urgent.length + others.length === 0 ? questionOf(guidance) : null;
  return [
    urgent[0]?.ask,
    ...phaseWords(context),
    others[0]?.ask,
    question,
    isIdentOpen ? 'Ident not confirmed.' : null,
  ]
    .filter((each) => typeof each === 'string' && each !== '')
    .join(' ');
}

function questionOf(guidance: Guidance): string | null {
  if (guidance.phase === 'lost' || guidance.nextQuestion === null) return null;
  return QUESTION_WORDS[guidance.nextQuestion];
}

function phaseWords(context: AnswerContext): readonly (string | null)[] {
  const { guidance, readingCount } = context;
  const way = wayWords(guidance.whichWay);
  switch (guidance.phase) {
    case 'near-station':
      return [stationIn(guidance.howFar), way, 'Ignore the needle.'];
    case 'passage':
      return ['Station passage.', way];
    case 'lost':
      return [
        readingCount === 0 ? 'No picture yet.' : 'I have lost the picture.',
        `Hold ${headingWords(guidance.whichWay.headingDeg)}.`,
        QUESTION_WORDS[guidance.nextQuestion ?? 'centre-needle-from'],
      ];
    case 'arriving':
      return [way, farWords(context), endReads(context)];
    case 'intercept':
    case 'track':
    case 'outbound':
      return [way, farWords(context), ...sureWords(context)];
  }
}

function stationIn(howFar: HowFar): string {
  if (howFar.toGoS === null) return 'Near the station.';
  return `Station in ${spokenDuration(howFar.toGoS)}.`;
}

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
