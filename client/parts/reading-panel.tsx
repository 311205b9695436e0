import type { JSX } from 'preact';
import { followsRadials } from '../../src/flight/expected.ts';
import { speaker } from '../voice/speaker.ts';
import { explain, undoLast } from './actions.ts';
import type { AnswerNow } from './answer-now.ts';
import { CourseSet } from './course-set.tsx';
import type { Deck } from './deck.ts';
import type { PanelValues } from './expected-panel.ts';
import { minutesSeconds, oneDecimal, threeFigures, timeOfDay } from './figures.ts';
import { FlagChoice } from './flag-choice.tsx';
import { GiveRow } from './give-row.tsx';
import { NeedleStrip } from './needle-strip.tsx';
import { Stepper } from './stepper.tsx';
import { TypedLine } from './typed-line.tsx';

interface PanelProps {
  readonly deck: Deck;
  readonly now: AnswerNow | null;
}

/** What the pilot reads off the panel: filled in with what is expected, corrected by a finger. */
export function ReadingPanel({ deck, now }: PanelProps): JSX.Element {
  const { draft } = deck;
  const isCorrecting = draft.correcting.value !== null;
  const hasForesight = deck.foresight.value !== null && !isCorrecting;
  const shown = draft.shown.value;
  const given = draft.given.value;
  const put = (part: Partial<PanelValues>): void => {
    deck.problem.value = null;
    draft.given.value = { ...draft.given.peek(), ...part };
  };
  return (
    <section class="read" aria-label="Reading">
      <ReadingHead deck={deck} now={now} />
      <NeedleStrip
        dotsFullScale={deck.state.value.plan?.aircraft.dotsFullScale ?? 5}
        value={shown.needleDots}
        expected={hasForesight ? draft.expected.value.needleDots : null}
        isGiven={'needleDots' in given || !hasForesight || draft.expected.value.needleDots === null}
        isDead={shown.flag === 'off'}
        onChange={(needleDots) => {
          put({ needleDots });
        }}
      />
      <div class="flag-row">
        <FlagChoice
          value={shown.flag}
          onChange={(flag) => {
            put({ flag });
          }}
        />
        <CourseSet
          courseDeg={shown.courseSetDeg}
          legCourseDeg={legCourseDeg(deck) ?? shown.courseSetDeg}
          onChange={(courseSetDeg) => {
            put({ courseSetDeg });
          }}
        />
      </div>
      <Figures deck={deck} hasForesight={hasForesight} put={put} />
      <TypedLine deck={deck} />
      <p class="problem" role="alert">
        {deck.problem.value}
      </p>
      <GiveRow deck={deck} />
      <AfterRow deck={deck} />
    </section>
  );
}

/** Which reading this is, and when the next one is worth most. */
function ReadingHead({ deck, now }: PanelProps): JSX.Element {
  const correcting = deck.draft.correcting.value;
  if (correcting !== null) {
    return <p class="read-head">Correcting the reading of {timeOfDay(correcting.atMs)} UTC</p>;
  }
  if (now === null) return <p class="read-head soft">First reading</p>;
  const inS = now.nextReadingInS;
  const isFlagDue = deck.draft.expected.value.mustReadFlag && !('flag' in deck.draft.given.value);
  return (
    <p class={inS <= 0 ? 'read-head act' : 'read-head soft'}>
      {inS <= 0 ? 'Next reading now' : `Next reading in ${minutesSeconds(inS)}`}
      {isFlagDue ? <b class="act"> · Read the flag</b> : null}
    </p>
  );
}

interface FiguresProps {
  readonly deck: Deck;
  readonly hasForesight: boolean;
  readonly put: (part: Partial<PanelValues>) => void;
}

/** DME, where there is one, and heading. */
function Figures({ deck, hasForesight, put }: FiguresProps): JSX.Element {
  const leg = deck.leg.value;
  const shown = deck.draft.shown.value;
  const given = deck.draft.given.value;
  const expected = deck.draft.expected.value;
  const inFigures = (value: number | null, show: (value: number) => string): string | null =>
    value === null || !hasForesight ? null : show(value);
  return (
    <div class="two">
      {leg?.station.hasDme === false ? (
        <p class="no-dme soft">No DME here: the turning needle and the time tell the distance.</p>
      ) : (
        <Stepper
          label="DME"
          unit="nautical miles"
          value={shown.dmeNm}
          startAt={10}
          show={oneDecimal}
          expected={inFigures(expected.dmeNm, oneDecimal)}
          isGiven={'dmeNm' in given}
          low={0}
          high={200}
          step={0.1}
          onChange={(dmeNm) => {
            put({ dmeNm });
          }}
        />
      )}
      <Stepper
        label="Heading"
        unit="degrees"
        value={shown.headingDeg}
        startAt={Math.round(leg?.courseDeg ?? 360)}
        show={threeFigures}
        expected={inFigures(expected.headingDeg, threeFigures)}
        isGiven={'headingDeg' in given}
        low={0}
        high={360}
        step={1}
        wraps
        onChange={(headingDeg) => {
          put({ headingDeg });
        }}
      />
    </div>
  );
}

function AfterRow({ deck }: { readonly deck: Deck }): JSX.Element {
  const { advice, undoable } = deck.state.value;
  return (
    <div class="after-row">
      <button
        type="button"
        onClick={() => {
          speaker.sayAgain();
        }}
      >
        Say again
      </button>
      <button
        type="button"
        aria-pressed={deck.isWhyShown.value}
        disabled={advice === null}
        onClick={() => {
          explain(deck);
        }}
      >
        Why
      </button>
      <button
        type="button"
        disabled={undoable === null}
        title={undoable?.what}
        onClick={() => void undoLast(deck)}
      >
        Undo
      </button>
    </div>
  );
}

/** The course that the OBS belongs on; null where it follows the radials. */
function legCourseDeg(deck: Deck): number | null {
  const { estimate } = deck.state.value;
  if (estimate !== null && followsRadials(estimate)) return null;
  return deck.leg.value?.courseDeg ?? null;
}
