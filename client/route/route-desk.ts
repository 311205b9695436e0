import { computed, signal, type ReadonlySignal } from '@preact/signals';
import type { RouteDraft } from './route-draft.ts';
import { keepRoute } from './route-shelf.ts';

/** A flight on the desk, with a way back and forth through what was changed. */
export interface RouteDesk {
  readonly draft: ReadonlySignal<RouteDraft>;
  readonly canUndo: ReadonlySignal<boolean>;
  readonly canRedo: ReadonlySignal<boolean>;
  /** Why the last change is not kept; empty when it is. */
  readonly problem: ReadonlySignal<string>;
  /** `field`: letters typed into one field are undone together. */
  readonly change: (part: Partial<RouteDraft>, field?: string) => void;
  readonly undo: () => void;
  readonly redo: () => void;
}

const MOST_STEPS = 100;

/** Puts a flight on the desk; every change is kept on this device. */
export function openDesk(first: RouteDraft): RouteDesk {
  const draft = signal(first);
  const past = signal<readonly RouteDraft[]>([]);
  const future = signal<readonly RouteDraft[]>([]);
  const problem = signal('');
  let typingIn = '';

  const show = (next: RouteDraft): void => {
    draft.value = next;
    try {
      keepRoute(next);
      problem.value = '';
    } catch (error) {
      problem.value = error instanceof Error ? error.message : String(error);
    }
  };
  const step = (from: typeof past, to: typeof past): void => {
    const next = from.peek().at(-1);
    if (next === undefined) return;
    from.value = from.peek().slice(0, -1);
    to.value = [...to.peek(), draft.peek()];
    typingIn = '';
    show(next);
  };
  return {
    draft,
    canUndo: computed(() => past.value.length > 0),
    canRedo: computed(() => future.value.length > 0),
    problem,
    change: (part, field = '') => {
      const before = draft.peek();
      if (field === '' || field !== typingIn) {
        past.value = [...past.peek(), before].slice(-MOST_STEPS);
      }
      typingIn = field;
      future.value = [];
      show({ ...before, ...part });
    },
    undo: () => {
      step(past, future);
    },
    redo: () => {
      step(future, past);
    },
  };
}
