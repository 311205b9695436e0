import type { JSX } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import '../form.css';
import { chosenAircraft, changeSettings, settings } from '../settings/settings.ts';
import { createFlight } from '../store/flight-store.ts';
import { BeforeFlight } from '../parts/before-flight.tsx';
import { nowMs } from '../parts/clock.ts';
import { boundTo, type Problems } from '../form/bound.ts';
import { Field, focusFirstProblem } from '../form/field.tsx';
import { problemTexts } from '../form/problem-texts.ts';
import { Select } from '../form/select.tsx';
import { LegFields } from '../parts/leg-fields.tsx';
import {
  emptyPlan,
  forgetDraft,
  keptDraft,
  legAfter,
  readPlan,
  type LegDraft,
} from '../parts/plan-draft.ts';
import { addressOf, goTo } from '../parts/route.ts';
import { todayIso } from '../parts/today.ts';

/** A leg, or several, typed in by the pilot. */
export function PlanPage(): JSX.Element {
  const draft = useMemo(() => keptDraft(todayIso(nowMs.peek())), []);
  const [problems, setProblems] = useState<Problems>(new Map());
  const [failure, setFailure] = useState('');
  const plan = draft.value;
  const change = (part: Partial<typeof plan>): void => {
    draft.value = { ...draft.peek(), ...part };
  };
  const changeLeg = (index: number, part: Partial<LegDraft>): void => {
    change({
      legs: draft.peek().legs.map((leg, at) => (at === index ? { ...leg, ...part } : leg)),
    });
  };
  const make = async (): Promise<void> => {
    const read = readPlan(draft.peek(), chosenAircraft.peek());
    setProblems(read.ok ? new Map() : problemTexts(read.problem));
    if (!read.ok) {
      focusFirstProblem();
      return;
    }
    try {
      const flightId = await createFlight(read.value);
      draft.value = emptyPlan(todayIso(nowMs.peek()));
      forgetDraft();
      goTo({ page: 'fly', flightId });
    } catch (error) {
      setFailure(error instanceof Error ? error.message : String(error));
    }
  };
  const of = boundTo(plan, change, problems);
  return (
    <main class="plain">
      <p class="back">
        <a href={addressOf({ page: 'flights' })}>All flights</a>
      </p>
      <h1 tabIndex={-1}>Type in a leg</h1>
      <p class="soft">
        Take every figure from a current chart. What you type is kept on this device until you fly
        it.
      </p>
      <form
        novalidate
        onSubmit={(submit) => {
          submit.preventDefault();
          void make();
        }}
      >
        {plan.legs.map((leg, index) => (
          <LegFields
            key={index}
            index={index}
            leg={leg}
            problems={problems}
            onChange={(part) => {
              changeLeg(index, part);
            }}
            {...(plan.legs.length > 1
              ? {
                  onRemove: () => {
                    change({ legs: plan.legs.filter((_, at) => at !== index) });
                  },
                }
              : {})}
          />
        ))}
        <p>
          <button
            type="button"
            onClick={() => {
              change({ legs: [...plan.legs, legAfter(plan.legs.at(-1))] });
            }}
          >
            Add a leg
          </button>
        </p>
        <section aria-labelledby="air-title">
          <h2 id="air-title">Aircraft and air</h2>
          <div class="fields">
            <AircraftField problems={problems} />
            <Field
              {...of('date')}
              name="dateIso"
              label="Day of the flight"
              isDate
              hint="For the magnetic variation"
            />
            <Field
              {...of('windFrom')}
              name="forecastWind.fromDegTrue"
              label="Forecast wind from"
              unit="° true"
              isNumber
              hint="Empty: not known"
            />
            <Field
              {...of('windSpeed')}
              name="forecastWind.speedKt"
              label="Wind speed"
              unit="kt"
              isNumber
            />
            <Field
              {...of('name')}
              name="name"
              label="Name of the flight"
              hint="Empty: the idents"
            />
          </div>
        </section>
        <p class="problem" role="alert">
          {problems.size === 0
            ? failure
            : `${problems.size === 1 ? 'One field needs' : `${problems.size} fields need`} another look.`}
        </p>
        <BeforeFlight />
        <p>
          <button type="submit" class="main hurry wide">
            Ready to fly
          </button>
        </p>
      </form>
    </main>
  );
}

function AircraftField({ problems }: { readonly problems: Problems }): JSX.Element {
  const { trueAirspeedKt, degreesPerDot, dotsFullScale, name } = chosenAircraft.value;
  const problem = [...problems].find(([field]) => field.startsWith('aircraft'))?.[1];
  return (
    <Select
      id="field-aircraft"
      label="Aircraft"
      value={name}
      options={settings.value.aircraft.map((each) => ({ value: each.name, name: each.name }))}
      onChange={(chosen) => {
        changeSettings({ chosenAircraft: chosen });
      }}
      isWrong={problem !== undefined}
      hint={
        <>
          {problem ??
            `${trueAirspeedKt} kt true, one dot is ${degreesPerDot}°, full scale ${dotsFullScale} dots. `}
          <a href={addressOf({ page: 'settings' })}>Change it in the settings</a>
        </>
      }
    />
  );
}
