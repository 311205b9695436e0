/**
 * A Kaiser window of `length` points: 1 in the middle, small at the ends.
 *
 * `beta` sets how far the side lobes are down: 5.65 gives about 60 dB.
 * *Source:* Kaiser's window, w(n) = I0(beta sqrt(1 - x^2)) / I0(beta) with x from -1 to 1
 * (Oppenheim and Schafer, Discrete-Time Signal Processing, section 7.5.3; from memory).
 */
export function kaiserWindow(length: number, beta: number): Float64Array {
  const window = new Float64Array(length);
  const middle = (length - 1) / 2;
  const top = besselI0(beta);
  for (let n = 0; n < length; n += 1) {
    const x = middle === 0 ? 0 : (n - middle) / middle;
    window[n] = besselI0(beta * Math.sqrt(Math.max(0, 1 - x * x))) / top;
  }
  return window;
}

/** Modified Bessel function of order zero by its power series: sum of ((x/2)^k / k!)^2. */
function besselI0(x: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; k < 60 && term > sum * 1e-17; k += 1) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}
