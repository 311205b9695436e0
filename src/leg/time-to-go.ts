import { S_PER_H } from '../base/units.ts';

/**
 * Time for a ground distance, seconds; null when the aircraft does not move over the ground.
 *
 * *Source:* FAA-H-8083-25C, Pilot's Handbook of Aeronautical Knowledge, ch. 16: time is distance by groundspeed.
 */
export function timeToGoS(distanceNm: number, groundSpeedKt: number): number | null {
  return groundSpeedKt > 0 ? (distanceNm / groundSpeedKt) * S_PER_H : null;
}
