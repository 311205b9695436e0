import { turnDeg } from '../base/angle.ts';
import type { Leg } from '../leg/leg.ts';
import { datedLeg } from '../leg/leg-frame.ts';
import { spokenAngle, spokenBearing, spokenFrequency } from '../speech/numbers.ts';
import { phonetic } from '../speech/phonetic.ts';
import type { CheckContext, CheckItem } from './check-item.ts';
import { headingOnCourseDeg } from './heading-on-course.ts';
import { LEAST_TURN_DEG, headingWords } from './phrases.ts';

/** The words of one item: spoken, and short in figures for the page. */
export interface CheckWords {
  readonly say: string;
  readonly show: string;
}

/** What the words of one item depend on. */
export interface CheckScene {
  readonly leg: Leg;
  /** The leg before is flown on the same station, so its passage has started the clock. */
  readonly hasPassed: boolean;
  readonly context: CheckContext;
}

/** What is said and shown for one item of a leg's checklist. */
export function lineFor(item: CheckItem, scene: CheckScene): CheckWords {
  const { leg, context } = scene;
  switch (item) {
    case 'tune':
      return tuneWords(leg, context);
    case 'identify':
      return {
        say: `Identify ${phonetic(leg.station.ident)}. Listen to the Morse.`,
        show: `Identify ${leg.station.ident}`,
      };
    case 'flags':
      return flagWords(leg);
    case 'set-course':
      return courseWords(leg);
    case 'turn':
      return turnWords(scene);
    case 'look-out':
      return { say: 'Look out.', show: 'Look out' };
  }
}

function tuneWords({ station }: Leg, { manner }: CheckContext): CheckWords {
  if (station.frequencyMhz === undefined) {
    return {
      say: `Tune ${phonetic(station.ident)}. I have no frequency: take it from the chart.`,
      show: `Tune ${station.ident}: frequency from the chart`,
    };
  }
  return {
    say: `Tune ${spokenFrequency(station.frequencyMhz, manner)}.`,
    show: `Tune ${station.frequencyMhz.toFixed(2)}`,
  };
}

function flagWords({ station }: Leg): CheckWords {
  return station.hasDme
    ? {
        say: 'Check the flags: needle alive, D M E showing a distance.',
        show: 'Flags: needle alive, DME showing',
      }
    : { say: 'Check the flags: needle alive.', show: 'Flags: needle alive' };
}

function courseWords({ courseDeg, direction }: Leg): CheckWords {
  const flag = direction === 'to' ? 'TO' : 'FROM';
  return {
    say: `Set course ${spokenBearing(courseDeg)} on the O B S. Check the flag shows ${flag}.`,
    show: `OBS ${figures(courseDeg)}, flag ${flag}`,
  };
}

function turnWords({ leg, hasPassed, context }: CheckScene): CheckWords {
  // Outbound the distance of a leg without DME is flown by the clock, so it starts with the turn.
  const clock = leg.direction === 'from' && !hasPassed ? ' Start the clock.' : '';
  const headingDeg = context.headingAdvisedDeg ?? headingInWindDeg(leg, context);
  if (headingDeg === null) {
    return {
      say: `Turn onto course. I cannot tell the heading.${clock}`,
      show: 'Turn onto course; heading unknown',
    };
  }
  const turn = context.headingNowDeg === undefined ? 0 : turnDeg(context.headingNowDeg, headingDeg);
  const how =
    context.headingNowDeg === undefined
      ? `Turn onto ${headingWords(headingDeg)}`
      : Math.abs(turn) < LEAST_TURN_DEG
        ? `Hold ${headingWords(headingDeg)}`
        : `Turn ${turn < 0 ? 'left' : 'right'} ${spokenAngle(turn)}, ${headingWords(headingDeg)}`;
  const wind = context.wind === undefined ? ' No wind known yet.' : '';
  return { say: `${how}.${wind}${clock}`, show: `Heading ${figures(headingDeg)}` };
}

function headingInWindDeg(leg: Leg, { aircraft, dateIso, wind }: CheckContext): number | null {
  const dated = datedLeg(leg, dateIso);
  return dated.ok ? headingOnCourseDeg(dated.value, aircraft, wind) : null;
}

/** Three figures, north as 360, as on the page. */
function figures(bearingDeg: number): string {
  const rounded = Math.round(bearingDeg) % 360;
  return String(rounded === 0 ? 360 : rounded).padStart(3, '0');
}
