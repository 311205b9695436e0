import type { JSX } from 'preact';
import { needleWords } from './figures.ts';

interface NeedleStripProps {
  readonly dotsFullScale: number;
  /** Half dots, left negative; null: not read. */
  readonly value: number | null;
  readonly expected: number | null;
  readonly isGiven: boolean;
  /** The flag is OFF: the needle tells nothing. */
  readonly isDead: boolean;
  readonly onChange: (dots: number | null) => void;
}

const WIDTH = 480;
const HEIGHT = 112;
const MARGIN = 20;
const MIDDLE = HEIGHT / 2;

/** The deviation scale as a straight strip: a finger slides along it in half dots. */
export function NeedleStrip(props: NeedleStripProps): JSX.Element {
  const { dotsFullScale, value, expected, isDead } = props;
  const clip = (dots: number): number =>
    Math.max(-dotsFullScale, Math.min(dotsFullScale, Math.round(dots * 2) / 2));
  const x = (dots: number): number =>
    WIDTH / 2 + (clip(dots) / dotsFullScale) * (WIDTH / 2 - MARGIN);
  const slideTo = (pointer: PointerEvent): void => {
    const strip = pointer.currentTarget as HTMLElement;
    const box = strip.getBoundingClientRect();
    const across = ((pointer.clientX - box.left) / box.width) * WIDTH - WIDTH / 2;
    props.onChange(clip((across / (WIDTH / 2 - MARGIN)) * dotsFullScale));
  };
  const onKeyDown = (key: KeyboardEvent): void => {
    const next = keyStep(key.key, value ?? 0, dotsFullScale);
    if (next === undefined) return;
    key.preventDefault();
    props.onChange(clip(next));
  };
  const stands = needleWords(value, dotsFullScale);
  const words = isDead
    ? 'the flag is OFF: it tells nothing'
    : props.isGiven
      ? stands
      : `expected ${stands}`;
  return (
    <div class="needle-block">
      <div class="lab">
        <span>Needle</span>
        <span class={props.isGiven ? 'ink' : ''}>{words}</span>
      </div>
      <div
        class={isDead ? 'strip dead' : 'strip'}
        role="slider"
        tabIndex={0}
        aria-label="Needle"
        aria-disabled={isDead}
        aria-valuemin={-dotsFullScale}
        aria-valuemax={dotsFullScale}
        aria-valuenow={value ?? 0}
        aria-valuetext={words}
        onPointerDown={(pointer) => {
          if (isDead) return;
          (pointer.currentTarget as HTMLElement).setPointerCapture(pointer.pointerId);
          slideTo(pointer);
        }}
        onPointerMove={(pointer) => {
          if (!isDead && pointer.buttons !== 0) slideTo(pointer);
        }}
        onKeyDown={isDead ? undefined : onKeyDown}
      >
        <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} preserveAspectRatio="none" aria-hidden="true">
          <line class="scale" x1={MARGIN} x2={WIDTH - MARGIN} y1={MIDDLE} y2={MIDDLE} />
          {dotsOf(dotsFullScale).map((dots) => (
            <line
              key={dots}
              class="tick"
              x1={x(dots)}
              x2={x(dots)}
              y1={MIDDLE - (Math.abs(dots) === dotsFullScale ? 20 : 12)}
              y2={MIDDLE + (Math.abs(dots) === dotsFullScale ? 20 : 12)}
            />
          ))}
          <path class="centre" d={`M${WIDTH / 2} ${MIDDLE - 26} l9 14 h-18z`} />
          {expected === null || isDead ? null : (
            <line class="needle-expected" x1={x(expected)} x2={x(expected)} y1={20} y2={92} />
          )}
          {value === null || isDead ? null : (
            <line
              class={props.isGiven ? 'needle' : 'needle dim'}
              x1={x(value)}
              x2={x(value)}
              y1={12}
              y2={100}
            />
          )}
        </svg>
      </div>
    </div>
  );
}

function dotsOf(dotsFullScale: number): number[] {
  const whole = Array.from({ length: Math.ceil(dotsFullScale) }, (_, index) => index);
  const right = [...whole.slice(1), dotsFullScale];
  return [...right.map((dots) => -dots), 0, ...right];
}

function keyStep(key: string, value: number, dotsFullScale: number): number | undefined {
  switch (key) {
    case 'ArrowLeft':
    case 'ArrowDown':
      return value - 0.5;
    case 'ArrowRight':
    case 'ArrowUp':
      return value + 0.5;
    case 'Home':
      return -dotsFullScale;
    case 'End':
      return dotsFullScale;
    case '0':
      return 0;
    default:
      return undefined;
  }
}
