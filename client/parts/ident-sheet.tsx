import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { phonetic } from '../../src/speech/phonetic.ts';
import { settings } from '../settings/settings.ts';
import { playIdent, type PlayingIdent } from '../sound/ident-player.ts';
import { speaker } from '../voice/speaker.ts';
import { judgeIdent } from './actions.ts';
import type { Deck } from './deck.ts';
import { megahertz } from './figures.ts';
import { MorseMarks } from './morse-marks.tsx';
import { Sheet } from './sheet.tsx';

const VOR_TONE_HZ = 1020;

/** The ident as it should sound in the headset, to be compared and then confirmed, or not. */
export function IdentSheet({ deck }: { readonly deck: Deck }): JSX.Element | null {
  const station = deck.leg.value?.station;
  const [playing, setPlaying] = useState<PlayingIdent | null>(null);
  const [problem, setProblem] = useState('');
  const [isDoubted, setDoubted] = useState(false);
  const current = useRef<PlayingIdent | null>(null);
  useEffect(() => () => current.current?.stop(), []);
  if (station === undefined) return null;
  const play = (): void => {
    current.current?.stop();
    speaker.hush();
    const { identWpm, volume } = settings.peek();
    const sound = playIdent(station.ident, {
      wpm: identWpm,
      toneHz: VOR_TONE_HZ,
      repeats: 2,
      volume,
    });
    current.current = sound;
    setPlaying(sound);
    setProblem('');
    sound.done
      .catch((error: unknown) => {
        setProblem(error instanceof Error ? error.message : String(error));
      })
      .finally(() => {
        setPlaying((now) => (now === sound ? null : now));
      });
  };
  const stop = (): void => current.current?.stop();
  const close = (): void => {
    deck.sheet.value = null;
  };
  const judge = async (outcome: 'confirmed' | 'doubted'): Promise<void> => {
    stop();
    await judgeIdent(deck, outcome);
    if (outcome === 'confirmed') close();
    else setDoubted(true);
  };
  const frequency =
    station.frequencyMhz === undefined ? '' : ` on ${megahertz(station.frequencyMhz)}`;
  return (
    <Sheet title={`Identify ${station.ident}${frequency}`} onClose={close}>
      <div class="ident-card">
        <MorseMarks ident={station.ident} sounding={playing?.marks.value ?? null} />
        <p class="phonetic">{phonetic(station.ident)}</p>
        <p class="soft">
          Turn the receiver’s ident up and listen. Confirm only what you hear in the headset: this
          sound is a reminder of how it goes.
        </p>
        <p class="problem" role="alert">
          {problem}
          {isDoubted
            ? 'Do not use this station. Check the frequency, listen again; another station may share it.'
            : ''}
        </p>
        <div class="row">
          <button type="button" onClick={playing === null ? play : stop}>
            {playing === null ? 'Play the ident' : 'Stop'}
          </button>
        </div>
        <div class="row">
          <button type="button" class="hurry" onClick={() => void judge('doubted')}>
            Not right
          </button>
          <button type="button" class="hurry main" onClick={() => void judge('confirmed')}>
            Ident confirmed
          </button>
        </div>
      </div>
    </Sheet>
  );
}
