import type { JSX } from 'preact';
import { stationDoubts } from '../../src/station/library/library-station.ts';
import type { FoundStation } from '../../src/station/library/find-stations.ts';
import { phonetic } from '../../src/speech/phonetic.ts';
import { megahertz } from '../parts/figures.ts';
import { MorseMarks } from '../parts/morse-marks.tsx';
import { lettered } from './station-draft.ts';

interface StationRowProps {
  readonly found: FoundStation;
  /** Right beside the figures: what can be done with it. */
  readonly children: JSX.Element;
  /** Below the figures: what else there is to tell. */
  readonly more?: JSX.Element;
}

/** One station of a list, with what tells it from others of the same ident. */
export function StationRow({ found, children, more }: StationRowProps): JSX.Element {
  const { station, distanceNm } = found;
  const place = `${lettered(station.latitudeDeg, 'N', 'S', 2)} ${lettered(station.longitudeDeg, 'E', 'W', 2)}`;
  const doubts = stationDoubts(station);
  return (
    <li class="station">
      <div>
        <p class="row wrap">
          <b class="ident">{station.ident}</b>
          <span class="figure">{megahertz(station.frequencyMhz)}</span>
          <MorseMarks ident={station.ident} />
        </p>
        <p>
          {station.name ?? phonetic(station.ident)}
          <span class="soft">
            {' '}
            {[
              station.country,
              station.hasDme ? 'with DME' : 'no DME',
              place,
              distanceNm === null ? null : `${distanceNm.toFixed(0)}\u00A0NM away`,
              station.isByHand ? 'by hand' : null,
            ]
              .filter((each) => each !== null && each !== undefined)
              .join(' · ')}
          </span>
        </p>
        {doubts.length === 0 ? null : <p class="doubt">{doubts.join(' ')}</p>}
        {more}
      </div>
      {children}
    </li>
  );
}
