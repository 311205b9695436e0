import { geodesicTo } from '../../earth/geodesic.ts';
import { accept, type Result } from '../../base/result.ts';
import { computeLegs, type ComputedRoute, type RouteRequest } from './compute-legs.ts';
import { placeLegs } from './place-legs.ts';
import type { PlacedLeg } from './route-leg.ts';
import { othersOnFrequency, sharedFrequencyWarnings } from './shared-frequency.ts';

/** Rounding of places given twice is no gap, NM. */
const LEAST_GAP_NM = 0.5;

/**
 * `computeLegs`, and with each leg also the warnings that come from the other legs handed in with it: a gap to the
 * leg before it, which no distance or fuel counts, and another of their stations on its frequency.
 */
export function computeRoute(request: RouteRequest): Result<ComputedRoute> {
  const computed = computeLegs(request);
  const placed = placeLegs(request.legs);
  if (!computed.ok || !placed.ok) return computed;
  const stations = placed.value.map((leg) => leg.station);
  const legs = computed.value.legs.map((leg, index) => {
    const at = placed.value[index];
    if (!at) return leg;
    const alike = othersOnFrequency(at, request.altitudeFt, stations);
    const warnings = [
      ...gapWarnings(placed.value[index - 1], at),
      ...leg.warnings,
      ...sharedFrequencyWarnings(alike),
    ];
    return { ...leg, warnings };
  });
  return accept({ ...computed.value, legs });
}

function gapWarnings(before: PlacedLeg | undefined, { start }: PlacedLeg): readonly string[] {
  if (!before) return [];
  const { distanceNm } = geodesicTo(before.end, start);
  if (distanceNm < LEAST_GAP_NM) return [];
  return [
    `This leg begins ${distanceNm.toFixed(distanceNm < 10 ? 1 : 0)} NM from where the leg before it ends: ` +
      'the way between is in no distance, time or fuel.',
  ];
}
