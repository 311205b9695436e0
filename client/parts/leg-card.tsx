import type { JSX } from 'preact';
import type { Leg } from '../../src/leg/leg.ts';
import type { Deck } from './deck.ts';
import { megahertz, oneDecimal, threeFigures } from './figures.ts';
import { NoteList } from './notes.tsx';
import { ReadingLine } from './readings-list.tsx';

/** The plan, the readings and the notes for paper; on screen only once the flight is over. */
export function LegCard({
  deck,
  isOnScreen,
}: {
  readonly deck: Deck;
  readonly isOnScreen: boolean;
}): JSX.Element | null {
  const { plan, readings, notes } = deck.state.value;
  if (plan === null) return null;
  return (
    <section class={isOnScreen ? 'card' : 'card on-paper'} aria-label="Leg card">
      <h2>{plan.name}</h2>
      <p>
        {plan.dateIso} · {plan.aircraft.trueAirspeedKt} kt true airspeed · one dot is{' '}
        {plan.aircraft.degreesPerDot}°, full scale {plan.aircraft.dotsFullScale} dots
        {plan.forecastWind === undefined
          ? ' · no wind forecast'
          : ` · forecast wind ${threeFigures(plan.forecastWind.fromDegTrue)} true, ${plan.forecastWind.speedKt} kt`}
        {(plan.legWinds ?? []).map(
          ({ legIndex, wind }) =>
            ` · leg ${legIndex + 1} ${threeFigures(wind.fromDegTrue)} true, ${wind.speedKt} kt`,
        )}
      </p>
      <table>
        <thead>
          <tr>
            {['Leg', 'Ident', 'MHz', 'OBS', 'Flag', 'ft', 'Ends'].map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {plan.legs.map((leg, index) => (
            <tr key={index}>
              <th scope="row">{index + 1}</th>
              <td>{leg.station.ident}</td>
              <td>
                {leg.station.frequencyMhz === undefined ? '–' : megahertz(leg.station.frequencyMhz)}
              </td>
              <td>{threeFigures(leg.courseDeg)}</td>
              <td>{leg.direction.toUpperCase()}</td>
              <td>{leg.altitudeFt.toLocaleString('en')}</td>
              <td>{endWords(leg)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <h3>Readings</h3>
      {readings.length === 0 ? <p>None.</p> : null}
      <ol class="readings">
        {readings.map((record) => (
          <li key={record.eventId} class={record.isTakenBack ? 'taken-back' : ''}>
            <ReadingLine deck={deck} record={record} />
          </li>
        ))}
      </ol>
      {notes.length === 0 ? null : <h3>Notes</h3>}
      <NoteList deck={deck} />
      <p class="soft">
        Times are UTC. Practice and prompting aid, never the primary means of navigation.
      </p>
    </section>
  );
}

function endWords({ direction, endDmeNm, arc }: Leg): string {
  if (arc) {
    return `arc DME ${oneDecimal(arc.dmeNm)} ${arc.turn} to radial ${threeFigures(arc.toRadialDeg)}`;
  }
  if (endDmeNm !== undefined && endDmeNm > 0) return `DME ${oneDecimal(endDmeNm)}`;
  return direction === 'to' ? 'over the station' : 'not given';
}
