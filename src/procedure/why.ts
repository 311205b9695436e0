import { sinDeg, turnDeg } from '../base/angle.ts';
import {
  digits,
  spokenAngle,
  spokenBearing,
  spokenDuration,
  spokenMiles,
} from '../speech/numbers.ts';
import type { Manner } from '../speech/numbers.ts';
import type { Aircraft } from '../leg/leg.ts';
import type { Alert, AlertKind, ReverseCause, WhichWay } from '../track/guidance.ts';
import type { Reading } from '../track/reading.ts';
import type { WhyContext } from './answer-context.ts';
import { arcReasons } from './arc-why.ts';
import { isOtherCourse } from './course-set.ts';
import {
  compassPoint,
  dotsWords,
  hasSecondHeading,
  headingWords,
  isWindLight,
  milesWords,
  offCourseWords,
} from './phrases.ts';
import { findingReason } from './range-words.ts';

const CENTRED_SHOWS = 'Centred with FROM, the O B S shows the radial you are on.';

/** What each alert has noticed, in one clause. */
const NOTICED: Readonly<Record<AlertKind, string>> = {
  'needle-not-moving': 'The needle has not moved as it should have by now.',
  'wrong-station': 'The readings do not fit this station.',
  'dme-not-moving': 'The D M E has not moved as it should have by now.',
  'dme-disagrees': 'The D M E and the needle tell two different places.',
  'heading-indicator-disagrees':
    'The track does not fit the headings: the direction indicator may have drifted.',
  'reverse-sensing': 'The flag and the needle do not fit together.',
  'flag-off': 'With the flag off the needle carries no information.',
  'ident-not-confirmed': 'Nobody has heard the ident yet, so this may be another station.',
  'outside-reception': 'The station is farther than its signal can be relied on.',
  'readings-disagree': 'The last reading does not fit those before it.',
};

/** What is wrong when needle and flag are read the wrong way round. */
const REVERSED: Readonly<Record<ReverseCause, string>> = {
  'obs-reciprocal':
    'The O B S is set to the other end of the course, so the needle works backwards.',
  'flag-against-place': 'The flag does not fit where you should be.',
  'from-before-station': 'The flag shows FROM, though nothing shows the station to be behind you.',
  'station-behind':
    'The flag shows FROM and the distance grows from reading to reading, so the station is behind you.',
  'to-before-station': 'The flag shows TO, so the station is still ahead.',
  'needle-backwards': 'The needle moves the wrong way for the headings flown.',
};

function noticedWords({ kind }: Alert, { guidance }: WhyContext): string {
  const cause = kind === 'reverse-sensing' ? guidance.reverseSensing : undefined;
  return cause === undefined ? NOTICED[kind] : REVERSED[cause];
}

/** One to three sentences that a pilot would say when asked why. Figures as words. */
export function whyOf(context: WhyContext): string {
  const { alerts } = context;
  const noticed = alerts.find((alert) => alert.kind !== 'ident-not-confirmed') ?? alerts[0];
  const { reverseSensing, whichWay } = context.guidance;
  const reasons =
    reverseSensing === 'station-behind' ? [awayReason(whichWay)] : phaseReasons(context);
  return [noticed === undefined ? null : noticedWords(noticed, context), ...reasons]
    .filter((each) => each !== null)
    .join(' ');
}

function phaseReasons(context: WhyContext): readonly (string | null)[] {
  const { guidance } = context;
  if (context.readingCount === 0 && guidance.seen.crossTrackNm === null) {
    return ['Nothing has been read yet.', CENTRED_SHOWS];
  }
  switch (guidance.phase) {
    case 'near-station':
      return [
        'Close to the station the needle swings however well you fly.',
        `The ${headingWords(guidance.whichWay.headingDeg)} ${crabReason(context)}.`,
      ];
    case 'passage':
      return [
        context.flag === 'off'
          ? 'Over the station there is a cone without a signal, so the flag is off.'
          : 'The flag has turned to FROM, so the station is behind you.',
        headingReason(context),
      ];
    case 'lost':
      return ['The readings no longer fit one place.', CENTRED_SHOWS];
    case 'intercept':
    case 'track':
    case 'outbound':
    case 'arriving':
      return arcWhy(context) ?? legReasons(context);
  }
}

/** On a heading that finds the range neither the line nor the wind is a reason. */
function legReasons(context: WhyContext): readonly (string | null)[] {
  const finding = findingReason(context);
  if (context.finding?.kind === 'flying') return [finding];
  const heading = headingReason(context);
  return finding === null ? [placeReason(context), heading] : [heading, finding];
}

/** The reasons of an arc, where there are any of its own. */
function arcWhy(context: WhyContext): readonly string[] | null {
  const { arc } = context.leg.leg;
  const seen = context.guidance.arc;
  if (!arc || !seen) return null;
  const reasons = arcReasons(context, arc, seen, windReason(context));
  return reasons.length > 0 ? reasons : null;
}

