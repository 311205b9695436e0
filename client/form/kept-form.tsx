import type { ComponentChildren, JSX } from 'preact';

interface KeptFormProps {
  readonly onKeep: () => void;
  readonly onLeave: () => void;
  readonly keepLabel?: string;
  readonly isInset?: boolean;
  readonly children: ComponentChildren;
}

/** A form that is kept or left; what is wrong is said by the page, not by the browser. */
export function KeptForm(props: KeptFormProps): JSX.Element {
  return (
    <form
      class={props.isInset === true ? 'inset' : ''}
      novalidate
      onSubmit={(submit) => {
        submit.preventDefault();
        props.onKeep();
      }}
    >
      {props.children}
      <div class="row">
        <button type="button" onClick={props.onLeave}>
          Leave it
        </button>
        <button type="submit" class="main">
          {props.keepLabel ?? 'Keep it'}
        </button>
      </div>
    </form>
  );
}
