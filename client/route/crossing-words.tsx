import type { JSX } from 'preact';
import { geodesicTo, placeAt, type LatLon } from '../../src/earth/geodesic.ts';
import { bestCrossing } from '../../src/leg/route/crossing-radial.ts';
import type { LegMark } from '../../src/leg/route/leg-marks.ts';
import type { PlacedLeg } from '../../src/leg/route/route-leg.ts';
import type { LibraryStation } from '../../src/station/library/library-station.ts';
import { megahertz, minutesSeconds, oneDecimal, threeFigures } from '../parts/figures.ts';

/** A checkpoint about every so often on a leg without DME, minutes. */
const EACH_MIN = 6;

/** On a leg without DME: times, each with a radial of another station that crosses there. */
export function CrossingWords({
  leg,
  marks,
  around,
}: {
  readonly leg: PlacedLeg;
  readonly marks: readonly LegMark[];
  /** The stations that are received at a place. */
  readonly around: (place: LatLon) => readonly LibraryStation[];
}): JSX.Element {
  const line = geodesicTo(leg.start, leg.end);
  const timeS = marks.at(-1)?.timeS ?? 0;
  const count = Math.max(1, Math.floor(timeS / 60 / EACH_MIN));
  const points = Array.from({ length: count }, (_, at) => (at + 1) / (count + 1)).map((part) => {
    const place = placeAt(leg.start, line.azimuthDeg, part * line.distanceNm);
    const trackDeg = geodesicTo(place, leg.end).azimuthDeg;
    const others = around(place).filter(
      ({ ident, latitudeDeg }) =>
        ident !== leg.station.ident || latitudeDeg !== leg.station.latitudeDeg,
    );
    return { part, crossing: bestCrossing(place, trackDeg, others) };
  });
  return (
    <div>
      <p>
        <b>No DME here.</b> Fly by the clock, and check the place with a second station:
      </p>
      <ul>
        {points.map(({ part, crossing }) => (
          <li key={part}>
            After {minutesSeconds(part * timeS)}:{' '}
            {crossing === null
              ? 'no station crosses well here'
              : `radial ${threeFigures(crossing.radialDeg)} of ${crossing.station.ident} ${megahertz(crossing.station.frequencyMhz)}, good to ${oneDecimal(2 * crossing.alongSdNm)} NM each way`}
          </li>
        ))}
      </ul>
      <p class="soft">
        With nothing to cross: turn until the station is abeam, time a bearing change of 10°; the
        seconds divided by 10 are the minutes to the station.
      </p>
    </div>
  );
}