/** "Two dots left is seven tenths of a mile at ten miles." */
function placeReason(context: WhyContext): string | null {
  const { guidance, manner } = context;
  const off = guidance.seen.crossTrackNm;
  const reading = courseReading(context);
  const dots = reading?.needleDots;
  if (dots === undefined) return off === null ? null : placeOnly(off, manner);
  const full = fullScaleWords(dots, context.aircraft);
  if (full !== null) return full;
  if (Math.round(dots * 2) === 0) return 'The needle is centred: you are on the radial.';
  if (off === null) return `The needle is ${dotsWords(dots)}.`;
  if (reading && !isOffAsRead(reading, off, context)) return placeOnly(off, manner);
  const where = reading?.dmeNm === undefined ? '' : ` at ${rangeWords(reading.dmeNm, manner)}`;
  return `${capital(dotsWords(dots))} is ${offCourseWords(off, manner)}${where}.`;
}

/**
 * Whether the needle shows the distance off course that is believed, on the same side and to a half or 0.3 NM. A
 * needle that was kept out as a slip must not be given as the reason.
 */
function isOffAsRead(reading: Reading, offNm: number, { aircraft }: WhyContext): boolean {
  const { needleDots, dmeNm } = reading;
  if (needleDots === undefined || dmeNm === undefined) return true;
  const readNm = -dmeNm * sinDeg(needleDots * aircraft.degreesPerDot);
  return Math.abs(readNm - offNm) <= Math.max(0.3, Math.abs(readNm) / 2);
}

/** Whole miles from three on: a reason needs no tenths. */
function rangeWords(dmeNm: number, manner: Manner): string {
  return dmeNm < 3 ? milesWords(dmeNm, manner) : spokenMiles(dmeNm);
}

/** The reading, if its needle shows the distance from the leg: its own station, course and a flag that fits. */
function courseReading({ reading, leg, guidance }: WhyContext): Reading | null {
  if (guidance.reverseSensing !== undefined) return null;
  if (reading === null || reading.flag === 'off' || reading.station !== undefined) return null;
  return isOtherCourse(reading.courseSetDeg, leg.leg) ? null : reading;
}

function fullScaleWords(dots: number, { dotsFullScale, degreesPerDot }: Aircraft): string | null {
  if (Math.abs(dots) < dotsFullScale) return null;
  const full = spokenAngle(dotsFullScale * degreesPerDot);
  return `Full scale ${dots < 0 ? 'left' : 'right'} is ${full} or more.`;
}

function placeOnly(off: number, manner: Manner): string {
  if (Math.abs(off) < 0.05) return 'You are on the radial.';
  return `You are ${offCourseWords(off, manner)} ${off > 0 ? 'right' : 'left'} of course.`;
}

/** Off the heading that keeps the line by this much, a heading leads back to it, degrees. */
const LEADS_BACK_DEG = 5;

function headingReason(context: WhyContext): string {
  const { whichWay: way, isWindTooStrong, seen } = context.guidance;
  const wind = windReason(context);
  if (isWindTooStrong === true) return `${wind}, more than the airspeed can hold against.`;
  // What is not known is no reason.
  const so = seen.wind === null ? `${wind}:` : `${wind}, so`;
  if (hasSecondHeading(way)) {
    const closes = `${spokenBearing(way.headingDeg)} brings you back in ${spokenDuration(way.holdS)}`;
    return `${so} ${closes} and ${spokenBearing(way.thenHeadingDeg)} keeps you on it.`;
  }
  const offDeg = Math.abs(turnDeg(context.lineHeadingDeg, way.headingDeg));
  const effect = offDeg >= LEADS_BACK_DEG ? 'takes you back to it' : 'keeps you on it';
  return `${so} ${spokenBearing(way.headingDeg)} ${effect}.`;
}

/** Flying away from the station of a leg that leads to it no heading is a way on. */
function awayReason({ headingDeg }: WhichWay): string {
  return `${capital(headingWords(headingDeg))} only keeps you on the line, away from the station.`;
}

/** "The wind is from the north-west, about two zero knots" */
function windReason({ guidance }: WhyContext): string {
  const wind = guidance.seen.wind;
  if (wind === null) return 'I cannot tell the wind yet';
  if (isWindLight(wind)) return 'There is little wind';
  return `The wind is from the ${compassPoint(wind.fromDegMag)}, about ${digits(wind.speedKt)} knots`;
}

function crabReason({ guidance, leg }: WhyContext): string {
  const drift = guidance.seen.driftDeg;
  if (drift !== null && Math.abs(drift) >= 1) {
    return `allows for ${spokenAngle(drift)} of drift to the ${drift > 0 ? 'right' : 'left'}`;
  }
  return leg.leg.direction === 'to'
    ? 'takes you straight over it'
    : 'takes you out along the radial';
}

function capital(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}
