import type { ComponentChildren, JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

interface SheetProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ComponentChildren;
  readonly onKeyDown?: (key: KeyboardEvent) => void;
  /** A sheet that must be answered has no Close of its own. */
  readonly mustAnswer?: boolean;
}

/** A sheet laid over the page until it is closed; the browser keeps the focus inside. */
export function Sheet(props: SheetProps): JSX.Element {
  const { title, onClose, onKeyDown, children, mustAnswer = false } = props;
  const dialog = useRef<HTMLDialogElement>(null);
  const isGone = useRef(false);
  useEffect(() => {
    const element = dialog.current;
    const before = document.activeElement;
    element?.showModal();
    return () => {
      isGone.current = true;
      element?.close();
      // The dialog is gone by now: the browser no longer gives the focus back by itself.
      if (before instanceof HTMLElement) before.focus({ preventScroll: true });
    };
  }, []);
  return (
    <dialog
      ref={dialog}
      class="sheet"
      aria-label={title}
      onKeyDown={onKeyDown}
      onClose={() => {
        // Escape or the back gesture closed it; the page has to hear of it, or it is opened again.
        if (isGone.current) return;
        if (mustAnswer) dialog.current?.showModal();
        else onClose();
      }}
    >
      <div class="sheet-head">
        <h2>{title}</h2>
        {mustAnswer ? null : (
          <button type="button" class="quiet" onClick={onClose}>
            Close
          </button>
        )}
      </div>
      {children}
    </dialog>
  );
}
