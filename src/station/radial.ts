import { stationDeg, trueDeg, type StationDeg, type TrueDeg } from '../base/bearing.ts';
import type { Station } from './station.ts';

/** The one thing of a station that its radials depend on. */
type Aligned = Pick<Station, 'declinationDegEast'>;

/**
 * The true direction of a radial or course, at the station.
 *
 * By the station's own declination, to which the transmitter was aligned, never by today's variation.
 * *Source:* Eurocontrol AIXM coding rules, "Navaid: station declination" (the angle between the zero
 * radial and true north when the station was last calibrated).
 */
export function trueFromStation(radial: StationDeg, station: Aligned): TrueDeg {
  return trueDeg(radial + station.declinationDegEast);
}

/** The radial or course of a true direction at the station; the inverse of `trueFromStation`. */
export function stationFromTrue(direction: TrueDeg, station: Aligned): StationDeg {
  return stationDeg(direction - station.declinationDegEast);
}
