import type { JSX } from 'preact';
import type { EarState } from './ear-state.ts';

/** From here on a letter is as good as settled. */
const SETTLED = 0.9;

const DASH = '–';

/** What is heard, in figures and letters. */
export function HeardFigures({ state }: { readonly state: EarState }): JSX.Element {
  const { view } = state;
  const toneHz = view?.toneHz ?? null;
  const snrDb = view?.snrDb ?? null;
  return (
    <dl class="heard">
      <div class="letters">
        <dt>Letters</dt>
        <dd>
          <Letters state={state} />
        </dd>
      </div>
      <div>
        <dt>Heard</dt>
        <dd>{view === null || view.repeats === 0 ? DASH : `${view.repeats} ×`}</dd>
      </div>
      <div>
        <dt>Tone</dt>
        <dd>{toneHz === null ? DASH : `${toneHz.toFixed(0)} Hz`}</dd>
      </div>
      <div>
        <dt>Over the noise</dt>
        <dd>{snrDb === null ? DASH : `${snrDb.toFixed(0)} dB`}</dd>
      </div>
    </dl>
  );
}

/** The letters as they settle: those that are not sure yet are paler, and have a question mark. */
function Letters({ state }: { readonly state: EarState }): JSX.Element {
  const perLetter = state.view?.heard?.perLetter ?? [];
  if (perLetter.length === 0) return <>{state.view?.letters ?? DASH}</>;
  return (
    <>
      {perLetter.map(({ letter, confidence }, index) => (
        <span key={index} class={confidence >= SETTLED ? '' : 'soft'}>
          {letter}
          {confidence >= SETTLED ? '' : '?'}
        </span>
      ))}
    </>
  );
}
