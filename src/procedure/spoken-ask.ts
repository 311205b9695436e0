import { digits, spokenBearing, spokenDistance } from '../speech/numbers.ts';
import type { Manner } from '../speech/numbers.ts';
import { dotsWords } from './phrases.ts';

/**
 * An alert's question as the voice says it: figures as words, abbreviations letter by letter.
 *
 * `ask` is written for the page ("Turn the OBS ten degrees", "distance 1.9", "heading 012", "needle 1.5 left").
 */
export function spokenAsk(ask: string, manner: Manner): string {
  return ask
    .replace(/needle (\d+(?:\.\d+)?) (left|right)/g, (_, dots: string, side: string) => {
      return `needle ${dotsWords(side === 'left' ? -Number(dots) : Number(dots))}`;
    })
    .replace(/heading (\d{3})/g, (_, deg: string) => `heading ${spokenBearing(Number(deg))}`)
    .replace(/distance (\d+(?:\.\d+)?)/g, (_, nm: string) => {
      return `distance ${spokenDistance(Number(nm), manner)}`;
    })
    .replace(/\d+(?:\.\d+)?/g, (figures) => {
      const n = Number(figures);
      return Number.isInteger(n) ? digits(n) : spokenDistance(n, manner);
    })
    .replace(/\b(OBS|DME|VOR|CDI|HSI|NM)\b/g, (letters) => Array.from(letters).join(' '));
}
