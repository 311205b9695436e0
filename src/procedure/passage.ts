import type { Leg } from '../leg/leg.ts';
import { spokenBearing, spokenFrequency } from '../speech/numbers.ts';
import type { Manner } from '../speech/numbers.ts';
import { phonetic } from '../speech/phonetic.ts';
import type { Advice } from './advice.ts';
import { isSameTuning } from './checklist.ts';
import { wayWords } from './phrases.ts';

/**
 * The answer to the reading that showed the station passage, when a next leg begins there.
 *
 * `advice`: what the next leg's estimate leads to. Time, twist, turn, in the order in which they are
 * done; the distance can wait until the turn is made. *Source:* common practice, no source.
 */
export function passageAdviceOf(advice: Advice, next: Leg, passed: Leg, manner: Manner): Advice {
  const alerts = advice.alerts.filter((alert) => alert.kind === 'ident-not-confirmed');
  const say = [
    'Station passage. Clock started.',
    isSameTuning(next, passed) ? null : retuneWords(next, manner),
    isSameTuning(next, passed) && next.courseDeg === passed.courseDeg
      ? null
      : `Set course ${spokenBearing(next.courseDeg)}.`,
    wayWords(advice.whichWay),
    alerts.length > 0 ? 'Ident not confirmed.' : null,
  ];
  return {
    ...advice,
    phase: 'passage',
    say: say.filter((each) => each !== null).join(' '),
    why: `The flag has turned to FROM, so the station is behind you. ${advice.why}`,
  };
}

function retuneWords({ station }: Leg, manner: Manner): string {
  const name = phonetic(station.ident);
  if (station.frequencyMhz === undefined) return `Next station ${name}.`;
  return `Next station ${name}, ${spokenFrequency(station.frequencyMhz, manner)}.`;
}
