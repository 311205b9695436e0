import type { Estimate } from './estimate-record.ts';
import { isAlongCourse } from './passage.ts';
import { isFromUnproven } from './passed.ts';

/** So many readings in a row with FROM, each with a greater distance, show the station behind. Common practice, no source. */
const READINGS = 3;
/** The DME grows by at least this from one to the next, NM: more than its own error. */
const LEAST_GROWTH_NM = 0.2;

/**
 * Whether the aircraft flies away from the station of a leg that leads to it: FROM is shown with the course set, no
 * TO was read that would make it the passage, and the DME has grown from reading to reading.
 */
export function isStationBehind(estimate: Estimate): boolean {
  if (!isFromUnproven(estimate)) return false;
  const recent = estimate.readings.filter(({ station }) => station === undefined).slice(-READINGS);
  if (recent.length < READINGS) return false;
  return recent.every((reading, index) => {
    const beforeNm = recent[index - 1]?.dmeNm;
    const isFrom = reading.flag === 'from' && isAlongCourse(estimate.scene, reading);
    if (!isFrom || reading.dmeNm === undefined) return false;
    return beforeNm === undefined || reading.dmeNm - beforeNm >= LEAST_GROWTH_NM;
  });
}
