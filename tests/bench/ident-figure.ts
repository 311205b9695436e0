/** A measured figure with what it should be. */
export interface IdentFigure {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** How many clips, trials or runs it comes from. */
  readonly n: number;
  /** To stay at or under. */
  readonly goal?: number;
  /** To reach. */
  readonly goalAtLeast?: number;
}

/** A figure as one line for people. */
export function inWords({ name, value, unit, n, goal, goalAtLeast }: IdentFigure): string {
  const isMet = value <= (goal ?? Infinity) && value >= (goalAtLeast ?? -Infinity);
  const goals = [
    goal === undefined ? '' : `; goal: at most ${goal}`,
    goalAtLeast === undefined ? '' : `; goal: at least ${goalAtLeast}`,
    isMet ? '' : ', NOT MET',
  ];
  return `${name}: ${Number(value.toPrecision(4))} ${unit} (n = ${n})${goals.join('')}`;
}
