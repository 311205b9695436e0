import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { ReceiverCheck } from '../../src/station/library/receiver-check.ts';
import { nowMs } from '../parts/clock.ts';
import { Sheet } from '../parts/sheet.tsx';
import { draftAfter, readRules } from './check-draft.ts';
import { chooseRules, rulesFor } from './check-rules.ts';
import { rulesWords } from './check-words.ts';
import { RulesFields } from './rules-fields.tsx';
import { KeptForm } from '../form/kept-form.tsx';
import { useDraft } from '../form/draft.ts';

/** By whose rules checks are judged on this device, and where that is set. */
export function RulesSection({ last }: { readonly last: ReceiverCheck | undefined }): JSX.Element {
  const [isOpen, setOpen] = useState(false);
  const close = (): void => {
    setOpen(false);
  };
  return (
    <section class="no-print" aria-labelledby="rules-title">
      <h2 id="rules-title">Whose rules</h2>
      <div class="row wrap">
        <span>
          Judged by {rulesWords(rulesFor(last))}. <b>Check your own regulation.</b>
        </span>
        <button
          type="button"
          onClick={() => {
            setOpen(true);
          }}
        >
          Change the rules
        </button>
      </div>
      {isOpen ? (
        <Sheet title="Whose rules" onClose={close}>
          <RulesForm last={last} onDone={close} />
        </Sheet>
      ) : null}
    </section>
  );
}

interface RulesFormProps {
  readonly last: ReceiverCheck | undefined;
  readonly onDone: () => void;
}

function RulesForm({ last, onDone }: RulesFormProps): JSX.Element {
  const { draft, put, problems, tell } = useDraft(() => draftAfter(last, nowMs.peek()));
  const keep = (): void => {
    const read = readRules(draft);
    tell(read.ok ? [] : read.problem);
    if (!read.ok) return;
    chooseRules(read.value);
    onDone();
  };
  return (
    <KeptForm onKeep={keep} onLeave={onDone}>
      <div class="fields">
        <RulesFields draft={draft} problems={problems} put={put} />
      </div>
      <p class="soft">For the checks to come. Those in the log keep the rules that they had.</p>
    </KeptForm>
  );
}
