import type { JSX } from 'preact';
import { changeSettings } from '../settings/settings.ts';
import { nowMs } from './clock.ts';
import { Sheet } from './sheet.tsx';

/** What this is not, and what comes first. */
export function CautionList(): JSX.Element {
  return (
    <ul class="cautions">
      <li>
        This is a practice and prompting aid. It is <b>never the primary means of navigation</b>.
      </li>
      <li>Fly the aircraft first. Look out.</li>
      <li>
        Your own instruments, current charts and NOTAMs, ATC instructions and the regulations of the
        state come before anything that it says.
      </li>
      <li>Train with a licensed instructor.</li>
      <li>The demo’s stations are invented and lie in open ocean. Do not look for them.</li>
    </ul>
  );
}

/** The cautions, before the first use. */
export function CautionsSheet(): JSX.Element {
  return (
    <Sheet title="Before you use it" mustAnswer onClose={() => undefined}>
      <CautionList />
      <div class="row">
        <button
          type="button"
          class="main hurry"
          onClick={() => {
            changeSettings({ cautionsReadAtMs: nowMs.peek() });
          }}
        >
          I have read this
        </button>
      </div>
    </Sheet>
  );
}
