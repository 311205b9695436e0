import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { readPracticeLog, writePracticeLog } from '../../src/ident/drill/read-log.ts';
import { FileInput } from '../form/file-input.tsx';
import { todayIso } from '../parts/today.ts';
import type { PracticeStore } from '../store/practice-store.ts';
import { saveFile } from '../parts/save-file.ts';

/** The practice log as a file, out and back in. */
export function PractiseFile({ store }: { readonly store: PracticeStore }): JSX.Element {
  const [said, setSaid] = useState('');
  const [problem, setProblem] = useState('');
  const save = (): void => {
    const text = writePracticeLog(store.events.peek());
    saveFile(
      new Blob([text], { type: 'application/json' }),
      `ident-practice-${todayIso(Date.now())}.json`,
    );
  };
  const take = async (file: File): Promise<void> => {
    setSaid('');
    setProblem('');
    const read = readPracticeLog(await file.text());
    if (!read.ok) {
      const first = read.problem[0];
      setProblem(
        `${file.name} was not taken in: ${first?.field ?? ''} should be ${first?.expected ?? ''}.`,
      );
      return;
    }
    const added = await store.merge(read.value);
    setSaid(
      added === 0
        ? 'Everything in it was here already.'
        : `${added} lines were taken in from ${file.name}.`,
    );
  };
  const count = store.practice.value.answers;
  return (
    <section aria-labelledby="file-title">
      <h3 id="file-title">The log</h3>
      <p class="soft">
        {count === 0
          ? 'Nothing answered yet.'
          : `${count} ${count === 1 ? 'answer' : 'answers'}, kept on this device only.`}{' '}
        A file takes it to another device; what both have is kept once.
      </p>
      <div class="row wrap">
        <button type="button" disabled={count === 0} onClick={save}>
          Save as a file
        </button>
        <FileInput
          id="practice-file"
          label="Take in a file"
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
