import {
  heardSoFar,
  listenOn,
  startListening,
  type ListeningView,
} from '../../src/ident/listening.ts';
import { BLOCK_SAMPLES } from './block-pool.ts';
import type { FromEar } from './ear-messages.ts';
import { isFlat, toneLevelDb } from './tone-level.ts';

/** Takes blocks in and tells what is heard. */
export interface Attention {
  take(block: Float32Array): void;
  /** Says what is known by now; what is shown of a file also says how much of it that is. */
  tell(fraction: number | null): void;
  view(): ListeningView;
}

/** Starts to listen for an ident; `say` gets what is heard. */
export function attend(
  expected: string | null,
  rateHz: number,
  say: (message: FromEar) => void,
): Attention {
  let listening = startListening({ sampleRateHz: rateHz, expected });
  const stepS = BLOCK_SAMPLES / rateHz;
  let levelsDb: number[] = [];
  let blocks = 0;
  let flat = 0;
  return {
    take: (block) => {
      const { toneHz } = heardSoFar(listening);
      levelsDb.push(toneLevelDb(block, rateHz, toneHz));
      blocks += 1;
      flat = isFlat(block) ? flat + 1 : 0;
      listening = listenOn(listening, block);
    },
    tell: (fraction) => {
      const fromS = (blocks - levelsDb.length) * stepS;
      say({
        kind: 'heard',
        view: heardSoFar(listening),
        levels: { fromS, stepS, levelsDb },
        flatS: flat * stepS,
        fraction,
      });
      levelsDb = [];
    },
    view: () => heardSoFar(listening),
  };
}
