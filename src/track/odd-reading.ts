import type { Estimate } from './estimate-record.ts';
import { DME_SD_NM } from './tuning.ts';

/**
 * What is odd about the last reading by itself, as the question that settles it; null: nothing.
 *
 * A cross-bearing more than four standard deviations off; a DME shorter than the height above its antenna, which
 * no slant range can be (by more than its own error).
 */
export function oddReadingAsk({ readings, scene, isCrossOff }: Estimate): string | null {
  if (isCrossOff) return 'The cross-bearing does not fit: please read it again.';
  const dmeNm = readings.at(-1)?.dmeNm;
  if (dmeNm === undefined || readings.at(-1)?.station || !scene.dme) return null;
  if (dmeNm >= scene.dme.heightNm - DME_SD_NM) return null;
  return `I understood distance ${dmeNm}. It is less than your height above the DME: check the altitude, and read again.`;
}
