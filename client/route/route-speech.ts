import {
  spokenBearing,
  spokenDistance,
  spokenDuration,
  spokenFrequency,
} from '../../src/speech/numbers.ts';
import { phonetic } from '../../src/speech/phonetic.ts';
import { settings } from '../settings/settings.ts';
import type { PlannedRoute } from './read-route.ts';
import { routeTitle, type RouteDraft } from './route-draft.ts';

/** A planned flight as it is read out, leg by leg: what to tune, what to set, what to fly, how far and how long. */
export function routeSpeech(draft: RouteDraft, plan: PlannedRoute): string {
  const manner = { decimalWord: settings.peek().decimalWord };
  const legs = plan.legs.map(({ station, direction }, index) => {
    const computed = plan.computed.legs[index];
    if (!computed) return '';
    const tune =
      station.frequencyMhz === undefined
        ? phonetic(station.ident)
        : `${phonetic(station.ident)}, ${spokenFrequency(station.frequencyMhz, manner)}`;
    return (
      `Leg ${index + 1}. ${tune}. O B S ${spokenBearing(computed.courseDeg)}, ${direction}. ` +
      `Heading ${spokenBearing(computed.headingDeg)}. ` +
      `${spokenDistance(computed.distanceNm, manner)}, ${spokenDuration(computed.timeS)}. ` +
      computed.warnings.join(' ')
    );
  });
  return [`${routeTitle(draft)}.`, ...legs].join(' ');
}
