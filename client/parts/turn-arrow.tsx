import type { JSX } from 'preact';

/** Which way to turn, drawn beside the words. */
export function TurnArrow({ to }: { readonly to: 'left' | 'right' }): JSX.Element {
  return (
    <svg
      class={to === 'left' ? 'turn-arrow' : 'turn-arrow mirrored'}
      viewBox="0 0 46 26"
      aria-hidden="true"
    >
      <path
        d="M44 22 C44 8 30 6 8 10 M18 2 L6 10.5 L18 19"
        fill="none"
        stroke="currentColor"
        stroke-width="4.5"
      />
    </svg>
  );
}
