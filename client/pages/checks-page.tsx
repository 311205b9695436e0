import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import '../form.css';
import '../checks/checks.css';
import type { ReceiverCheck } from '../../src/station/library/receiver-check.ts';
import { CheckFiles } from '../checks/check-files.tsx';
import { CheckForm } from '../checks/check-form.tsx';
import { CheckRow } from '../checks/check-row.tsx';
import { openChecks, type CheckStore } from '../checks/check-store.ts';
import { chooseRules } from '../checks/check-rules.ts';
import { outcomeWords } from '../checks/check-words.ts';
import { DueList } from '../checks/due-list.tsx';
import { RulesSection } from '../checks/rules-section.tsx';
import { addressOf } from '../parts/route.ts';
import { Sheet } from '../parts/sheet.tsx';

/** The log of VOR receiver checks: what was found, and when each receiver is next due. */
export function ChecksPage(): JSX.Element {
  const [store, setStore] = useState<CheckStore | null>(null);
  const [problem, setProblem] = useState('');
  const fail = (error: unknown): void => {
    setProblem(error instanceof Error ? error.message : String(error));
  };
  useEffect(() => void openChecks().then(setStore, fail), []);
  return (
    <main class="plain checks">
      <p class="back">
        <a href={addressOf({ page: 'flights' })}>All flights</a>
      </p>
      <h1 tabIndex={-1}>Receiver checks</h1>
      <p class="on-paper">
        <b>VOR receiver checks</b>, times in UTC
      </p>
      <p class="problem" role="alert">
        {problem}
      </p>
      {store === null ? null : (
        <ChecksDesk
          store={store}
          onFail={() => {
            setProblem('This device did not keep it: is its storage full?');
          }}
        />
      )}
      <ul class="cautions">
        <li>
          14 CFR 91.171 is the rule of one state, for IFR. <b>Check your own regulation</b> and the
          aircraft’s papers.
        </li>
        <li>
          A pass tells how the receiver was then. It is <b>no proof that it is right now</b>:
          identify every station and cross-check.
        </li>
        <li>
          Apply no correction to a receiver but its maker’s card. A name typed here is no signature.
        </li>
      </ul>
    </main>
  );
}

interface Undo {
  readonly said: string;
  /** What takes the last step back: another line of the log. */
  readonly line: { readonly kind: 'struck' | 'brought-back'; readonly checkId: string };
}

interface ChecksDeskProps {
  readonly store: CheckStore;
  readonly onFail: () => void;
}

function ChecksDesk({ store, onFail }: ChecksDeskProps): JSX.Element {
  const [isLogging, setLogging] = useState(false);
  const [undo, setUndo] = useState<Undo | null>(null);
  const checks = store.checks.value;
  const last = checks.find(({ struckAtMs }) => struckAtMs === null)?.check;
  const keep = async (check: ReceiverCheck): Promise<void> => {
    const checkId = await store.append({ kind: 'checked', check });
    chooseRules(check.rules);
    setLogging(false);
    setUndo({ said: `Logged. ${outcomeWords(check)}`, line: { kind: 'struck', checkId } });
  };
  const strike = (line: Undo['line']): void => {
    store.append(line).then(() => {
      const isStruck = line.kind === 'struck';
      setUndo({
        said: isStruck
          ? 'Struck through: it stays in the log and does not count.'
          : 'Brought back.',
        line: { ...line, kind: isStruck ? 'brought-back' : 'struck' },
      });
    }, onFail);
  };
  return (
    <>
      <DueList checks={checks} />
      <p>
        <button
          type="button"
          class="main hurry"
          onClick={() => {
            setLogging(true);
          }}
        >
          Log a check
        </button>
      </p>
      <UndoLine undo={undo} onUndo={strike} />
      <RulesSection last={last} />
      <section aria-labelledby="log-title">
        <h2 id="log-title">Log</h2>
        {checks.length === 0 ? (
          <p class="soft">
            Nothing yet. A check takes a test signal, a checkpoint on the ground or in the air, or a
            second receiver.
          </p>
        ) : null}
        <ul class="log">
          {checks.map((logged) => (
            <CheckRow
              key={logged.id}
              logged={logged}
              onStrike={() => {
                strike({ kind: 'struck', checkId: logged.id });
              }}
              onBringBack={() => {
                strike({ kind: 'brought-back', checkId: logged.id });
              }}
            />
          ))}
        </ul>
      </section>
      <CheckFiles store={store} />
      {isLogging ? (
        <Sheet
          title="A receiver check"
          onClose={() => {
            setLogging(false);
          }}
        >
          <CheckForm
            last={last}
            onKeep={keep}
            onLeave={() => {
              setLogging(false);
            }}
          />
        </Sheet>
      ) : null}
    </>
  );
}

interface UndoLineProps {
  readonly undo: Undo | null;
  readonly onUndo: (line: Undo['line']) => void;
}

function UndoLine({ undo, onUndo }: UndoLineProps): JSX.Element {
  return (
    <p role="status" class="row wrap no-print">
      {undo?.said}
      {undo === null ? null : (
        <button
          type="button"
          class="quiet"
          onClick={() => {
            onUndo(undo.line);
          }}
        >
          Undo
        </button>
      )}
    </p>
  );
}
