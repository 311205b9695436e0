import type { JSX } from 'preact';

interface FileInputProps {
  readonly id: string;
  readonly label: string;
  /** Kinds of files, as in `accept`. */
  readonly accept: string;
  readonly isDisabled?: boolean;
  /** Settles when the file has been taken in, or it has been said why not. */
  readonly onFile: (file: File) => Promise<void>;
}

/** Chooses a file of the device, by what looks like a button. */
export function FileInput({ id, label, accept, isDisabled, onFile }: FileInputProps): JSX.Element {
  return (
    <span>
      <label class="button" for={id}>
        {label}
      </label>
      <input
        id={id}
        class="hidden"
        type="file"
        accept={accept}
        disabled={isDisabled === true}
        onChange={(change) => {
          const input = change.currentTarget;
          const file = input.files?.[0];
          if (file === undefined) return;
          void onFile(file).finally(() => {
            // The same file can be chosen again.
            input.value = '';
          });
        }}
      />
    </span>
  );
}
