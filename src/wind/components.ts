import { cosDeg, sinDeg } from '../base/angle.ts';
import type { Wind } from './wind.ts';

/** A wind seen from a direction of flight. */
export interface WindComponents {
  /** Positive: from ahead; negative: from behind. */
  readonly headKt: number;
  /** Positive: from the right; negative: from the left. */
  readonly crossKt: number;
}

/**
 * The parts of a wind along and across a direction, which must be true, as the wind is.
 *
 * *Source:* FAA-H-8083-25C, Pilot's Handbook of Aeronautical Knowledge, ch. 11, crosswind component chart.
 */
export function windComponents(wind: Wind, directionDegTrue: number): WindComponents {
  const offDeg = wind.fromDegTrue - directionDegTrue;
  return { headKt: wind.speedKt * cosDeg(offDeg), crossKt: wind.speedKt * sinDeg(offDeg) };
}
