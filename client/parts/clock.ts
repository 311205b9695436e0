import { signal, type ReadonlySignal } from '@preact/signals';

const now = signal(Date.now());

/** The time, milliseconds since the epoch, renewed every second: the only clock of the pages. */
export const nowMs: ReadonlySignal<number> = now;

setInterval(() => {
  now.value = Date.now();
}, 1000);
