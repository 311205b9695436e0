import type { JSX } from 'preact';
import { finishFlight } from './actions.ts';
import type { AnswerNow } from './answer-now.ts';
import type { Deck } from './deck.ts';
import { FarRow } from './far-row.tsx';
import { minutesSeconds, needleWords, oneDecimal, threeFigures } from './figures.ts';
import { TurnArrow } from './turn-arrow.tsx';

/** The answer: which way, one heading in very large figures, for how long, how far, and the words. */
export function Answer({
  deck,
  now,
}: {
  readonly deck: Deck;
  readonly now: AnswerNow;
}): JSX.Element {
  const { line } = now;
  return (
    <>
      <p class={`turn ${line.kind}${line.text.length > 34 ? ' long' : ''}`}>
        {line.turn === 'none' ? null : <TurnArrow to={line.turn} />}
        <span>{forTheEye(line.text)}</span>
      </p>
      <p class={now.isStale || now.isLeaving ? 'hdg stale' : 'hdg'}>
        <span class="hidden">Heading </span>
        {threeFigures(now.headingDeg)}
      </p>
      <Hold now={now} isArc={deck.leg.value?.arc !== undefined} />
      {now.isThere ? <FinishOffer deck={deck} /> : null}
      <Between deck={deck} now={now} />
      <FarRow deck={deck} now={now} />
      <Said deck={deck} now={now} />
    </>
  );
}

function Hold({ now, isArc }: { readonly now: AnswerNow; readonly isArc: boolean }): JSX.Element {
  const below = now.turnBelow === null ? null : <b>{now.turnBelow} · </b>;
  if (now.isLeaving) return <p class="then" />;
  if (now.holdLeftS === null) {
    return (
      <p class="then">
        {below}
        <span class="soft">
          {now.isStale ? `Given ${minutesSeconds(now.ageS)} ago` : 'Hold it until the next reading'}
        </span>
      </p>
    );
  }
  return (
    <div>
      <p class="then">
        {below}
        <span class="soft">Hold</span> {minutesSeconds(now.holdLeftS)}{' '}
        <span class="soft">then</span> {threeFigures(now.thenHeadingDeg)}{' '}
        <span class="soft">{isArc ? 'to follow the arc' : 'to stay on the radial'}</span>
      </p>
      <progress
        class="hold-bar"
        max={1}
        value={now.holdShare}
        aria-label="Part of the hold that has passed"
      />
    </div>
  );
}

/** At the end of the last leg what is left is one tap away; it can be undone. */
function FinishOffer({ deck }: { readonly deck: Deck }): JSX.Element {
  return (
    <p>
      <button type="button" class="hurry wide" onClick={() => void finishFlight(deck)}>
        Finish the flight
      </button>
    </p>
  );
}

/** What the panel should show by now if all goes as foreseen: a hint, not a reading. */
function Between({
  deck,
  now,
}: {
  readonly deck: Deck;
  readonly now: AnswerNow;
}): JSX.Element | null {
  const seen = deck.foresight.value;
  if (seen === null || now.ageS < 5) return <p class="between" />;
  const dots = deck.state.value.plan?.aircraft.dotsFullScale ?? 5;
  const parts = [
    seen.needleDots === null
      ? null
      : `needle ${needleWords(Math.round(seen.needleDots * 2) / 2, dots)}`,
    seen.flag === 'off' ? 'flag OFF' : `flag ${seen.flag.toUpperCase()}`,
    seen.dmeNm === null ? null : `DME ${oneDecimal(seen.dmeNm)}`,
  ].filter((part) => part !== null);
  return <p class="between soft">Expected now: {parts.join(', ')}</p>;
}

function Said({ deck, now }: { readonly deck: Deck; readonly now: AnswerNow }): JSX.Element {
  const call = deck.lastCall.value;
  const words = deck.isWhyShown.value ? now.advice.why : (call?.text ?? now.advice.say);
  return (
    <p class={deck.isWhyShown.value ? 'said why' : 'said'} role="status" aria-live="polite">
      {deck.isWhyShown.value ? <span class="soft">Why: </span> : null}
      {forTheEye(words)}
    </p>
  );
}

/** Letters that the voice is to say one by one are read as one word. */
function forTheEye(words: string): string {
  return words.replaceAll('O B S', 'OBS').replaceAll('D M E', 'DME');
}
