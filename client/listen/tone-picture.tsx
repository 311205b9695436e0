import type { JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { drawTone, type Ink, type Span } from './draw-tone.ts';
import type { Ear } from './ear.ts';
import type { EarState } from './ear-state.ts';

/** A real ident repeats every ten seconds or so: a whole one is always in sight. */
const SPAN_S = 14;

/** A recording up to this long is shown as a whole. */
const WHOLE_S = 40;

/** Without movement: seldom enough to be looked at calmly. */
const CALM_MS = 1000;

/** The level of the tone over time, with the marks and letters found: it moves with the sound. */
export function TonePicture({ ear }: { readonly ear: Ear }): JSX.Element {
  const canvas = useRef<HTMLCanvasElement>(null);
  const state = ear.state.value;
  useEffect(() => {
    const element = canvas.current;
    if (element === null) return undefined;
    const calm = matchMedia('(prefers-reduced-motion: reduce)').matches;
    const draw = (): void => {
      drawOn(element, ear, calm);
    };
    draw();
    return calm ? everySoOften(draw) : eachFrame(draw);
  }, [ear]);
  return <canvas ref={canvas} class="tone-picture" role="img" aria-label={inWords(state)} />;
}

function everySoOften(draw: () => void): () => void {
  const timer = setInterval(draw, CALM_MS);
  return () => {
    clearInterval(timer);
  };
}

function eachFrame(draw: () => void): () => void {
  let frame = 0;
  const next = (): void => {
    draw();
    frame = requestAnimationFrame(next);
  };
  frame = requestAnimationFrame(next);
  return () => {
    cancelAnimationFrame(frame);
  };
}

function drawOn(element: HTMLCanvasElement, ear: Ear, calm: boolean): void {
  const { width, height } = element.getBoundingClientRect();
  const scale = devicePixelRatio;
  const pixels = { width: Math.round(width * scale), height: Math.round(height * scale) };
  // Setting the size wipes the canvas, so only when it has changed.
  if (element.width !== pixels.width) element.width = pixels.width;
  if (element.height !== pixels.height) element.height = pixels.height;
  const pen = element.getContext('2d');
  if (pen === null || width === 0) return;
  pen.setTransform(scale, 0, 0, scale, 0, 0);
  const state = ear.state.peek();
  const levels = ear.levels();
  const nowS = levels.fromS + levels.levelsDb.length * levels.stepS;
  const marks = state.view?.marks ?? [];
  const span = spanOf(state, nowS, calm);
  drawTone(pen, { width, height }, { levels, marks, span }, inkOf(element));
}

/** Nothing slides where movement is not wanted: the picture fills from the left and begins anew. */
function spanOf({ lengthS }: EarState, nowS: number, calm: boolean): Span {
  if (lengthS !== null && lengthS <= WHOLE_S) return { fromS: 0, toS: Math.max(SPAN_S, lengthS) };
  const spanS = lengthS === null ? SPAN_S : WHOLE_S;
  if (nowS <= spanS) return { fromS: 0, toS: spanS };
  const fromS = calm ? Math.floor(nowS / spanS) * spanS : nowS - spanS;
  return { fromS, toS: fromS + spanS };
}

function inkOf(element: HTMLElement): Ink {
  const style = getComputedStyle(element);
  const of = (name: string): string => style.getPropertyValue(name).trim();
  return {
    ink: of('--ink'),
    soft: of('--soft'),
    hair: of('--hair'),
    font: `700 19px ${style.fontFamily}`,
  };
}

function inWords({ view }: EarState): string {
  if (view === null) return 'Level of the tone over time: nothing heard yet';
  const { toneHz, marks, letters } = view;
  const tone = toneHz === null ? 'no tone found' : `tone at ${toneHz.toFixed(0)} hertz`;
  const found = marks.length === 0 ? 'no marks' : `${marks.length} marks`;
  const read = letters === null ? 'no letters settled' : `letters ${Array.from(letters).join(' ')}`;
  return `Level of the tone over time: ${tone}, ${found}, ${read}`;
}
