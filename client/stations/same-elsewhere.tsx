import type { JSX } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import type { LibraryStation } from '../../src/station/library/library-station.ts';
import { nearestFirst, sameElsewhere } from '../../src/station/library/same-elsewhere.ts';
import { megahertz } from '../parts/figures.ts';

/** So many of each are shown: the near ones are those that can be mistaken. */
const MOST_SHOWN = 6;

interface SameElsewhereProps {
  readonly station: LibraryStation;
  readonly stations: readonly LibraryStation[];
}

/** What else has the ident or the frequency of a station, the nearest first; nothing where nothing has. */
export function Elsewhere({ station, stations }: SameElsewhereProps): JSX.Element | null {
  const [isOpen, setOpen] = useState(false);
  const same = useMemo(() => sameElsewhere(stations, station), [stations, station]);
  if (same.ident.length + same.frequency.length === 0) return null;
  return (
    <details
      class="elsewhere"
      onToggle={(toggle) => {
        setOpen(toggle.currentTarget.open);
      }}
    >
      <summary>
        Elsewhere: same ident {same.ident.length}, same frequency {same.frequency.length}
      </summary>
      {isOpen ? (
        <>
          <Nearest title={`Ident ${station.ident}`} stations={same.ident} from={station} />
          <Nearest
            title={`On ${megahertz(station.frequencyMhz)}`}
            stations={same.frequency}
            from={station}
          />
        </>
      ) : null}
    </details>
  );
}

interface NearestProps {
  readonly title: string;
  readonly stations: readonly LibraryStation[];
  readonly from: LibraryStation;
}

function Nearest({ title, stations, from }: NearestProps): JSX.Element | null {
  if (stations.length === 0) return null;
  const shown = nearestFirst(stations, from).slice(0, MOST_SHOWN);
  return (
    <>
      <p>{title}</p>
      <ul>
        {shown.map(({ station, distanceNm }) => (
          <li key={station.id}>
            <b>{station.ident}</b> {megahertz(station.frequencyMhz)}{' '}
            {[station.name, station.country].filter((each) => each !== undefined).join(', ')}{' '}
            <span class="soft">{distanceNm.toFixed(0)} NM from here</span>
          </li>
        ))}
        {stations.length > shown.length ? (
          <li class="soft">and {stations.length - shown.length} farther away</li>
        ) : null}
      </ul>
    </>
  );
}
