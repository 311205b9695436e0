import { lineOfSightNm } from '../line-of-sight.ts';
import { serviceVolumeNm, type ServiceClass } from './service-volume.ts';

/**
 * How far a station can be counted on at an altitude, NM: as far as its class promises, and never beyond the
 * horizon. 0 where nothing is promised (below 1,000 ft above it, or above what its class serves).
 *
 * *Source:* as for `lineOfSightNm` and `serviceVolumeNm`.
 */
export function receptionNm(
  station: { readonly elevationFt: number; readonly serviceClass?: ServiceClass },
  altitudeFt: number,
): number {
  const servedNm = serviceVolumeNm(altitudeFt - station.elevationFt, station.serviceClass);
  return servedNm === null ? 0 : Math.min(servedNm, lineOfSightNm(altitudeFt, station.elevationFt));
}
