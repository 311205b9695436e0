import { heardSoFar, listenOn, startListening } from '../../src/ident/listening.ts';
import { BLOCK_SAMPLES } from './block-pool.ts';
import type { FromEar } from './ear-messages.ts';
import { identLevelDb, isFlat } from './tone-level.ts';

/** Takes the blocks of the microphone in and tells what is heard. */
export interface Attention {
  take(block: Float32Array): void;
  tell(): void;
}

/** On a slow device a look at all that was heard may take seconds: then it catches up before the next, s. */
const MOST_BEHIND_S = 0.3;

/** Starts to listen for an ident; `say` gets what is heard, `nowS` is a clock. */
export function attend(
  expected: string | null,
  rateHz: number,
  say: (message: FromEar) => void,
  nowS: () => number,
): Attention {
  let listening = startListening({ sampleRateHz: rateHz, expected });
  const stepS = BLOCK_SAMPLES / rateHz;
  let startS: number | null = null;
  let levelsDb: number[] = [];
  let blocks = 0;
  let flat = 0;
  return {
    take: (block) => {
      startS ??= nowS() - stepS;
      const { toneHz } = heardSoFar(listening);
      levelsDb.push(identLevelDb(block, rateHz, toneHz));
      blocks += 1;
      flat = isFlat(block) ? flat + 1 : 0;
      const behindS = nowS() - startS - blocks * stepS;
      // Its clock and that of the microphone drift apart: never ahead by more than a block.
      if (behindS < -stepS) startS += behindS;
      listening = listenOn(listening, block, behindS < MOST_BEHIND_S);
    },
    tell: () => {
      const fromS = (blocks - levelsDb.length) * stepS;
      const levels = { fromS, stepS, levelsDb };
      const view = heardSoFar(listening);
      say({ kind: 'heard', view, levels, flatS: flat * stepS });
      levelsDb = [];
    },
  };
}
