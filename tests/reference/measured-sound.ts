/** Envelope of the tone: mixed down and averaged over four cycles, 3.9 ms at 1020 Hz. */
export function envelopeOf(samples: Float32Array, toneHz: number, rateHz: number): Float64Array {
  const width = Math.round((4 * rateHz) / toneHz);
  const envelope = new Float64Array(samples.length);
  let inPhase = 0;
  let quadrature = 0;
  const mixed = Array.from(samples, (sample, index) => {
    const phase = (2 * Math.PI * toneHz * index) / rateHz;
    return [sample * Math.cos(phase), sample * Math.sin(phase)] as const;
  });
  mixed.forEach(([cos, sin], index) => {
    const [oldCos, oldSin] = mixed[index - width] ?? [0, 0];
    inPhase += cos - oldCos;
    quadrature += sin - oldSin;
    const middle = index - Math.floor(width / 2);
    if (middle >= 0) envelope[middle] = (2 * Math.hypot(inPhase, quadrature)) / width;
  });
  return envelope;
}

/** Lengths of on and off at half height, seconds, from the first rise to the last fall. */
export function lengthsAtHalfHeight(envelope: Float64Array, rateHz: number): number[] {
  const half = envelope.reduce((most, level) => Math.max(most, level), 0) / 2;
  const turns: number[] = [];
  envelope.forEach((level, index) => {
    const before = envelope[index - 1] ?? 0;
    if (level > half !== before > half) turns.push(index + (half - level) / (level - before));
  });
  return turns.slice(1).map((turn, index) => (turn - (turns[index] ?? 0)) / rateHz);
}
