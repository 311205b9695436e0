import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { readCheckLog, writeCheckLog } from '../../src/station/library/check-file.ts';
import { FileInput } from '../form/file-input.tsx';
import { saveFile } from '../parts/save-file.ts';
import { nowMs } from '../parts/clock.ts';
import type { CheckStore } from './check-store.ts';
import { minuteUtc } from './check-words.ts';

/** The log on paper, as a table, and as a file that another device takes in. */
export function CheckFiles({ store }: { readonly store: CheckStore }): JSX.Element {
  const [said, setSaid] = useState('');
  const [problem, setProblem] = useState('');
  const isEmpty = store.events.value.length === 0;
  const save = (text: string, type: string, ending: string): void => {
    const day = minuteUtc(nowMs.peek()).slice(0, 10);
    saveFile(new Blob([text], { type }), `receiver-checks-${day}.${ending}`);
  };
  const saveCsv = (): void => {
    // Fetched when it is first asked for.
    import('./check-csv.ts').then(
      ({ checksCsv }) => {
        save(checksCsv(store.checks.peek()), 'text/csv', 'csv');
      },
      () => {
        setProblem('What writes the CSV could not be fetched. Try again with the server in reach.');
      },
    );
  };
  const take = async (file: File): Promise<void> => {
    setSaid('');
    setProblem('');
    const read = readCheckLog(await file.text(), minuteUtc(nowMs.peek()));
    if (!read.ok) {
      const first = read.problem[0];
      setProblem(
        `${file.name} was not taken in: ${first?.field ?? ''} should be ${first?.expected ?? ''}.`,
      );
      return;
    }
    setSaid(takenWords(await store.merge(read.value), file.name));
  };
  return (
    <section class="no-print" aria-labelledby="files-title">
      <h2 id="files-title">Print it, take it along</h2>
      <p class="soft">
        Kept on this device only. The JSON file takes it to another; what both have is kept once.
      </p>
      <div class="row wrap">
        <button
          type="button"
          disabled={isEmpty}
          onClick={() => {
            print();
          }}
        >
          Print
        </button>
        <button type="button" disabled={isEmpty} onClick={saveCsv}>
          Save as CSV
        </button>
        <button
          type="button"
          disabled={isEmpty}
          onClick={() => {
            save(writeCheckLog(store.events.peek()), 'application/json', 'json');
          }}
        >
          Save as JSON
        </button>
        <FileInput
          id="checks-file"
          label="Take in a JSON file"
          accept="application/json,.json"
          onFile={(file) =>
            take(file).catch(() => {
              setProblem('The file could not be read or kept.');
            })
          }
        />
      </div>
      <p role="status">{said}</p>
      <p class="problem" role="alert">
        {problem}
      </p>
    </section>
  );
}

function takenWords(added: number, name: string): string {
  if (added === 0) return 'Everything in it was here already.';
  return `${added} ${added === 1 ? 'line was' : 'lines were'} taken in from ${name}.`;
}
