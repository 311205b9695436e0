import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Station } from '../../src/station/station.ts';
import { phonetic } from '../../src/speech/phonetic.ts';
import type { ToolVerdict } from '../listen/listen-panel.tsx';
import { judgeIdent } from './actions.ts';
import type { Deck } from './deck.ts';
import { megahertz } from './figures.ts';
import { useLoaded } from './later.ts';
import { MorseMarks } from './morse-marks.tsx';
import { usePlayedIdent } from './play-one-ident.ts';
import { Sheet } from './sheet.tsx';

const loadListenPanel = () => import('../listen/listen-panel.tsx').then((room) => room.ListenPanel);

const DO_NOT_USE =
  'Do not use this station. Check the frequency, listen again; another station may share it.';

/** The ident as it should sound in the headset, to be compared and then confirmed, or not. */
export function IdentSheet({ deck }: { readonly deck: Deck }): JSX.Element | null {
  const station = deck.leg.value?.station;
  return station === undefined ? null : <Identify deck={deck} station={station} />;
}

interface IdentifyProps {
  readonly deck: Deck;
  readonly station: Station;
}

function Identify({ deck, station }: IdentifyProps): JSX.Element {
  const { playing, problem, play, stop } = usePlayedIdent(station.ident);
  const [isDoubted, setDoubted] = useState(false);
  const [isListening, setListening] = useState(false);
  const [verdict, setVerdict] = useState<ToolVerdict | null>(null);
  const close = (): void => {
    deck.sheet.value = null;
  };
  const judge = async (outcome: 'confirmed' | 'doubted'): Promise<void> => {
    stop();
    const isHeard = outcome === 'confirmed' && verdict?.kind === 'confirmed';
    await judgeIdent(deck, outcome, isHeard ? verdict : undefined);
    if (outcome === 'confirmed') close();
    else setDoubted(true);
  };
  const frequency =
    station.frequencyMhz === undefined ? '' : ` on ${megahertz(station.frequencyMhz)}`;
  return (
    <Sheet title={`Identify ${station.ident}${frequency}`} onClose={close}>
      <div class="ident-card">
        <MorseMarks ident={station.ident} sounding={playing?.marks.value ?? null} />
        {isListening ? null : <HowItGoes ident={station.ident} />}
        <p class="problem" role="alert">
          {problem}
          {isDoubted ? DO_NOT_USE : ''}
        </p>
        {isListening ? (
          <ToolListens station={station} onListen={stop} onVerdict={setVerdict} />
        ) : (
          <div class="row">
            <button type="button" onClick={playing === null ? play : stop}>
              {playing === null ? 'Play the ident' : 'Stop'}
            </button>
            <button
              type="button"
              onClick={() => {
                // What this device plays would be heard, and confirmed.
                stop();
                setListening(true);
              }}
            >
              Let the tool listen
            </button>
          </div>
        )}
        <Judge verdict={verdict} onJudge={(outcome) => void judge(outcome)} />
      </div>
    </Sheet>
  );
}

function HowItGoes({ ident }: { readonly ident: string }): JSX.Element {
  return (
    <>
      <p class="phonetic">{phonetic(ident)}</p>
      <p class="soft">
        Turn the receiver’s ident up and listen. Confirm only what you hear in the headset: this
        sound is a reminder of how it goes.
      </p>
    </>
  );
}

interface JudgeProps {
  readonly verdict: ToolVerdict | null;
  readonly onJudge: (outcome: 'confirmed' | 'doubted') => void;
}

/** The pilot decides. Where the tool has heard something else, that lies nearer at hand. */
function Judge({ verdict, onJudge }: JudgeProps): JSX.Element {
  const isWrong = verdict?.kind === 'different' || verdict?.kind === 'do-not-use';
  return (
    <div class="row">
      <button
        type="button"
        class={isWrong ? 'hurry main' : 'hurry'}
        onClick={() => {
          onJudge('doubted');
        }}
      >
        Not right
      </button>
      <button
        type="button"
        class={isWrong ? 'hurry' : 'hurry main'}
        onClick={() => {
          onJudge('confirmed');
        }}
      >
        Ident confirmed
      </button>
    </div>
  );
}

interface ToolListensProps {
  readonly station: Station;
  readonly onListen: () => void;
  readonly onVerdict: (verdict: ToolVerdict | null) => void;
}

/** The tool listens too; what it takes to do that is fetched when it is first asked for. */
function ToolListens({ station, onListen, onVerdict }: ToolListensProps): JSX.Element {
  const { Page: ListenPanel, problem } = useLoaded(loadListenPanel);
  if (ListenPanel === null) return <p role="alert">{problem}</p>;
  return (
    <ListenPanel
      expected={station.ident.toUpperCase()}
      near={station}
      onListen={onListen}
      onVerdict={onVerdict}
    />
  );
}
