import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { clearDraft, explain, giveShown, undoLast } from './actions.ts';
import type { Deck } from './deck.ts';
import { oneDecimal, threeFigures, timeOfDay } from './figures.ts';
import { FlagChoice } from './flag-choice.tsx';
import { Keypad } from './keypad.tsx';
import { NeedleStrip } from './needle-strip.tsx';
import type { PanelValues } from './reading-draft.ts';
import { Stepper } from './stepper.tsx';
import { TypedLine } from './typed-line.tsx';
import { speaker } from '../voice/speaker.ts';

/** What the pilot reads off the panel: filled in with what is expected, corrected by a finger. */
export function ReadingPanel({ deck }: { readonly deck: Deck }): JSX.Element {
  const { draft } = deck;
  const plan = deck.state.value.plan;
  const leg = deck.leg.value;
  const shown = draft.shown.value;
  const given = draft.given.value;
  const correcting = draft.correcting.value;
  const hasForesight = deck.foresight.value !== null && correcting === null;
  const expected = draft.expected.value;
  const put = (part: Partial<PanelValues>): void => {
    draft.given.value = { ...draft.given.peek(), ...part };
  };
  return (
    <section class="read" aria-label="Reading">
      {correcting === null ? null : (
        <p class="correcting">Correcting the reading of {timeOfDay(correcting.atMs)}</p>
      )}
      <NeedleStrip
        dotsFullScale={plan?.aircraft.dotsFullScale ?? 5}
        value={shown.needleDots}
        expected={hasForesight ? expected.needleDots : null}
        isGiven={'needleDots' in given || correcting !== null}
        isDead={shown.flag === 'off'}
        onChange={(needleDots) => put({ needleDots })}
      />
      <div class="flag-row">
        <FlagChoice value={shown.flag} onChange={(flag) => put({ flag })} />
        <CourseSet
          courseDeg={shown.courseSetDeg}
          legCourseDeg={leg?.courseDeg ?? shown.courseSetDeg}
          onChange={(courseSetDeg) => put({ courseSetDeg })}
        />
      </div>
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
            expected={hasForesight && expected.dmeNm !== null ? oneDecimal(expected.dmeNm) : null}
            isGiven={'dmeNm' in given || correcting !== null}
            low={0}
            high={200}
            step={0.1}
            onChange={(dmeNm) => put({ dmeNm })}
          />
        )}
        <Stepper
          label="Heading"
          unit="degrees"
          value={shown.headingDeg}
          startAt={Math.round(leg?.courseDeg ?? 360)}
          show={threeFigures}
          expected={
            hasForesight && expected.headingDeg !== null ? threeFigures(expected.headingDeg) : null
          }
          isGiven={'headingDeg' in given || correcting !== null}
          low={0}
          high={360}
          step={1}
          wraps
          onChange={(headingDeg) => put({ headingDeg })}
        />
      </div>
      <TypedLine deck={deck} />
      <GiveRow deck={deck} hasForesight={hasForesight} />
      <div class="after-row">
        <button type="button" onClick={() => speaker.sayAgain()}>
          Say again
        </button>
        <button
          type="button"
          aria-pressed={deck.isWhyShown.value}
          disabled={deck.state.value.advice === null}
          onClick={() => explain(deck)}
        >
          Why
        </button>
        <button
          type="button"
          disabled={deck.state.value.undoable === null}
          title={deck.state.value.undoable?.what}
          onClick={() => void undoLast(deck)}
        >
          Undo
        </button>
      </div>
    </section>
  );
}

/**
 * The two buttons that give the reading: always in the same places, the likelier one filled. Once a
 * value has been touched, the left one lets all values follow what is expected again.
 */
function GiveRow({
  deck,
  hasForesight,
}: {
  readonly deck: Deck;
  readonly hasForesight: boolean;
}): JSX.Element {
  const isTouched = Object.keys(deck.draft.given.value).length > 0;
  const isCorrecting = deck.draft.correcting.value !== null;
  const isAsExpected = hasForesight && !isTouched;
  const clearName = isCorrecting ? 'Leave it' : 'Clear';
  return (
    <div class="give-row">
      {isTouched || isCorrecting ? (
        <button type="button" onClick={() => clearDraft(deck)}>
          {clearName}
        </button>
      ) : (
        <button
          type="button"
          class={isAsExpected ? 'main' : ''}
          disabled={!isAsExpected}
          onClick={() => void giveShown(deck)}
        >
          As expected
        </button>
      )}
      <button type="button" class={isAsExpected ? '' : 'main'} onClick={() => void giveShown(deck)}>
        {isCorrecting ? 'Correct it' : 'Give reading'}
      </button>
    </div>
  );
}

interface CourseSetProps {
  readonly courseDeg: number;
  readonly legCourseDeg: number;
  readonly onChange: (courseDeg: number) => void;
}

/** The course set on the OBS; it says so when that is not the course of the leg. */
function CourseSet({ courseDeg, legCourseDeg, onChange }: CourseSetProps): JSX.Element {
  const [isTyping, setTyping] = useState(false);
  const isOther = Math.round(courseDeg) !== Math.round(legCourseDeg);
  return (
    <>
      <button
        type="button"
        class={isOther ? 'course-set other' : 'course-set'}
        aria-label={`Course set on the OBS ${threeFigures(courseDeg)}, change it`}
        onClick={() => setTyping(true)}
      >
        <span class="soft">{isOther ? 'OBS, not leg' : 'OBS'}</span>
        <b>{threeFigures(courseDeg)}</b>
      </button>
      {isTyping ? (
        <Keypad
          title="Course set on the OBS"
          unit="degrees"
          low={0}
          high={360}
          hasDecimal={false}
          onSet={(value) => {
            onChange(value % 360);
            setTyping(false);
          }}
          onClose={() => setTyping(false)}
        />
      ) : null}
    </>
  );
}
