import { signal, type ReadonlySignal } from '@preact/signals';
import { speaker } from '../voice/speaker.ts';

/** How far the tool is ready for a flight without any server or network. */
export type Readiness = 'not-asked' | 'working' | 'ready' | 'failed';

const state = signal<Readiness>('not-asked');

/** How far the tool is ready for a flight without any server or network. */
export const readiness: ReadonlySignal<Readiness> = state;

/** Fetches what is otherwise fetched when first needed (the sound of idents, the voice). */
export async function makeReady(): Promise<void> {
  state.value = 'working';
  try {
    await import('../sound/keyed-tone.ts');
    await speaker.prepare();
    state.value = speaker.voiceState.peek() === 'none' ? 'failed' : 'ready';
  } catch {
    state.value = 'failed';
  }
}
