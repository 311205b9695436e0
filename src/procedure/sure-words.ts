import type { AnswerContext } from './answer-context.ts';
import { isWindLight, offCourseWords, windDirectionDeg, windWords } from './phrases.ts';
import { saidBefore } from './said-before.ts';

/** Below this share of the distance to go its uncertainty changes nothing that a pilot does. */
const SD_SHARE_THAT_MATTERS = 0.05;
const SD_NM_THAT_MATTERS = 0.3;
/** A wind that this many readings do not show is worth a sentence; before, nobody expects one. */
const WIND_DUE_AT_READING = 3;

/** The wind and how far the numbers can be trusted. */
export function sureWords(context: AnswerContext): readonly (string | null)[] {
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
  if (wind === null) return isWindMissed(context) ? 'I cannot tell the wind yet.' : null;
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

/** Said once: at the third reading, or when a wind that was told is not known any more. */
function isWindMissed({ readingCount, previous }: AnswerContext): boolean {
  if (readingCount < WIND_DUE_AT_READING) return false;
  if (previous === undefined || readingCount === WIND_DUE_AT_READING) return true;
  return previous.estimate.wind !== null;
}
