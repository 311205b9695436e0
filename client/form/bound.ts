/** What each field of a form is given: what stands in it, and what takes a change. */
export interface Bound<Value> {
  readonly value: Value;
  readonly onChange: (value: Value) => void;
  /** What is wrong, by the name of the field. */
  readonly problems: Problems;
}

/** What is wrong with what was typed, by the dotted name of its field. */
export type Problems = ReadonlyMap<string, string>;

const NONE: Problems = new Map();

/** Binds fields to the parts of what they change: `<Choice {...of('noise')} ... />`. */
export function boundTo<Draft extends object>(
  draft: Draft,
  change: (part: Partial<Draft>) => void,
  problems: Problems = NONE,
): <Key extends keyof Draft>(key: Key) => Bound<Draft[Key]> {
  return (key) => ({
    value: draft[key],
    problems,
    onChange: (value) => {
      const part: { -readonly [Each in keyof Draft]?: Draft[Each] } = {};
      part[key] = value;
      change(part);
    },
  });
}
