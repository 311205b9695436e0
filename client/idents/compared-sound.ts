import { useEffect, useRef, useState } from 'preact/hooks';
import { settings } from '../settings/settings.ts';
import { playIdent, type PlayingIdent } from '../sound/ident-player.ts';

const VOR_TONE_HZ = 1020;

/** Idents played one after the other, clean, at the speed of a station. */
export function useCompared(): {
  /** Index of the one that sounds; null: none. */
  readonly playing: number | null;
  readonly problem: string;
  readonly play: (idents: readonly string[]) => void;
} {
  const [playing, setPlaying] = useState<number | null>(null);
  const [problem, setProblem] = useState('');
  const current = useRef<PlayingIdent | null>(null);
  const turn = useRef(0);
  const stop = (): void => {
    turn.current += 1;
    current.current?.stop();
  };
  useEffect(() => stop, []);
  const run = async (idents: readonly string[]): Promise<void> => {
    const mine = turn.current;
    for (const [index, ident] of idents.entries()) {
      if (turn.current !== mine) return;
      const { volume } = settings.peek();
      const sound = playIdent(ident, { wpm: 7, toneHz: VOR_TONE_HZ, repeats: 1, volume });
      current.current = sound;
      setPlaying(index);
      await sound.done;
    }
    if (turn.current === mine) setPlaying(null);
  };
  return {
    playing,
    problem,
    play: (idents) => {
      stop();
      setProblem('');
      run(idents).catch((error: unknown) => {
        setPlaying(null);
        setProblem(error instanceof Error ? error.message : String(error));
      });
    },
  };
}
