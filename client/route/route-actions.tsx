import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { chosenAircraft } from '../settings/settings.ts';
import { createFlight } from '../store/flight-store.ts';
import { FileInput } from '../form/file-input.tsx';
import { BeforeFlight } from '../parts/before-flight.tsx';
import { goTo } from '../parts/route.ts';
import { saveFile } from '../parts/save-file.ts';
import { library } from '../stations/library.ts';
import { placeWords } from './route-fields.tsx';
import { readGpxRoute, routeGeoJson, routeGpx } from './exchange.ts';
import type { PlannedRoute } from './read-route.ts';
import type { RouteDesk } from './route-desk.ts';
import { readOut } from './read-out.ts';
import { routeTitle } from './route-draft.ts';
import { routeSpeech } from './route-speech.ts';
import { flightOf } from './to-flight.ts';

interface RouteActionsProps {
  readonly desk: RouteDesk;
  /** Null while the flight is not worked out. */
  readonly plan: PlannedRoute | null;
  readonly onCopy: () => void;
  readonly onDelete: () => void;
}

/** The open formats in which a flight leaves. */
const FORMATS = [
  { name: 'GPX', ending: 'gpx', type: 'application/gpx+xml', textOf: routeGpx },
  { name: 'GeoJSON', ending: 'geojson', type: 'application/geo+json', textOf: routeGeoJson },
] as const;

/** What can be done with a planned flight. */
export function RouteActions({ desk, plan, onCopy, onDelete }: RouteActionsProps): JSX.Element {
  const [said, setSaid] = useState('');
  const isReady = plan !== null;
  const fly = (): void => {
    if (plan === null) return;
    const flight = flightOf(desk.draft.peek(), plan, chosenAircraft.peek());
    if (!flight.ok) {
      setSaid(flight.problem);
      return;
    }
    createFlight(flight.value).then(
      (flightId) => {
        goTo({ page: 'fly', flightId });
      },
      (error: unknown) => {
        setSaid(error instanceof Error ? error.message : String(error));
      },
    );
  };
  return (
    <section class="no-print" aria-labelledby="do-title">
      <h2 id="do-title">Fly it, print it, take it along</h2>
      <BeforeFlight />
      <div class="row wrap">
        <button type="button" class="main hurry" disabled={!isReady} onClick={fly}>
          Fly it
        </button>
        <button
          type="button"
          class="hurry"
          disabled={!isReady}
          onClick={() => {
            if (plan) readOut((manner) => routeSpeech(desk.draft.peek(), plan, manner));
          }}
        >
          Read it out
        </button>
        <button
          type="button"
          disabled={!isReady}
          onClick={() => {
            print();
          }}
        >
          Print the leg card
        </button>
        {FORMATS.map(({ name, ending, type, textOf }) => (
          <button
            key={name}
            type="button"
            disabled={!isReady}
            onClick={() => {
              if (plan)
                saveFile(
                  new Blob([textOf(desk.draft.peek(), plan)], { type }),
                  `${fileName(desk)}.${ending}`,
                );
            }}
          >
            Save as {name}
          </button>
        ))}
        <GpxInput desk={desk} onSaid={setSaid} />
        <button type="button" onClick={onCopy}>
          Copy this flight
        </button>
        <button type="button" class="quiet" onClick={onDelete}>
          Delete this flight
        </button>
      </div>
      <p role="status">{said}</p>
    </section>
  );
}

function GpxInput({
  desk,
  onSaid,
}: {
  readonly desk: RouteDesk;
  readonly onSaid: (words: string) => void;
}): JSX.Element {
  const take = async (file: File): Promise<void> => {
    const route = readGpxRoute(await file.text(), [...(library.peek()?.values() ?? [])]);
    if (!route.ok) {
      onSaid(route.problem);
      return;
    }
    const { name, start, destination, via, leftOut } = route.value;
    desk.change({
      name: name === '' ? desk.draft.peek().name : name,
      start: placeWords(start),
      destination: placeWords(destination),
      via,
    });
    onSaid(
      leftOut.length === 0
        ? 'Taken in. Give an altitude.'
        : `Taken in. No stations here, so left out: ${leftOut.join(', ')}.`,
    );
  };
  return (
    <FileInput
      id="gpx-file"
      label="Take in a GPX route"
      accept=".gpx,application/gpx+xml"
      onFile={(file) =>
        take(file).catch(() => {
          onSaid('This file cannot be read.');
        })
      }
    />
  );
}

function fileName(desk: RouteDesk): string {
  return (
    routeTitle(desk.draft.peek())
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-|-$/g, '') || 'flight'
  );
}
