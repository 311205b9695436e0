import type { MarkHeard } from '../../src/ident/listening.ts';
import type { LevelStretch } from './ear-messages.ts';
import { dotLengthS, placeLetters } from './mark-letters.ts';

/** The stretch of time that the picture shows. */
export interface Span {
  readonly fromS: number;
  readonly toS: number;
}

/** What the picture is drawn with. */
export interface Ink {
  readonly ink: string;
  readonly soft: string;
  readonly hair: string;
  readonly font: string;
}

/** What is drawn. */
export interface TonePicture {
  readonly levels: LevelStretch;
  readonly marks: readonly MarkHeard[];
  readonly span: Span;
}

/** Height of what stands under the curve: marks and letters. */
const FOOT = 44;

const MARK = 8;

/** The least height of the picture in decibels: noise alone must not look like a signal. */
const LEAST_RANGE_DB = 30;

/** Draws level, marks and letters on a canvas of this size (CSS pixels). */
export function drawTone(
  pen: CanvasRenderingContext2D,
  size: { readonly width: number; readonly height: number },
  picture: TonePicture,
  ink: Ink,
): void {
  const { width, height } = size;
  const { span, marks } = picture;
  const xOf = (atS: number): number => ((atS - span.fromS) / (span.toS - span.fromS)) * width;
  pen.clearRect(0, 0, width, height);
  drawSeconds(pen, height - FOOT, span, xOf, ink);
  drawCurve(pen, height - FOOT, picture, xOf, ink);
  const seen = marks.filter(
    ({ startS, durationS }) => startS + durationS > span.fromS && startS < span.toS,
  );
  pen.fillStyle = ink.ink;
  for (const { startS, durationS } of seen) {
    const x = xOf(startS);
    pen.fillRect(x, height - FOOT + 6, Math.max(2, xOf(startS + durationS) - x), MARK);
  }
  const dotS = dotLengthS(seen);
  if (dotS === null) return;
  pen.font = ink.font;
  pen.textAlign = 'center';
  for (const { letter, fromS, toS } of placeLetters(seen, dotS)) {
    pen.fillText(letter, xOf((fromS + toS) / 2), height - 6);
  }
}

/** A thin line at each fifth second: how fast it is keyed can be seen. */
function drawSeconds(
  pen: CanvasRenderingContext2D,
  height: number,
  { fromS, toS }: Span,
  xOf: (atS: number) => number,
  { hair }: Ink,
): void {
  pen.fillStyle = hair;
  const step = toS - fromS > 60 ? 10 : 5;
  for (let atS = Math.ceil(fromS / step) * step; atS <= toS; atS += step) {
    pen.fillRect(xOf(atS), 0, 1, height);
  }
  pen.fillRect(0, height, xOf(toS), 1);
}

function drawCurve(
  pen: CanvasRenderingContext2D,
  height: number,
  { levels, span }: TonePicture,
  xOf: (atS: number) => number,
  { soft }: Ink,
): void {
  const { fromS, stepS, levelsDb } = levels;
  const first = Math.max(0, Math.floor((span.fromS - fromS) / stepS));
  const end = Math.min(levelsDb.length, Math.ceil((span.toS - fromS) / stepS));
  if (end - first < 2) return;
  const [low, high] = rangeOf(levelsDb.slice(first, end));
  const yOf = (levelDb: number): number =>
    height - Math.min(1, Math.max(0, (levelDb - low) / (high - low))) * (height - 4);
  pen.beginPath();
  pen.moveTo(xOf(fromS + first * stepS), height);
  for (let at = first; at < end; at += 1) {
    pen.lineTo(xOf(fromS + (at + 0.5) * stepS), yOf(levelsDb[at] ?? low));
  }
  pen.lineTo(xOf(fromS + end * stepS), height);
  pen.closePath();
  pen.fillStyle = soft;
  pen.fill();
}

/** From the noise (its lower quarter) to the loudest, decibels. */
function rangeOf(levelsDb: readonly number[]): readonly [number, number] {
  const sorted = levelsDb.toSorted((one, other) => one - other);
  const high = sorted.at(-1) ?? 0;
  const quarter = sorted[Math.floor(sorted.length / 4)] ?? high;
  return [Math.max(-100, Math.min(quarter, high - LEAST_RANGE_DB)), high + 3];
}
