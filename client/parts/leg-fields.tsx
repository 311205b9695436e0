import type { JSX } from 'preact';
import { boundTo, type Problems } from '../form/bound.ts';
import { Choice } from '../form/choice.tsx';
import { Field } from '../form/field.tsx';
import type { LegDraft } from './plan-draft.ts';

interface LegFieldsProps {
  readonly index: number;
  readonly leg: LegDraft;
  readonly problems: Problems;
  readonly onChange: (part: Partial<LegDraft>) => void;
  /** Left out where it is the only leg. */
  readonly onRemove?: () => void;
}

/** One leg to type in: the station as the chart gives it, then how it is flown. */
export function LegFields({
  index,
  leg,
  problems,
  onChange,
  onRemove,
}: LegFieldsProps): JSX.Element {
  const at = `legs.${index}`;
  const of = boundTo(leg, onChange, problems);
  return (
    <section class="leg-fields" aria-labelledby={`leg-title-${index}`}>
      <div class="leg-head">
        <h2 id={`leg-title-${index}`}>Leg {index + 1}</h2>
        {onRemove === undefined ? null : (
          <button type="button" class="quiet" onClick={onRemove}>
            Take leg {index + 1} out
          </button>
        )}
      </div>
      <div class="fields">
        <Field
          {...of('ident')}
          name={`${at}.station.ident`}
          label="Station ident"
          hint="As on the chart: QEV"
        />
        <Field
          {...of('frequency')}
          name={`${at}.station.frequencyMhz`}
          label="Frequency"
          unit="MHz"
          isNumber
          hint="108.00 to 117.95"
        />
        <Field
          {...of('latitude')}
          name={`${at}.station.latitudeDeg`}
          label="Latitude"
          hint="46.5 N or 46 30.0 N"
        />
        <Field
          {...of('longitude')}
          name={`${at}.station.longitudeDeg`}
          label="Longitude"
          hint="21.25 W or 21 15.0 W"
        />
        <Field
          {...of('elevation')}
          name={`${at}.station.elevationFt`}
          label="Elevation"
          unit="ft"
          isNumber
        />
        <Field
          {...of('declination')}
          name={`${at}.station.declinationDegEast`}
          label="Station declination"
          hint="7 W or 2.5 E: what its radials are aligned to"
        />
        <Choice name={`${at}.dme`} label="DME" {...of('dme')} words={{ yes: 'Yes', no: 'No' }} />
        <Choice
          name={`${at}.direction`}
          label="Flown"
          {...of('direction')}
          words={{ to: 'To it', from: 'From it', arc: 'DME arc' }}
        />
        {leg.direction === 'arc' ? (
          <Choice
            name={`${at}.arcJoined`}
            label="Arc joined while flying"
            {...of('arcJoined')}
            words={{ to: 'Inbound', from: 'Outbound' }}
          />
        ) : null}
        <Field
          {...of('course')}
          name={`${at}.courseDeg`}
          label="Course on the OBS"
          unit="degrees"
          isNumber
          hint={leg.direction === 'arc' ? 'The course flown until the arc' : '001 to 360'}
        />
        <Field {...of('altitude')} name={`${at}.altitudeFt`} label="Altitude" unit="ft" isNumber />
        {leg.direction === 'arc' ? (
          <ArcFields at={at} leg={leg} problems={problems} onChange={onChange} />
        ) : null}
        {leg.dme === 'no' || leg.direction === 'arc' ? null : (
          <Field
            {...of('endDme')}
            name={`${at}.endDmeNm`}
            label="DME where the leg ends"
            unit="NM"
            isNumber
            hint={leg.direction === 'to' ? 'Empty: over the station' : 'Empty: no end known'}
          />
        )}
      </div>
    </section>
  );
}

/** The arc: how far out, which way round, and the radial where it ends. */
function ArcFields({
  at,
  leg,
  problems,
  onChange,
}: Pick<LegFieldsProps, 'leg' | 'problems' | 'onChange'> & { readonly at: string }): JSX.Element {
  const of = boundTo(leg, onChange, problems);
  return (
    <>
      <Field name={`${at}.arc.dmeNm`} label="DME on the arc" unit="NM" isNumber {...of('arcDme')} />
      <Choice
        name={`${at}.arc.turn`}
        label="Round the station"
        {...of('arcTurn')}
        words={{ clockwise: 'Clockwise', anticlockwise: 'Anticlockwise' }}
      />
      <Field
        name={`${at}.arc.toRadialDeg`}
        label="To the radial"
        unit="degrees"
        isNumber
        hint="Where the arc ends: 001 to 360"
        {...of('arcRadial')}
      />
    </>
  );
}
