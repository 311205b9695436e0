/** Decibels as they are written: with a sign and a true minus. */
export function decibels(levelDb: number): string {
  const rounded = Math.round(levelDb);
  if (rounded === 0) return '0 dB';
  return `${rounded < 0 ? '−' : '+'}${Math.abs(rounded)} dB`;
}

/** How long something is kept, in the largest unit that says enough. */
export function keptFor(days: number): string {
  if (days < 1) {
    const hours = Math.max(1, Math.round(days * 24));
    return hours === 1 ? '1 hour' : `${hours} hours`;
  }
  if (days < 14) return days < 1.5 ? '1 day' : `${Math.round(days)} days`;
  return `${Math.round(days / 7)} weeks`;
}
