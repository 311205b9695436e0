import type { JSX } from 'preact';
import { useRef, useState } from 'preact/hooks';
import type { Press } from '../../src/ident/rhythm.ts';

interface RhythmPadProps {
  readonly onPress: (press: Press) => void;
}

/** A pad to tap the rhythm on: with a finger, a mouse, or the space bar. */
export function RhythmPad({ onPress }: RhythmPadProps): JSX.Element {
  const startMs = useRef<number | null>(null);
  const [isDown, setDown] = useState(false);
  const begin = (): void => {
    startMs.current ??= performance.now();
    setDown(true);
  };
  const end = (): void => {
    const beganMs = startMs.current;
    startMs.current = null;
    setDown(false);
    if (beganMs === null) return;
    const durationS = (performance.now() - beganMs) / 1000;
    onPress({ startS: beganMs / 1000, durationS });
  };
  return (
    <button
      type="button"
      class={isDown ? 'rhythm-pad down' : 'rhythm-pad'}
      onPointerDown={(pointer) => {
        pointer.currentTarget.setPointerCapture(pointer.pointerId);
        begin();
      }}
      onPointerUp={end}
      onPointerCancel={end}
      onContextMenu={(menu) => {
        // A long touch is a dash here.
        menu.preventDefault();
      }}
      onKeyDown={(key) => {
        if (key.key !== ' ') return;
        key.preventDefault();
        if (!key.repeat) begin();
      }}
      onKeyUp={(key) => {
        if (key.key !== ' ') return;
        key.preventDefault();
        end();
      }}
      onBlur={end}
    >
      Tap and hold the rhythm here, or with the space bar
    </button>
  );
}
