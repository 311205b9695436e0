import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Merge } from '../../src/station/library/merge-stations.ts';
import { importFile, type Importing } from './import-file.ts';
import { library, loadLibrary, putStations } from './library.ts';

type Stage =
  | { readonly kind: 'idle' }
  | { readonly kind: 'reading'; readonly rows: number; readonly fraction: number }
  | { readonly kind: 'done'; readonly merge: Merge; readonly undo: (() => Promise<void>) | null }
  | { readonly kind: 'problem'; readonly words: string };

/** Takes a file of navaids in: chosen or dropped, with progress, a tally, and a way back. */
export function ImportBox({ year }: { readonly year: number }): JSX.Element {
  const [stage, setStage] = useState<Stage>({ kind: 'idle' });
  const [importing, setImporting] = useState<Importing | null>(null);
  const [isOver, setIsOver] = useState(false);
  const fail = (error: unknown): void => {
    setStage({ kind: 'problem', words: error instanceof Error ? error.message : String(error) });
  };
  const take = async (file: File): Promise<void> => {
    try {
      setStage({ kind: 'reading', rows: 0, fraction: 0 });
      await loadLibrary();
      const running = importFile(file, library.peek() ?? new Map(), year, (rows, fraction) => {
        setStage({ kind: 'reading', rows, fraction });
      });
      setImporting(running);
      const merge = await running.done;
      const undo = merge.changes.length === 0 ? null : await putStations(merge.changes);
      setStage({ kind: 'done', merge, undo });
    } catch (error) {
      fail(error);
    } finally {
      setImporting(null);
    }
  };
  const takeFirst = (files: FileList | null | undefined): void => {
    const file = files?.[0];
    if (file && importing === null) void take(file);
  };
  return (
    <section
      class={isOver ? 'drop over' : 'drop'}
      aria-labelledby="import-title"
      onDragOver={(drag) => {
        drag.preventDefault();
        setIsOver(true);
      }}
      onDragLeave={() => {
        setIsOver(false);
      }}
      onDrop={(drop) => {
        drop.preventDefault();
        setIsOver(false);
        takeFirst(drop.dataTransfer?.files);
      }}
    >
      <h2 id="import-title">Bring in a file of navaids</h2>
      <p class="soft">
        An open navaid CSV, dropped here or chosen. It stays on this device. Such files are made by
        volunteers and out of date: check every figure against a current chart.
      </p>
      <p>
        <label class="button" for="navaid-file">
          Choose a file
        </label>
        <input
          id="navaid-file"
          class="hidden"
          type="file"
          accept=".csv,text/csv"
          disabled={importing !== null}
          onChange={(change) => {
            takeFirst(change.currentTarget.files);
            change.currentTarget.value = '';
          }}
        />
      </p>
      <div role="status">
        <StageWords
          stage={stage}
          onStop={importing?.cancel}
          onUndone={() => {
            setStage({ kind: 'idle' });
          }}
          onProblem={fail}
        />
      </div>
    </section>
  );
}

interface StageWordsProps {
  readonly stage: Stage;
  readonly onStop: (() => void) | undefined;
  readonly onUndone: () => void;
  readonly onProblem: (error: unknown) => void;
}

function StageWords({ stage, onStop, onUndone, onProblem }: StageWordsProps): JSX.Element | null {
  switch (stage.kind) {
    case 'idle':
      return null;
    case 'problem':
      return <p class="problem">{stage.words}</p>;
    case 'reading':
      return (
        <div class="row">
          <progress value={stage.fraction} aria-label="How far the file has been read" />
          <span>{stage.rows.toLocaleString('en')} lines</span>
          <button type="button" onClick={onStop}>
            Stop
          </button>
        </div>
      );
    case 'done':
      return <Tally merge={stage.merge} undo={stage.undo} {...{ onUndone, onProblem }} />;
  }
}

function Tally({
  merge,
  undo,
  onUndone,
  onProblem,
}: Pick<StageWordsProps, 'onUndone' | 'onProblem'> & {
  readonly merge: Merge;
  readonly undo: (() => Promise<void>) | null;
}): JSX.Element {
  const { added, updated, unchanged, skipped } = merge;
  const count = (number: number): string => number.toLocaleString('en');
  return (
    <>
      <p>
        <b>{count(added)} added</b>, {count(updated)} updated, {count(unchanged)} the same already,{' '}
        {count(skipped.length)} skipped.
        {undo === null ? null : (
          <button
            type="button"
            class="quiet"
            onClick={() => {
              undo().then(onUndone, onProblem);
            }}
          >
            Take it back
          </button>
        )}
      </p>
      {skipped.length === 0 ? null : (
        <details>
          <summary>Which lines were skipped, and why</summary>
          <Skipped merge={merge} />
        </details>
      )}
    </>
  );
}

/** The commonest reason first, with some of its lines; a world of beacons would fill the page. */
function Skipped({ merge }: { readonly merge: Merge }): JSX.Element {
  const lines = new Map<string, number[]>();
  for (const { line, reason } of merge.skipped)
    lines.set(reason, [...(lines.get(reason) ?? []), line]);
  const reasons = [...lines].toSorted(([, one], [, other]) => other.length - one.length);
  return (
    <ul>
      {reasons.map(([reason, at]) => (
        <li key={reason}>
          {reason} <span class="soft">{linesWords(at)}</span>
        </li>
      ))}
    </ul>
  );
}

function linesWords(lines: readonly number[]): string {
  const first = lines.slice(0, 12).join(', ');
  const name = lines.length === 1 ? 'Line' : 'Lines';
  return lines.length > 12
    ? `${name} ${first} and ${(lines.length - 12).toLocaleString('en')} more`
    : `${name} ${first}`;
}
