import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { LatLon } from '../../src/earth/geodesic.ts';
import type { Station } from '../../src/station/station.ts';

interface NearestToProps {
  readonly stations: readonly Station[];
  readonly from: LatLon | null;
  readonly onFrom: (from: LatLon) => void;
}

const HERE = 'here';

/** From where the distances are taken: a station of a flight, or where the device says that it is. */
export function NearestTo({ stations, from, onFrom }: NearestToProps): JSX.Element {
  const [problem, setProblem] = useState('');
  const index = stations.findIndex(
    ({ latitudeDeg, longitudeDeg }) =>
      latitudeDeg === from?.latitudeDeg && longitudeDeg === from.longitudeDeg,
  );
  const askDevice = (): void => {
    setProblem('');
    // Missing where the page did not come over a secure connection.
    const { geolocation } = navigator as { readonly geolocation?: Geolocation };
    const fail = (): void => {
      setProblem('The device does not say where it is. The distances are from the station above.');
    };
    if (geolocation === undefined) {
      fail();
      return;
    }
    geolocation.getCurrentPosition(
      ({ coords }) => {
        onFrom({ latitudeDeg: coords.latitude, longitudeDeg: coords.longitude });
      },
      fail,
      { maximumAge: 60_000, timeout: 10_000 },
    );
  };
  return (
    <div class="field">
      <label for="nearest-to">Nearest to</label>
      <select
        id="nearest-to"
        value={index < 0 ? HERE : String(index)}
        onChange={(change) => {
          const chosen = stations[Number(change.currentTarget.value)];
          if (change.currentTarget.value === HERE) askDevice();
          else if (chosen !== undefined) onFrom(chosen);
        }}
      >
        {stations.map(({ ident, name }, at) => (
          <option key={at} value={String(at)}>
            {ident}
            {name === undefined ? '' : `, ${name}`}
          </option>
        ))}
        <option value={HERE}>Where I am</option>
      </select>
      <p class={problem === '' ? 'hint' : 'hint problem'} role="status">
        {problem}
      </p>
    </div>
  );
}
