import type { JSX } from 'preact';
import type { Aircraft } from '../../src/leg/leg.ts';
import { phonetic } from '../../src/speech/phonetic.ts';
import type { ComputedLeg } from '../../src/leg/route/compute-leg.ts';
import type { LegFix } from '../../src/leg/route/leg-fixes.ts';
import { legMarks, type LegMark } from '../../src/leg/route/leg-marks.ts';
import type { PlacedLeg } from '../../src/leg/route/route-leg.ts';
import { sharedFrequencyWarnings } from '../../src/leg/route/shared-frequency.ts';
import { lineOfSightNm } from '../../src/station/line-of-sight.ts';
import type { Station } from '../../src/station/station.ts';
import type { LibraryStation } from '../../src/station/library/library-station.ts';
import { megahertz, minutesSeconds, oneDecimal, threeFigures } from '../parts/figures.ts';
import { Field } from '../form/field.tsx';
import { MorseMarks } from '../parts/morse-marks.tsx';
import { FixTable } from './fix-table.tsx';
import { playStation } from './play-station.ts';
import { readOut } from './read-out.ts';
import type { PlannedRoute } from './read-route.ts';
import { legSpeech } from './route-speech.ts';
import { WithoutDme } from './without-dme.tsx';

interface LegSheetProps {
  readonly plan: PlannedRoute;
  readonly index: number;
  /** Moment at which the leg begins; null where the take-off is not known. */
  readonly beginsAtMs: number | null;
  /** Where a second station tells the place. */
  readonly fixes: readonly LegFix[];
  readonly aircraft: Aircraft;
  readonly fuelUnit: string;
  /** Other stations that may be heard on the frequency of this leg. */
  readonly alike: readonly { readonly station: LibraryStation; readonly distanceNm: number }[];
  /** The wind of this leg alone, as typed; empty: that of the whole flight. */
  readonly windText: string;
  readonly windProblem: string;
  readonly onWind: (text: string) => void;
}

