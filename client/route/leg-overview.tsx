import type { JSX } from 'preact';
import { megahertz, minutesSeconds, oneDecimal, threeFigures } from '../parts/figures.ts';
import type { PlannedRoute } from './read-route.ts';

/** All legs in one table, each row the way to its sheet: a long flight is many screens of sheets. */
export function LegOverview({ plan }: { readonly plan: PlannedRoute }): JSX.Element | null {
  if (plan.legs.length < 2) return null;
  return (
    <table class="marks overview">
      <thead>
        <tr>
          <th scope="col">Leg</th>
          <th scope="col" class="roomy">
            MHz
          </th>
          <th scope="col">OBS</th>
          <th scope="col">Heading</th>
          <th scope="col">NM</th>
          <th scope="col">Time</th>
        </tr>
      </thead>
      <tbody>
        {plan.legs.map(({ station, direction }, index) => {
          const computed = plan.computed.legs[index];
          if (computed === undefined) return null;
          const { frequencyMhz } = station;
          return (
            <tr key={index}>
              <th scope="row">
                <a
                  href={`#leg-${index}`}
                  onClick={(click) => {
                    click.preventDefault();
                    goToLeg(index);
                  }}
                >
                  {index + 1}: {direction} {station.ident}
                </a>
              </th>
              <td class="roomy">{frequencyMhz === undefined ? '' : megahertz(frequencyMhz)}</td>
              <td>{threeFigures(computed.courseDeg)}</td>
              <td>
                <b>{threeFigures(computed.headingDeg)}</b>
              </td>
              <td>{oneDecimal(computed.distanceNm)}</td>
              <td>{minutesSeconds(computed.timeS)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** The part of the address behind `#` is the page’s, so the sheet is looked for by hand. */
function goToLeg(index: number): void {
  const head = document.getElementById(`leg-${index}`);
  head?.scrollIntoView({ block: 'start' });
  head?.focus({ preventScroll: true });
}
