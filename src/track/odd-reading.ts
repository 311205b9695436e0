import type { Estimate } from './estimate-record.ts';
import type { Reading } from './reading.ts';
import { DME_SD_NM } from './tuning.ts';

/** A distance less than the height by this many standard deviations (0.3 NM) is not the DME's own error. */
const LESS_THAN_HEIGHT_SD = 2;

/**
 * What is odd about the last reading by itself, as the question that settles it; null: nothing.
 *
 * Another station's radial or distance more than four standard deviations off; a DME shorter than the height above its antenna, which
 * no slant range can be (by more than its own error). Over the station (OFF) nobody is asked about that.
 */
export function oddReadingAsk({ readings, scene, isCrossOff }: Estimate): string | null {
  if (isCrossOff) return crossAsk(readings.at(-1));
  const last = readings.at(-1);
  const dmeNm = last?.dmeNm;
  if (!last || dmeNm === undefined || last.station || last.flag === 'off' || !scene.dme)
    return null;
  if (dmeNm >= scene.dme.heightNm - LESS_THAN_HEIGHT_SD * DME_SD_NM) return null;
  const heard = `I understood distance ${dmeNm}.`;
  return `${heard} It is less than your height above the DME: check the altitude, and read again.`;
}

function crossAsk(last: Reading | undefined): string {
  const what = last?.dmeNm === undefined ? 'cross-bearing' : 'reading of the other station';
  return `The ${what} does not fit: please read it again.`;
}
