import type { JSX } from 'preact';
import type { LegFix } from '../../src/leg/route/leg-fixes.ts';
import { megahertz, minutesSeconds, oneDecimal, threeFigures } from '../parts/figures.ts';
import { MorseMarks } from '../parts/morse-marks.tsx';

const KIND_WORDS: Readonly<Record<LegFix['kind'], string>> = {
  'on-the-way': 'On the way',
  halfway: 'Halfway',
  'change-over': 'Change over',
  destination: 'Destination',
};

/** The checkpoints of a leg, each with the radial of a second station that crosses there; nothing where there are none. */
export function FixTable({
  fixes,
  groundSpeedKt,
}: {
  readonly fixes: readonly LegFix[];
  readonly groundSpeedKt: number;
}): JSX.Element | null {
  if (fixes.length === 0) return null;
  return (
    <table class="marks fixes">
      <thead>
        <tr>
          <th scope="col">Check the place</th>
          <th scope="col">After</th>
          <th scope="col">By a second station</th>
        </tr>
      </thead>
      <tbody>
        {fixes.map((fix) => (
          <tr key={fix.flownNm}>
            <th scope="row">{KIND_WORDS[fix.kind]}</th>
            <td>{minutesSeconds((fix.flownNm / groundSpeedKt) * 3600)}</td>
            <td>
              <Crossing crossing={fix.crossing} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Crossing({ crossing }: Pick<LegFix, 'crossing'>): JSX.Element {
  if (crossing === null) return <span class="soft">no station crosses well here</span>;
  const { station, radialDeg, distanceNm, angleDeg, alongSdNm } = crossing;
  return (
    <>
      <b>
        {threeFigures(radialDeg)} of {station.ident} {megahertz(station.frequencyMhz)}
      </b>{' '}
      <MorseMarks ident={station.ident} />
      <br />
      <span class="soft">
        {distanceNm.toFixed(0)} NM off, crosses at {angleDeg.toFixed(0)}°, ±
        {oneDecimal(2 * alongSdNm)} NM
      </span>
    </>
  );
}
