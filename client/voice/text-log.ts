import { signal, type ReadonlySignal } from '@preact/signals';

/** What became of something that was to be said. */
export type SpokenOutcome =
  'waiting' | 'speaking' | 'spoken' | 'muted' | 'replaced' | 'too-late' | 'no-voice';

/** One entry of the text log. */
export interface SpokenLine {
  readonly id: number;
  readonly text: string;
  readonly atMs: number;
  readonly outcome: SpokenOutcome;
}

/** What the log keeps on the page; a flight says a few hundred things. */
const MOST_LINES = 500;

const lines = signal<readonly SpokenLine[]>([]);

/** Everything that was to be said on this page, spoken or muted, oldest first. */
export const spoken: ReadonlySignal<readonly SpokenLine[]> = lines;

/** Adds a line. */
export function noteLine(line: SpokenLine): void {
  lines.value = [...lines.peek(), line].slice(-MOST_LINES);
}

/** Tells what has become of a line. */
export function noteOutcome(id: number, outcome: SpokenOutcome): void {
  lines.value = lines
    .peek()
    .map((line) => (line.id === id && line.outcome !== outcome ? { ...line, outcome } : line));
}
