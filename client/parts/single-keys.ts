import { effect, signal, type Signal } from '@preact/signals';

const PLACE = 'spoken-radial.single-keys';

/** Whether single keys work on the Fly page; kept on this device. Off for those who dictate text. */
export const areSingleKeysOn: Signal<boolean> = signal(localStorage.getItem(PLACE) !== 'off');

effect(() => {
  localStorage.setItem(PLACE, areSingleKeysOn.value ? 'on' : 'off');
});

/** One single key and what it does, in words. */
export interface SingleKey {
  readonly key: string;
  readonly name: string;
  readonly does: string;
  readonly act: () => void;
}

/**
 * Listens for single keys until the returned function is called.
 *
 * Never while something is typed, a sheet is open, or Ctrl, Alt or Meta is held; a key that a control
 * with the focus has a use for stays with it.
 */
export function listenForKeys(keys: readonly SingleKey[]): () => void {
  const onKeyDown = (pressed: KeyboardEvent): void => {
    if (!areSingleKeysOn.peek() || pressed.ctrlKey || pressed.altKey || pressed.metaKey) return;
    if (pressed.defaultPrevented || document.querySelector('dialog[open]') !== null) return;
    const target = pressed.target instanceof HTMLElement ? pressed.target : null;
    if (target?.closest('input, select, textarea') != null) return;
    const found = keys.find((each) => each.key === pressed.key.toLowerCase());
    if (found === undefined) return;
    pressed.preventDefault();
    found.act();
  };
  addEventListener('keydown', onKeyDown);
  return () => {
    removeEventListener('keydown', onKeyDown);
  };
}