/** One leg with all that is set, flown and watched on it. */
export function LegSheet(props: LegSheetProps): JSX.Element | null {
  const { plan, index, fixes, aircraft, fuelUnit } = props;
  const leg = plan.legs[index];
  const computed = plan.computed.legs[index];
  if (!leg || !computed) return null;
  const { station, direction } = leg;
  const { altitudeFt } = plan;
  const marks = legMarks(leg, { altitudeFt, groundSpeedKt: computed.groundSpeedKt });
  return (
    <article class="leg-sheet" aria-labelledby={`leg-${index}`}>
      <h3 id={`leg-${index}`} tabIndex={-1}>
        Leg {index + 1}: {direction === 'to' ? 'to' : 'from'} {station.ident}
      </h3>
      <Tuning {...props} station={station} />
      <Figures
        computed={computed}
        leg={leg}
        highNm={overHighGroundNm(leg, altitudeFt)}
        fuelUnit={fuelUnit}
      />
      <ul class="warnings">
        {[...computed.warnings, ...sharedFrequencyWarnings(props.alike)].map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      <ChangeOver {...props} />
      <OwnWind {...props} />
      <Marks marks={marks} beginsAtMs={props.beginsAtMs} />
      <FixTable fixes={fixes} groundSpeedKt={computed.groundSpeedKt} />
      {station.hasDme ? null : <WithoutDme {...{ leg, computed, fixes, aircraft }} />}
    </article>
  );
}

/** What is tuned and heard on a leg. */
function Tuning({
  plan,
  index,
  fixes,
  station,
}: LegSheetProps & { readonly station: Station }): JSX.Element {
  return (
    <p class="row wrap tuning">
      <b class="figure">
        {station.frequencyMhz === undefined ? '' : megahertz(station.frequencyMhz)}
      </b>
      <MorseMarks ident={station.ident} />
      <span class="soft">{phonetic(station.ident)}</span>
      <span class="no-print">
        <button
          type="button"
          class="quiet"
          aria-label={`Play it: ${station.ident}, leg ${index + 1}`}
          onClick={() => {
            playStation(station.ident);
          }}
        >
          Play it
        </button>
        <button
          type="button"
          class="quiet"
          aria-label={`Read it out: leg ${index + 1}`}
          onClick={() => {
            readOut((manner) => legSpeech(plan, index, fixes, manner));
          }}
        >
          Read it out
        </button>
      </span>
    </p>
  );
}

function variationWords(variationDegEast: number): string {
  return `${oneDecimal(Math.abs(variationDegEast))}° ${variationDegEast < 0 ? 'W' : 'E'}`;
}

/** Where the next station is tuned, when it is another one. */
function ChangeOver({ plan, index }: LegSheetProps): JSX.Element | null {
  const [leg, next, computed] = [plan.legs[index], plan.legs[index + 1], plan.computed.legs[index]];
  if (!leg || !next || !computed || leg.direction !== 'from' || next.direction !== 'to')
    return null;
  const { ident, frequencyMhz } = next.station;
  const { dmeAtEndNm, timeS } = computed;
  return (
    <p>
      <b>
        Change over to {ident} {frequencyMhz === undefined ? '' : megahertz(frequencyMhz)}
      </b>{' '}
      {dmeAtEndNm === null ? '' : `at DME ${oneDecimal(dmeAtEndNm)}, `}after {minutesSeconds(timeS)}
      , or as the chart says.
    </p>
  );
}

/** A wind for this leg alone. */
function OwnWind({ index, windText, windProblem, onWind }: LegSheetProps): JSX.Element {
  const name = `leg-wind-${index}`;
  return (
    <div class="fields no-print">
      <Field
        name={name}
        label={`Wind on leg ${index + 1}`}
        value={windText}
        problems={new Map(windProblem === '' ? [] : [[name, windProblem]])}
        onChange={onWind}
        hint="280/22, true; empty: as for the whole flight"
      />
    </div>
  );
}

/** A station that stands higher than this most likely has other high ground around it, ft. Common practice, no source. */
const HIGH_FT = 1_000;

/** The horizon where the ground all around is as high as the station; null for a low one, where it hardly differs. */
function overHighGroundNm({ station }: PlacedLeg, altitudeFt: number): number | null {
  if (station.elevationFt < HIGH_FT) return null;
  return lineOfSightNm(altitudeFt - station.elevationFt, 0);
}

function Figures({
  computed,
  leg: { direction },
  highNm,
  fuelUnit,
}: {
  readonly computed: ComputedLeg;
  readonly leg: PlacedLeg;
  readonly highNm: number | null;
  readonly fuelUnit: string;
}): JSX.Element {
  const drift = Math.round(computed.windCorrectionDeg);
  const figures: readonly (readonly [string, string])[] = [
    ['OBS', `${threeFigures(computed.courseDeg)} ${direction.toUpperCase()}`],
    ['Radial', threeFigures(computed.radialDeg)],
    ['Heading', threeFigures(computed.headingDeg)],
    ['Track, true', threeFigures(computed.trackTrueDeg)],
    ['Variation', variationWords(computed.variationDegEast)],
    [
      'Wind correction',
      drift === 0 ? 'none' : `${Math.abs(drift)}° ${drift > 0 ? 'right' : 'left'}`,
    ],
    ['Groundspeed', `${computed.groundSpeedKt.toFixed(0)} kt`],
    ['Distance', `${oneDecimal(computed.distanceNm)} NM`],
    ['Time', minutesSeconds(computed.timeS)],
    ...(computed.fuel > 0 ? [['Fuel', `${oneDecimal(computed.fuel)} ${fuelUnit}`] as const] : []),
    ...(computed.dmeAtStartNm === null || computed.dmeAtEndNm === null
      ? []
      : [
          [
            'DME',
            `${oneDecimal(computed.dmeAtStartNm)} to ${oneDecimal(computed.dmeAtEndNm)}`,
          ] as const,
        ]),
    ['Blind cone', `${oneDecimal(computed.coneRadiusNm)} NM each way`],
    ['Horizon, sea', `${computed.lineOfSightNm.toFixed(0)} NM`],
    ...(highNm === null ? [] : [['Horizon, high ground', `${highNm.toFixed(0)} NM`] as const]),
    [
      'Served to',
      computed.serviceVolumeNm === null ? 'no figure' : `${computed.serviceVolumeNm} NM`,
    ],
  ];
  return (
    <dl class="figures">
      {figures.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

const MARK_WORDS: Readonly<Record<LegMark['kind'], string>> = {
  start: 'Leg begins',
  dme: 'DME',
  'flag-off': 'Flag goes off, cone begins',
  'flag-on': 'Flag comes on, cone ends',
  end: 'Leg ends',
};

function Marks({
  marks,
  beginsAtMs,
}: {
  readonly marks: readonly LegMark[];
  readonly beginsAtMs: number | null;
}): JSX.Element {
  const hasDme = marks.some(({ dmeNm }) => dmeNm !== null);
  return (
    <table class="marks">
      <thead>
        <tr>
          <th scope="col">On the way</th>
          {hasDme ? <th scope="col">DME</th> : null}
          <th scope="col">After</th>
          {beginsAtMs === null ? null : <th scope="col">UTC</th>}
          <th scope="col">Seen</th>
        </tr>
      </thead>
      <tbody>
        {marks.map((mark) => (
          <tr key={`${mark.kind} ${mark.flownNm}`}>
            <th scope="row">{MARK_WORDS[mark.kind]}</th>
            {mark.dmeNm === null ? null : <td>{oneDecimal(mark.dmeNm)}</td>}
            <td>{minutesSeconds(mark.timeS)}</td>
            {beginsAtMs === null ? null : (
              <td>{new Date(beginsAtMs + mark.timeS * 1000).toISOString().slice(11, 16)}</td>
            )}
            <td class="blank" />
          </tr>
        ))}
      </tbody>
    </table>
  );
}
