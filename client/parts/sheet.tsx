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
  useEffect(() => {
    const element = dialog.current;
    element?.showModal();
    return () => element?.close();
  }, []);
  return (
    <dialog
      ref={dialog}
      class="sheet"
      aria-label={title}
      onKeyDown={onKeyDown}
      onCancel={(cancel) => {
        // The part that opened the sheet also takes it away: it must hear of the Escape key.
        cancel.preventDefault();
        if (!mustAnswer) onClose();
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
