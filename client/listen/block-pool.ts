/** Complex samples in a block: about 32 ms. */
export const BLOCK_SAMPLES = 32;

/** Four seconds of blocks: more than a listener is ever behind. */
const MOST_FREE = 128;

/** Blocks that go to the listener and come back, so that the audio thread need not make new ones. */
export interface BlockPool {
  take(): Float32Array<ArrayBuffer>;
  giveBack(block: Float32Array<ArrayBuffer>): void;
}

/** A pool that is full from the start. An empty one makes new blocks: sound is never dropped. */
export function openBlockPool(): BlockPool {
  const free = Array.from({ length: MOST_FREE }, () => new Float32Array(2 * BLOCK_SAMPLES));
  return {
    take: () => free.pop() ?? new Float32Array(2 * BLOCK_SAMPLES),
    giveBack: (block) => {
      if (free.length < MOST_FREE) free.push(block);
    },
  };
}
