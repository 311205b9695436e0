import type { FlightEvent, ReadingFields } from './event.ts';
import type { LogLine } from './log.ts';
import type { FlightState } from './state.ts';

/**
 * The last event that an undo takes back, with what it was, in short words for the page.
 *
 * The plan is not undone but replaced; an event that is taken back, or that did nothing, is passed over.
 */
export function undoableIn(lines: readonly LogLine[]): FlightState['undoable'] {
  const standing = new Set(lines.filter((line) => !line.isTakenBack).map((line) => line.event.id));
  for (let i = lines.length - 1; i >= 0; i -= 1) {
    const line = lines[i];
    if (line === undefined || line.isTakenBack) continue;
    const what = whatWas(line.event, standing);
    if (what !== null) return { eventId: line.event.id, what };
  }
  return null;
}

function whatWas(event: FlightEvent, standing: ReadonlySet<string>): string | null {
  switch (event.kind) {
    case 'reading':
      return `reading ${fieldWords(event)}`;
    case 'reading-corrected':
      return standing.has(event.readingId) ? `correction to ${fieldWords(event)}` : null;
    case 'check':
      return `${event.item.replace('-', ' ')} ${event.outcome}`;
    case 'ident':
      return `ident ${event.outcome}`;
    case 'leg-started':
      return `start of leg ${event.legIndex + 1}`;
    case 'note':
      return `note "${event.text}"`;
    case 'finished':
      return 'end of the flight';
    case 'plan':
    case 'taken-back':
      return null;
    default:
      return null;
  }
}

function fieldWords({ headingDeg, courseSetDeg, needleDots, flag, dmeNm }: ReadingFields): string {
  const words = [
    headingDeg === undefined ? null : `heading ${String(Math.round(headingDeg)).padStart(3, '0')}`,
    courseSetDeg === undefined
      ? null
      : `course ${String(Math.round(courseSetDeg)).padStart(3, '0')}`,
    needleDots === undefined ? null : needleWords(needleDots),
    flag === undefined ? null : `flag ${flag.toUpperCase()}`,
    dmeNm === undefined ? null : `DME ${dmeNm.toFixed(1)}`,
  ].filter((each) => each !== null);
  return words.length === 0 ? 'with nothing in it' : words.join(', ');
}

function needleWords(dots: number): string {
  return dots === 0 ? 'needle centred' : `needle ${Math.abs(dots)} ${dots < 0 ? 'left' : 'right'}`;
}
