/** A wind as forecast: the direction it blows from, in true degrees, and its speed in knots. */
export interface Wind {
  readonly fromDegTrue: number;
  readonly speedKt: number;
}
