import { useEffect, useRef, useState } from 'preact/hooks';
import { settings } from '../settings/settings.ts';
import { playIdent, type PlayingIdent } from '../sound/ident-player.ts';
import { speaker } from '../voice/speaker.ts';

const VOR_TONE_HZ = 1020;

/** One ident that can be played and stopped; it stops when its part of the page goes away. */
export interface OneIdent {
  readonly playing: PlayingIdent | null;
  /** Why there was no sound; empty: nothing went wrong. */
  readonly problem: string;
  readonly play: () => void;
  readonly stop: () => void;
}

/** The ident of a station as a VOR keys it, twice, at the pilot's speed. */
export function usePlayedIdent(ident: string): OneIdent {
  const [playing, setPlaying] = useState<PlayingIdent | null>(null);
  const [problem, setProblem] = useState('');
  const current = useRef<PlayingIdent | null>(null);
  useEffect(() => () => current.current?.stop(), []);
  const play = (): void => {
    current.current?.stop();
    speaker.hush();
    const { identWpm, volume } = settings.peek();
    const sound = playIdent(ident, { wpm: identWpm, toneHz: VOR_TONE_HZ, repeats: 2, volume });
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
  return { playing, problem, play, stop: () => current.current?.stop() };
}
