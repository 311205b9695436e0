import { hasSecondHeading, milesWords, wayWords } from '../../src/procedure/phrases.ts';
import { spokenDuration, type Manner } from '../../src/speech/numbers.ts';
import type { HowFar, WhichWay } from '../../src/track/guidance.ts';

/** What is answered to "how far to go". */
export function howFarReply(howFar: HowFar | null, manner: Manner): string {
  if (howFar?.toGoNm == null) return 'I cannot tell the distance yet.';
  const miles = `${inUpperCase(milesWords(howFar.toGoNm, manner))} to go`;
  return howFar.toGoS === null ? `${miles}.` : `${miles}, ${spokenDuration(howFar.toGoS)}.`;
}

/** What is answered to "which way to turn" so long after the reading: no turn that has been made by then. */
export function whichWayReply(way: WhichWay, ageS: number, isHeadingRead: boolean): string {
  if (!hasSecondHeading(way)) return wayWords(way, isHeadingRead);
  const leftS = way.holdS - ageS;
  if (leftS > 0) return wayWords({ ...way, holdS: leftS }, isHeadingRead);
  return wayWords({ ...way, turn: 'none', turnDeg: 0, headingDeg: way.thenHeadingDeg, holdS: 0 });
}

function inUpperCase(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
