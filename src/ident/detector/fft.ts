/** What a fast Fourier transform of one size needs. */
export interface Fft {
  readonly size: number;
  readonly cos: Float64Array;
  readonly sin: Float64Array;
}

/** Prepares transforms of `size` points, a power of two. */
export function fftOf(size: number): Fft {
  const cos = new Float64Array(size / 2);
  const sin = new Float64Array(size / 2);
  for (let n = 0; n < size / 2; n += 1) {
    cos[n] = Math.cos((2 * Math.PI * n) / size);
    sin[n] = -Math.sin((2 * Math.PI * n) / size);
  }
  return { size, cos, sin };
}

/**
 * Transforms `re` and `im` in place: X[k] = sum of x[n] e^(-2 pi i k n / size).
 *
 * *Source:* the radix-2 transform of Cooley and Tukey (1965), decimation in time.
 */
export function transform(fft: Fft, re: Float64Array, im: Float64Array): void {
  reorder(fft.size, re, im);
  for (let half = 1; half < fft.size; half *= 2) {
    const stride = fft.size / (2 * half);
    for (let from = 0; from < fft.size; from += 2 * half) {
      for (let n = 0; n < half; n += 1) {
        const cos = fft.cos[n * stride] ?? 0;
        const sin = fft.sin[n * stride] ?? 0;
        const low = from + n;
        const high = low + half;
        const highRe = re[high] ?? 0;
        const highIm = im[high] ?? 0;
        const turnedRe = highRe * cos - highIm * sin;
        const turnedIm = highRe * sin + highIm * cos;
        const lowRe = re[low] ?? 0;
        const lowIm = im[low] ?? 0;
        re[high] = lowRe - turnedRe;
        im[high] = lowIm - turnedIm;
        re[low] = lowRe + turnedRe;
        im[low] = lowIm + turnedIm;
      }
    }
  }
}

function reorder(size: number, re: Float64Array, im: Float64Array): void {
  for (let n = 1, mirror = 0; n < size; n += 1) {
    let bit = size >> 1;
    for (; (mirror & bit) !== 0; bit >>= 1) mirror ^= bit;
    mirror |= bit;
    if (n < mirror) {
      swap(re, n, mirror);
      swap(im, n, mirror);
    }
  }
}

function swap(values: Float64Array, a: number, b: number): void {
  const kept = values[a] ?? 0;
  values[a] = values[b] ?? 0;
  values[b] = kept;
}
