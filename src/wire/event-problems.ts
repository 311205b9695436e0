import type { FieldProblem } from '../base/result.ts';
import type { FlightEvent } from '../flight/event.ts';
import { checkAircraft } from '../leg/check-aircraft.ts';
import { checkLeg } from '../leg/check-leg.ts';
import { checkWind } from '../wind/check-wind.ts';
import { checkReading } from '../track/check-reading.ts';
import { problemsIn } from './problems-in.ts';

/**
 * The widest scale of a course indicator that there is. A log may hold readings made under another plan,
 * or before the plan arrived from a second device; refusing those would lose what was recorded. So here
 * the needle has to lie on some instrument, not on this aircraft's.
 */
const WIDEST = { trueAirspeedKt: 100, degreesPerDot: 1, dotsFullScale: 10 };

/**
 * What is wrong with the numbers of an event that has passed its schema; empty when nothing is.
 *
 * `field`: where the event stands in the input (`events.3`). What an event means together with the others
 * is the fold's matter, not judged here.
 */
export function eventProblems(event: FlightEvent, field: string): readonly FieldProblem[] {
  switch (event.kind) {
    case 'plan':
      return [
        ...event.legs.flatMap((leg, index) => problemsIn(checkLeg(leg, `${field}.legs.${index}`))),
        ...problemsIn(checkAircraft(event.aircraft, `${field}.aircraft`)),
        ...(event.forecastWind === undefined
          ? []
          : problemsIn(checkWind(event.forecastWind, `${field}.forecastWind`))),
        ...(event.legWinds ?? []).flatMap(({ wind }, index) =>
          problemsIn(checkWind(wind, `${field}.legWinds.${index}.wind`)),
        ),
      ];
    case 'reading':
    case 'reading-corrected':
      return problemsIn(checkReading({ courseSetDeg: 0, flag: 'off', ...event }, WIDEST, field));
    case 'check':
    case 'finished':
    case 'ident':
    case 'leg-started':
    case 'note':
    case 'taken-back':
      return [];
  }
}
