import { computed, signal, type ReadonlySignal } from '@preact/signals';

const claims = signal<readonly symbol[]>([]);

/** True while something that must not be talked over (an ident) is sounding. */
export const isSoundClaimed: ReadonlySignal<boolean> = computed(() => claims.value.length > 0);

/** Keeps the voice silent until the returned function is called (calling it again is harmless). */
export function claimSound(): () => void {
  const claim = Symbol('sound claim');
  claims.value = [...claims.peek(), claim];
  return () => {
    claims.value = claims.peek().filter((each) => each !== claim);
  };
}
