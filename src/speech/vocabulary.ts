import type { Heard, HearingScale } from './heard.ts';

/**
 * What one typed or spoken sentence means: readings, a command, or why it was not understood.
 */
export function hear(sentence: string, scale: HearingScale = { dotsFullScale: 5 }): Heard {
  return {
    kind: 'rejected',
    reason: `"${sentence}" is not understood with ${scale.dotsFullScale} dots`,
  };
}
