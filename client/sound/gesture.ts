import { signal, type ReadonlySignal } from '@preact/signals';

const isTouched = signal(false);

/** True since the first tap or key on this page: before that, browsers let nothing sound. */
export const hasGesture: ReadonlySignal<boolean> = isTouched;

const gestures = ['pointerup', 'keydown', 'click'] as const;

function onGesture(): void {
  isTouched.value = true;
  for (const gesture of gestures) removeEventListener(gesture, onGesture, { capture: true });
}

/** Listens for the first tap or key. From the start: the tap that opens a flight is one already. */
export function watchForGesture(): void {
  for (const gesture of gestures) {
    addEventListener(gesture, onGesture, { capture: true, passive: true });
  }
}
