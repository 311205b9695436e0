import type { LegFix } from '../../src/leg/route/leg-fixes.ts';
import {
  spokenBearing,
  spokenDistance,
  spokenDuration,
  spokenFrequency,
  spokenSpeed,
  type Manner,
} from '../../src/speech/numbers.ts';
import { phonetic } from '../../src/speech/phonetic.ts';
import type { PlannedRoute } from './read-route.ts';
import { routeTitle, type RouteDraft } from './route-draft.ts';

/** A planned flight as it is read out, leg by leg: what to tune, what to set, what to fly, how far and how long. */
export function routeSpeech(draft: RouteDraft, plan: PlannedRoute, manner: Manner): string {
  const legs = plan.legs.map((_, index) => legSpeech(plan, index, [], manner));
  return [`${routeTitle(draft)}.`, ...legs].join(' ');
}

/** One leg as it is read out; with its fixes, the checkpoints too. */
export function legSpeech(
  plan: PlannedRoute,
  index: number,
  fixes: readonly LegFix[],
  manner: Manner,
): string {
  const [leg, next, computed] = [plan.legs[index], plan.legs[index + 1], plan.computed.legs[index]];
  if (!leg || !computed) return '';
  const { station, direction } = leg;
  const { dmeAtStartNm, dmeAtEndNm, groundSpeedKt } = computed;
  const dme = (nm: number): string => `D M E ${spokenDistance(nm, manner)}`;
  return [
    `Leg ${index + 1}. ${tuning(station, manner)}.`,
    `O B S ${spokenBearing(computed.courseDeg)}, ${direction}.`,
    `Heading ${spokenBearing(computed.headingDeg)}, ${spokenSpeed(groundSpeedKt)}.`,
    `${spokenDistance(computed.distanceNm, manner)}, ${spokenDuration(computed.timeS)}.`,
    ...(dmeAtStartNm === null || dmeAtEndNm === null
      ? []
      : [`${dme(dmeAtStartNm)} to ${spokenDistance(dmeAtEndNm, manner)}.`]),
    ...fixes.flatMap((fix) => fixWords(fix, groundSpeedKt)),
    ...(direction === 'from' && next?.direction === 'to'
      ? [`Then change over to ${tuning(next.station, manner)}.`]
      : []),
    ...computed.warnings,
  ].join(' ');
}

function tuning(station: PlannedRoute['legs'][number]['station'], manner: Manner): string {
  const { ident, frequencyMhz } = station;
  if (frequencyMhz === undefined) return phonetic(ident);
  return `${phonetic(ident)}, ${spokenFrequency(frequencyMhz, manner)}`;
}

function fixWords({ crossing, flownNm }: LegFix, groundSpeedKt: number): readonly string[] {
  if (crossing === null) return [];
  const { radialDeg, station } = crossing;
  const after = spokenDuration((flownNm / groundSpeedKt) * 3600);
  return [`After ${after}, radial ${spokenBearing(radialDeg)} of ${phonetic(station.ident)}.`];
}
