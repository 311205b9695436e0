import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { demoPlan } from '../demo.ts';
import { BeforeFlight } from '../parts/before-flight.tsx';
import { CautionList } from '../parts/cautions.tsx';
import { nowMs } from '../parts/clock.ts';
import { addressOf, goTo } from '../parts/route.ts';
import { Sheet } from '../parts/sheet.tsx';
import { todayIso } from '../parts/today.ts';
import {
  createFlight,
  deleteFlight,
  listFlights,
  type FlightSummary,
} from '../store/flight-store.ts';
import { settingsProblem } from '../settings/settings.ts';

/** The flights of this device, and how to start another. */
export function FlightsPage(): JSX.Element {
  const [flights, setFlights] = useState<readonly FlightSummary[] | null>(null);
  const [problem, setProblem] = useState('');
  const [deleting, setDeleting] = useState<FlightSummary | null>(null);
  const fail = (error: unknown): void => {
    setProblem(error instanceof Error ? error.message : String(error));
  };
  const load = (): void => void listFlights().then(setFlights, fail);
  useEffect(load, []);
  const flyDemo = (): void => {
    createFlight(demoPlan(todayIso(nowMs.peek()))).then((flightId) => {
      goTo({ page: 'fly', flightId });
    }, fail);
  };
  return (
    <main class="plain">
      <div class="masthead">
        <h1 tabIndex={-1}>Spoken Radial</h1>
        <nav aria-label="Pages">
          <a href={addressOf({ page: 'stations' })}>Stations</a>
          <a href={addressOf({ page: 'idents', section: 'hear' })}>Idents</a>
          <a href={addressOf({ page: 'checks' })}>Receiver checks</a>
          <a href={addressOf({ page: 'settings' })}>Settings</a>
        </nav>
      </div>
      <p class="lead">
        Tell it what the needle, the flag and the DME show. It says one heading to fly, for how
        long, and how far there is to go.
      </p>
      <div class="row wrap">
        <button type="button" class="main hurry" onClick={flyDemo}>
          Fly the demo
        </button>
        <a class="button hurry" href={addressOf({ page: 'route' })}>
          Plan a flight
        </a>
        <a class="button hurry" href={addressOf({ page: 'plan' })}>
          Type in a leg
        </a>
      </div>
      <BeforeFlight />
      <p class="problem" role="alert">
        {problem}
        {settingsProblem.value}
      </p>
      <h2>Flights</h2>
      {flights?.length === 0 ? (
        <p class="soft">
          None yet. The demo has two legs over open ocean: inbound to a station, overhead, and
          outbound to a place at DME 14. You need no aircraft for it.
        </p>
      ) : null}
      <ul class="flights">
        {flights?.map((flight) => (
          <li key={flight.id}>
            <a href={addressOf({ page: 'fly', flightId: flight.id })}>
              <b>{flight.name}</b>
              <span class="soft">
                {' '}
                {dayAndTime(flight.createdAtMs)}
                {flight.isHere ? '' : ' · on the server'}
              </span>
            </a>
            <button
              type="button"
              class="quiet"
              aria-label={`Delete ${flight.name}, ${dayAndTime(flight.createdAtMs)}`}
              onClick={() => {
                setDeleting(flight);
              }}
            >
              Delete
            </button>
          </li>
        ))}
      </ul>
      <details class="about">
        <summary>Cautions</summary>
        <CautionList />
      </details>
      {deleting === null ? null : (
        <DeleteSheet
          flight={deleting}
          onClose={() => {
            setDeleting(null);
          }}
          onDelete={() => {
            setDeleting(null);
            deleteFlight(deleting.id).then(load, fail);
          }}
        />
      )}
    </main>
  );
}

interface DeleteSheetProps {
  readonly flight: FlightSummary;
  readonly onClose: () => void;
  readonly onDelete: () => void;
}

function DeleteSheet({ flight, onClose, onDelete }: DeleteSheetProps): JSX.Element {
  return (
    <Sheet title="Delete this flight?" onClose={onClose}>
      <p>
        <b>{flight.name}</b>, {dayAndTime(flight.createdAtMs)}, with all its readings.
      </p>
      <div class="row">
        <button type="button" class="hurry" onClick={onClose}>
          Keep it
        </button>
        <button type="button" class="hurry main" onClick={onDelete}>
          Delete it
        </button>
      </div>
    </Sheet>
  );
}

function dayAndTime(atMs: number): string {
  return new Date(atMs).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
}
