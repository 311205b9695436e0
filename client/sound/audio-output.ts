let context: AudioContext | null = null;

const PATIENCE_MS = 3000;

/**
 * The one audio output of the page, running. Browsers insist on a tap or a key before; rejects with a
 * sentence where the output cannot be woken.
 */
export async function audioOutput(): Promise<AudioContext> {
  context ??= new AudioContext({ latencyHint: 'interactive' });
  const output = context;
  // Suspended by a phone call, or by the browser in the background.
  if (output.state === 'running') return output;
  // Without a tap before it, the promise of `resume` stays open for ever.
  await new Promise<void>((resolve, reject) => {
    const timer = setTimeout(() => {
      reject(new Error('The sound of this device is asleep: tap the page once.'));
    }, PATIENCE_MS);
    output.resume().then(() => {
      clearTimeout(timer);
      resolve();
    }, reject);
  });
  return output;
}
