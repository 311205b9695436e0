import { FT_PER_NM } from '../base/units.ts';

/**
 * What a DME shows (slant NM) at a ground distance and a height above its antenna.
 *
 * Plane triangle: over the round Earth the DME shows more by height / (2 x 3,440 NM) of the distance: 0.02 NM
 * at 10,000 ft and 100 NM, 0.1 NM at 45,000 ft.
 * *Source:* ICAO Doc 8168 vol. II (PANS-OPS), I-4-3 App C: Ds = sqrt(D^2 - 0.027 h^2), h in thousands
 * of feet; here with the exact 6076.1155 ft in a nautical mile.
 */
export function slantFromGround(groundNm: number, heightFt: number): number {
  return Math.hypot(groundNm, heightFt / FT_PER_NM);
}

/**
 * The ground distance at which a DME shows a slant range at a height above its antenna, NM.
 *
 * 0 when the slant range is smaller than the height: the aircraft is overhead, as near as can be told.
 * *Source:* as for `slantFromGround`.
 */
export function groundFromSlant(slantNm: number, heightFt: number): number {
  const heightNm = heightFt / FT_PER_NM;
  return Math.sqrt(Math.max(0, (slantNm - heightNm) * (slantNm + heightNm)));
}
