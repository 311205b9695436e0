import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { FileInput } from '../form/file-input.tsx';
import { importFile, type Importing } from './import-file.ts';
import type { ImportTally } from './import-messages.ts';
import { library, loadLibrary, putStations } from './library.ts';
import type { SkippedReason } from './skipped-reasons.ts';

type Stage =
  | { readonly kind: 'idle' }
  | { readonly kind: 'reading'; readonly lines: number; readonly fraction: number }
  | { readonly kind: 'keeping'; readonly count: number; readonly of: number }
  | {
      readonly kind: 'done';
      readonly tally: ImportTally;
      readonly undo: (() => Promise<void>) | null;
    }
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
      setStage({ kind: 'reading', lines: 0, fraction: 0 });
      await loadLibrary();
      const running = importFile(file, year, (lines, fraction) => {
        setStage({ kind: 'reading', lines, fraction });
      });
      setImporting(running);
      const { tally, changes: read } = await running.done;
      // One that was put right by hand while the file was read stays so.
      const changes = read.filter(({ id }) => library.peek()?.get(id)?.isByHand !== true);
      const keep = (count: number): void => {
        setStage({ kind: 'keeping', count, of: changes.length });
      };
      const undo = changes.length === 0 ? null : await putStations(changes, keep);
      setStage({ kind: 'done', tally, undo });
    } catch (error) {
      fail(error);
    } finally {
      setImporting(null);
    }
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
        const file = drop.dataTransfer?.files[0];
        if (file && importing === null) void take(file);
      }}
    >
      <h2 id="import-title">Bring in a file of navaids</h2>
      <p class="soft">
        An open navaid CSV, dropped here or chosen. It stays on this device. Such files are made by
        volunteers and out of date: check every figure against a current chart.
      </p>
      <p>
        <FileInput
          id="navaid-file"
          label="Choose a file"
          accept=".csv,text/csv"
          isDisabled={importing !== null}
          onFile={take}
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
          <span>{count(stage.lines)} lines</span>
          <button type="button" onClick={onStop}>
            Stop
          </button>
        </div>
      );
    case 'keeping':
      return (
        <div class="row">
          <progress value={stage.count} max={stage.of} aria-label="How many have been kept" />
          <span>
            {count(stage.count)} of {count(stage.of)} kept
          </span>
        </div>
      );
    case 'done':
      return <Tally tally={stage.tally} undo={stage.undo} {...{ onUndone, onProblem }} />;
  }
}

function count(number: number): string {
  return number.toLocaleString('en');
}

function Tally({
  tally,
  undo,
  onUndone,
  onProblem,
}: Pick<StageWordsProps, 'onUndone' | 'onProblem'> & {
  readonly tally: ImportTally;
  readonly undo: (() => Promise<void>) | null;
}): JSX.Element {
  const { added, updated, unchanged, skipped, warnings, reasons } = tally;
  return (
    <>
      <p>
        <b>{count(added)} added</b>, {count(updated)} updated, {count(unchanged)} the same already,{' '}
        {count(skipped)} skipped.
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
      {warnings.map((warning) => (
        <p key={warning} class="doubt">
          {warning}
        </p>
      ))}
      {skipped === 0 ? null : (
        <details>
          <summary>Which lines were skipped, and why</summary>
          <Skipped reasons={reasons} skipped={skipped} />
        </details>
      )}
    </>
  );
}

function Skipped({ reasons, skipped }: Pick<ImportTally, 'reasons' | 'skipped'>): JSX.Element {
  const told = reasons.reduce((sum, each) => sum + each.count, 0);
  return (
    <ul>
      {reasons.map((each) => (
        <li key={each.reason}>
          {each.reason} <span class="soft">{linesWords(each)}</span>
        </li>
      ))}
      {told < skipped ? <li>{count(skipped - told)} more lines for rarer reasons.</li> : null}
    </ul>
  );
}

function linesWords({ count: all, firstLines }: SkippedReason): string {
  const words = `${all === 1 ? 'Line' : 'Lines'} ${firstLines.join(', ')}`;
  return all > firstLines.length ? `${words} and ${count(all - firstLines.length)} more` : words;
}
