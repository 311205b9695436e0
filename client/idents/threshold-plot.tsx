import type { JSX } from 'preact';
import type { Session } from '../../src/ident/drill/practice.ts';
import { NOISE_STEPS } from '../../src/ident/drill/staircase.ts';
import { decibels } from './practise-figures.ts';

const WIDTH = 440;
const HEIGHT = 200;
const LEFT = 68;
const RIGHT = 16;
const TOP = 14;
const BOTTOM = 30;
const LINES_DB = [15, 6, -3, -12];

interface Point {
  readonly atMs: number;
  readonly levelDb: number;
}

/** The noise threshold after each session, over the weeks; upwards is better. */
export function ThresholdPlot({
  sessions,
}: {
  readonly sessions: readonly Session[];
}): JSX.Element {
  const points = pointsOf(sessions);
  const last = points.at(-1);
  const first = points[0];
  if (last === undefined || first === undefined) {
    return (
      <p class="soft">
        No threshold yet: it takes about twenty questions in noise. It is the level at which about
        seven in ten are right.
      </p>
    );
  }
  const spanMs = Math.max(1, last.atMs - first.atMs);
  const x = (atMs: number): number =>
    points.length === 1
      ? (LEFT + WIDTH - RIGHT) / 2
      : LEFT + ((atMs - first.atMs) / spanMs) * (WIDTH - LEFT - RIGHT);
  return (
    <figure class="threshold">
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={`Threshold in noise: ${points
          .map(({ atMs, levelDb }) => `${day(atMs)} ${decibels(levelDb)}`)
          .join(', ')}`}
      >
        {LINES_DB.map((levelDb) => (
          <g key={levelDb}>
            <line class="grid" x1={LEFT} x2={WIDTH - RIGHT} y1={y(levelDb)} y2={y(levelDb)} />
            <text x={LEFT - 8} y={y(levelDb) + 5} text-anchor="end">
              {decibels(levelDb)}
            </text>
          </g>
        ))}
        <polyline
          class="course"
          points={points.map(({ atMs, levelDb }) => `${x(atMs)},${y(levelDb)}`).join(' ')}
        />
        {points.map(({ atMs, levelDb }) => (
          <circle key={atMs} cx={x(atMs)} cy={y(levelDb)} r="4.5" />
        ))}
        <text
          x={x(first.atMs)}
          y={HEIGHT - 8}
          text-anchor={points.length === 1 ? 'middle' : 'start'}
        >
          {day(first.atMs)}
        </text>
        {points.length === 1 ? null : (
          <text x={x(last.atMs)} y={HEIGHT - 8} text-anchor="end">
            {day(last.atMs)}
          </text>
        )}
      </svg>
      <figcaption class="soft">
        Now {decibels(last.levelDb)} tone over noise in 3 kHz, with about seven in ten right.
        Upwards is weaker: better.
      </figcaption>
    </figure>
  );
}

function pointsOf(sessions: readonly Session[]): readonly Point[] {
  return sessions.flatMap(({ startedAtMs, thresholdDb, answered }) => {
    const hasNoise = answered.some(({ question }) => question.purpose === 'noise');
    return thresholdDb === null || !hasNoise ? [] : { atMs: startedAtMs, levelDb: thresholdDb };
  });
}

function y(levelDb: number): number {
  const { easiestDb, hardestDb } = NOISE_STEPS;
  const along = (easiestDb - levelDb) / (easiestDb - hardestDb);
  return HEIGHT - BOTTOM - along * (HEIGHT - TOP - BOTTOM);
}

function day(atMs: number): string {
  return new Date(atMs).toLocaleDateString('en-GB', { day: 'numeric', month: 'short' });
}
