import type { JSX } from 'preact';
import type { ReadingFields } from '../../src/flight/event.ts';
import type { ReadingRecord } from '../../src/flight/state.ts';
import type { Reading } from '../../src/track/reading.ts';
import { takeBackReading } from './actions.ts';
import type { Deck } from './deck.ts';
import { needleWords, oneDecimal, threeFigures, timeOfDay } from './figures.ts';
import { Sheet } from './sheet.tsx';

/** All readings of the flight, newest first, with the answer that each gave. */
export function ReadingsSheet({ deck }: { readonly deck: Deck }): JSX.Element {
  const { readings } = deck.state.value;
  const close = (): void => {
    deck.sheet.value = null;
  };
  return (
    <Sheet title="Readings" onClose={close}>
      {readings.length === 0 ? <p class="soft">No readings yet.</p> : null}
      <ol class="readings">
        {readings.toReversed().map((record) => (
          <li key={record.eventId} class={record.isTakenBack ? 'taken-back' : ''}>
            <ReadingLine deck={deck} record={record} />
            {record.isTakenBack ? null : (
              <div class="row">
                <button
                  type="button"
                  onClick={() => {
                    deck.draft.given.value = {};
                    deck.draft.correcting.value = record;
                    close();
                  }}
                >
                  Correct
                </button>
                <button type="button" onClick={() => void takeBackReading(deck, record.eventId)}>
                  Take back
                </button>
              </div>
            )}
          </li>
        ))}
      </ol>
    </Sheet>
  );
}

/** One reading in figures, and what was answered. */
export function ReadingLine({
  deck,
  record,
}: {
  readonly deck: Deck;
  readonly record: ReadingRecord;
}): JSX.Element {
  const dots = deck.state.value.plan?.aircraft.dotsFullScale ?? 5;
  return (
    <div>
      <p>
        <b>{timeOfDay(record.atMs)}</b> <span class="soft">leg {record.legIndex + 1}</span>{' '}
        {readingWords(record.fields, record.reading, dots)}
        {record.isTakenBack ? <b> · taken back</b> : null}
        {record.isCorrected ? <span class="soft"> · corrected</span> : null}
      </p>
      {record.text === undefined ? null : <p class="soft">typed: {record.text}</p>}
      {record.problem.length === 0 ? null : (
        <p class="problem">
          Counts for nothing:{' '}
          {record.problem.map((each) => `expected ${each.expected}, not ${each.got}`).join('; ')}.
        </p>
      )}
      {record.advice === null ? null : <p>{record.advice.say}</p>}
    </div>
  );
}

function readingWords(fields: ReadingFields, reading: Reading, dotsFullScale: number): string {
  return [
    fields.headingDeg === undefined ? null : `heading ${threeFigures(fields.headingDeg)}`,
    fields.needleDots === undefined
      ? null
      : `needle ${needleWords(fields.needleDots, dotsFullScale)}`,
    reading.flag.toUpperCase(),
    fields.dmeNm === undefined ? null : `DME ${oneDecimal(fields.dmeNm)}`,
    `OBS ${threeFigures(reading.courseSetDeg)}`,
  ]
    .filter((part) => part !== null)
    .join(' · ');
}
