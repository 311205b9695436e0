import type { JSX } from 'preact';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import '../listen/listen.css';
import type { LatLon } from '../../src/earth/geodesic.ts';
import { openEar, type Ear } from './ear.ts';
import type { EarState } from './ear-state.ts';
import { HeardFigures } from './heard-figures.tsx';
import { TonePicture } from './tone-picture.tsx';
import { Verdict } from './verdict.tsx';
import { heardWords, verdictWords, type VerdictKind, type VerdictWords } from './verdict-words.ts';

/** What the tool makes of the expected ident; the pilot decides. */
export interface ToolVerdict {
  readonly kind: VerdictKind;
  /** How probable the expected ident is, 0 to 1. */
  readonly confidence: number;
}

interface ListenPanelProps {
  /** The ident that should be there; null: whichever there is. */
  readonly expected: string | null;
  readonly near?: LatLon | null;
  /** Called before the tool begins to listen: whatever sounds has to stop. */
  readonly onListen?: () => void;
  /** Told whenever the verdict changes; null: there is none. */
  readonly onVerdict?: (verdict: ToolVerdict | null) => void;
}

/** Listens by microphone or to a recording, shows what it hears, and says what it makes of it. */
export function ListenPanel(props: ListenPanelProps): JSX.Element {
  const { expected, near = null, onListen, onVerdict } = props;
  const ear = useMemo(openEar, []);
  useEffect(
    () => () => {
      ear.stop();
    },
    [ear],
  );
  // What was heard for another ident says nothing about this one.
  useEffect(() => {
    ear.stop();
  }, [ear, expected]);
  const read = (file: File | undefined): void => {
    if (file === undefined) return;
    onListen?.();
    ear.read(file, expected);
  };
  useDroppedFile(read);
  const state = ear.state.value;
  const isShown = state.expected === expected;
  const words = isShown ? wordsOf(state) : null;
  const kind = words?.kind ?? null;
  const confidence = state.view?.confirmation?.confidence ?? 0;
  useEffect(() => {
    onVerdict?.(kind === null ? null : { kind, confidence });
  }, [onVerdict, kind, confidence]);
  return (
    <div class="listen stack">
      <Controls
        ear={ear}
        onListen={() => {
          onListen?.();
          ear.listen(expected);
        }}
        onFile={read}
      />
      <p class="problem" role="alert">
        {state.problem}
      </p>
      {state.note === null ? null : <p>{state.note}</p>}
      {state.phase === 'off' && state.view === null ? null : (
        <>
          <TonePicture ear={ear} />
          <HeardFigures state={state} />
        </>
      )}
      {words === null ? null : <Verdict words={words} near={near} />}
    </div>
  );
}

interface ControlsProps {
  readonly ear: Ear;
  readonly onListen: () => void;
  readonly onFile: (file: File | undefined) => void;
}

function Controls({ ear, onListen, onFile }: ControlsProps): JSX.Element {
  const input = useRef<HTMLInputElement>(null);
  const { phase } = ear.state.value;
  const isBusy = phase === 'opening' || phase === 'listening' || phase === 'reading';
  return (
    <>
      <div class="row wrap">
        {isBusy ? (
          <button
            type="button"
            onClick={() => {
              ear.stop();
            }}
          >
            {phase === 'reading' ? 'Cancel' : 'Stop listening'}
          </button>
        ) : (
          <>
            <button type="button" class="main" onClick={onListen}>
              {ear.state.value.view === null ? 'Listen' : 'Listen again'}
            </button>
            <button type="button" onClick={() => input.current?.click()}>
              Choose a recording
            </button>
          </>
        )}
      </div>
      <input
        ref={input}
        type="file"
        hidden
        accept=".wav,audio/wav,audio/x-wav"
        aria-label="A recording"
        onChange={(change) => {
          const [file] = change.currentTarget.files ?? [];
          onFile(file);
          // So that the same file can be chosen once more.
          change.currentTarget.value = '';
        }}
      />
      <Progress state={ear.state.value} />
    </>
  );
}

function Progress({ state }: { readonly state: EarState }): JSX.Element | null {
  const { phase, from, fraction } = state;
  switch (phase) {
    case 'opening':
      return <p class="soft">Waiting for the microphone…</p>;
    case 'listening':
      return <p class="soft">Listening: {from}.</p>;
    case 'reading':
      return (
        <label class="reading">
          <span class="soft">Listening to {from}</span>
          <progress value={fraction ?? 0} />
        </label>
      );
    case 'over':
      return <p class="soft">Heard: {from}.</p>;
    case 'off':
      return null;
  }
}

/** A recording may be dropped anywhere on the page; else the browser would leave the page for it. */
function useDroppedFile(read: (file: File | undefined) => void): void {
  const newest = useRef(read);
  newest.current = read;
  useEffect(() => {
    const over = (drag: DragEvent): void => {
      drag.preventDefault();
    };
    const drop = (drag: DragEvent): void => {
      drag.preventDefault();
      newest.current(drag.dataTransfer?.files[0]);
    };
    addEventListener('dragover', over);
    addEventListener('drop', drop);
    return () => {
      removeEventListener('dragover', over);
      removeEventListener('drop', drop);
    };
  }, []);
}

function wordsOf({ view, expected, phase }: EarState): VerdictWords | null {
  if (view === null || phase === 'opening') return null;
  if (view.confirmation !== null && expected !== null)
    return verdictWords(view.confirmation, expected, view.atS);
  return view.heard === null ? null : heardWords(view.heard, view.atS);
}
