import type { JSX } from 'preact';
import { wrap360 } from '../../src/base/angle.ts';
import { magneticFromTrue } from '../../src/earth/norths.ts';
import type { Aircraft } from '../../src/leg/leg.ts';
import { closingTurnDeg, offCourseNm } from '../../src/leg/off-course.ts';
import type { ComputedLeg } from '../../src/leg/route/compute-leg.ts';
import type { LegFix } from '../../src/leg/route/leg-fixes.ts';
import type { PlacedLeg } from '../../src/leg/route/route-leg.ts';
import { bearingChangeS } from '../../src/leg/timed-bearing.ts';
import { minutesSeconds, oneDecimal, threeFigures } from '../parts/figures.ts';

interface WithoutDmeProps {
  readonly leg: PlacedLeg;
  readonly computed: ComputedLeg;
  readonly fixes: readonly LegFix[];
  readonly aircraft: Aircraft;
}

/** The change of bearing that is timed, degrees: the handbooks' own. */
const TIMED_DEG = 10;

/** On a leg without DME: what the needle means in miles, and how to find the distance by the clock. */
export function WithoutDme({ leg, computed, fixes, aircraft }: WithoutDmeProps): JSX.Element {
  const { ident } = leg.station;
  const { degreesPerDot, trueAirspeedKt } = aircraft;
  const trackDeg = magneticFromTrue(computed.trackTrueDeg, computed.variationDegEast);
  return (
    <>
      <table class="marks">
        <thead>
          <tr>
            <th scope="col">No DME: by the clock</th>
            <th scope="col">
              {leg.direction === 'to' ? 'To' : 'From'} {ident}, NM
            </th>
            <th scope="col">1 dot ({degreesPerDot}°), NM</th>
            <th scope="col">Turn back</th>
            <th scope="col">{TIMED_DEG}° abeam</th>
          </tr>
        </thead>
        <tbody>
          {fixes.map(({ flownNm, rangeNm }) => (
            <tr key={flownNm}>
              <th scope="row">{minutesSeconds((flownNm / computed.groundSpeedKt) * 3600)}</th>
              <td>{oneDecimal(rangeNm)}</td>
              <td>{oneDecimal(offCourseNm(degreesPerDot, rangeNm))}</td>
              <td>
                {turnWords(offCourseNm(degreesPerDot, rangeNm), flownNm, computed.distanceNm)}
              </td>
              <td>{bearingChangeS(rangeNm, trueAirspeedKt, TIMED_DEG)?.toFixed(0) ?? '–'} s</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="soft by-the-clock">
        <b>Turn back</b>: one dot off there, with one heading held since the line: turn by so much
        and you are on it again where the leg ends (1 in 60). <b>{TIMED_DEG}° abeam</b>: turn to{' '}
        {threeFigures(wrap360(trackDeg + 90))} or {threeFigures(wrap360(trackDeg - 90))}, {ident}{' '}
        off the wing tip; centre the needle, time {TIMED_DEG}° more. Seconds divided by {TIMED_DEG}{' '}
        are minutes to the station, {oneDecimal(trueAirspeedKt / 60)} NM each. It reads some 6% far
        in still air, and knows no wind.
      </p>
    </>
  );
}

function turnWords(offNm: number, flownNm: number, lengthNm: number): string {
  const turnDeg = closingTurnDeg(offNm, flownNm, lengthNm - flownNm);
  return turnDeg === null ? '–' : `${turnDeg.toFixed(0)}°`;
}
