import { computed, signal, type ReadonlySignal, type Signal } from '@preact/signals';
import type { FlightState, ReadingRecord } from '../../src/flight/state.ts';
import type { ReadingFields } from '../../src/flight/event.ts';
import type { Leg } from '../../src/leg/leg.ts';
import type { Foresight } from '../../src/track/foresight.ts';
import type { Flag } from '../../src/track/reading.ts';

/** What the reading panel shows. Null: not read, or nothing to expect. */
export interface PanelValues {
  readonly headingDeg: number | null;
  readonly courseSetDeg: number;
  readonly needleDots: number | null;
  readonly flag: Flag;
  readonly dmeNm: number | null;
}

/** What the pilot has put in since the last reading; the rest follows what is expected. */
export interface ReadingDraft {
  readonly given: Signal<Partial<PanelValues>>;
  readonly expected: ReadonlySignal<PanelValues>;
  readonly shown: ReadonlySignal<PanelValues>;
  /** The reading that is being corrected; null: a new one. */
  readonly correcting: Signal<ReadingRecord | null>;
}

/** Opens a draft that follows the flight. */
export function openDraft(
  state: ReadonlySignal<FlightState>,
  leg: ReadonlySignal<Leg | null>,
  foresight: ReadonlySignal<Foresight | null>,
): ReadingDraft {
  const given = signal<Partial<PanelValues>>({});
  const correcting = signal<ReadingRecord | null>(null);
  const expected = computed(() => expectedPanel(state.value, leg.value, foresight.value));
  const shown = computed(() => {
    const record = correcting.value;
    const base = record === null ? expected.value : panelOf(record);
    return { ...base, ...given.value };
  });
  return { given, expected, shown, correcting };
}

/** The last reading of the leg that stands. */
function lastReadingOf(state: FlightState): ReadingRecord | null {
  return (
    state.readings.findLast((each) => !each.isTakenBack && each.legIndex === state.legIndex) ?? null
  );
}

function expectedPanel(
  state: FlightState,
  leg: Leg | null,
  foresight: Foresight | null,
): PanelValues {
  const courseSetDeg = lastReadingOf(state)?.reading.courseSetDeg ?? leg?.courseDeg ?? 0;
  if (foresight === null) {
    const flag = leg?.direction ?? 'to';
    return { headingDeg: null, courseSetDeg, needleDots: null, flag, dmeNm: null };
  }
  return {
    headingDeg: Math.round(foresight.headingDeg),
    courseSetDeg,
    needleDots: toHalf(foresight.needleDots),
    flag: foresight.flag,
    dmeNm: toTenth(foresight.dmeNm),
  };
}

function panelOf({ fields, reading }: ReadingRecord): PanelValues {
  return {
    headingDeg: fields.headingDeg ?? null,
    courseSetDeg: reading.courseSetDeg,
    needleDots: fields.needleDots ?? null,
    flag: reading.flag,
    dmeNm: fields.dmeNm ?? null,
  };
}

function toHalf(dots: number | null): number | null {
  return dots === null ? null : Math.round(dots * 2) / 2;
}

function toTenth(distanceNm: number | null): number | null {
  return distanceNm === null ? null : Math.round(distanceNm * 10) / 10;
}

/** The fields of the reading that the panel shows; what was not read is left out. */
export function fieldsOf(shown: PanelValues): ReadingFields {
  return {
    courseSetDeg: shown.courseSetDeg,
    flag: shown.flag,
    ...(shown.headingDeg === null ? {} : { headingDeg: shown.headingDeg % 360 }),
    ...(shown.needleDots === null || shown.flag === 'off' ? {} : { needleDots: shown.needleDots }),
    ...(shown.dmeNm === null ? {} : { dmeNm: shown.dmeNm }),
  };
}
