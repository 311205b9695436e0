import type { JSX } from 'preact';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import './plan-view.css';
import type { LegFix } from '../../src/leg/route/leg-fixes.ts';
import type { PlannedRoute } from '../route/read-route.ts';
import {
  drawnRoute,
  type Drawn,
  type DrawnCrossing,
  type DrawnLeg,
  type DrawnStation,
} from './layout.ts';
import { roundLengthNm } from './project.ts';
import { startZooming, WHOLE, type View, type Zooming } from './zooming.ts';

interface Size {
  readonly widthPx: number;
  readonly heightPx: number;
}

interface PlanViewProps {
  readonly plan: PlannedRoute;
  readonly fixes: readonly (readonly LegFix[])[];
}

const KEYS: Readonly<Record<string, (zooming: Zooming) => void>> = {
  '+': ({ by }) => {
    by(1.5);
  },
  '-': ({ by }) => {
    by(1 / 1.5);
  },
  '0': ({ whole }) => {
    whole();
  },
  ArrowLeft: ({ move }) => {
    move(-0.1, 0);
  },
  ArrowRight: ({ move }) => {
    move(0.1, 0);
  },
  ArrowUp: ({ move }) => {
    move(0, -0.1);
  },
  ArrowDown: ({ move }) => {
    move(0, 0.1);
  },
};

/** The flight seen from above: stations, legs, cones, reception, DME, north and scale. */
export function PlanView({ plan, fixes }: PlanViewProps): JSX.Element {
  const drawn = useMemo(() => drawnRoute(plan, fixes), [plan, fixes]);
  const svg = useRef<SVGSVGElement>(null);
  const zooming = useRef<Zooming | null>(null);
  const [view, setView] = useState<View>(WHOLE);
  const [size, setSize] = useState<Size>({ widthPx: 770, heightPx: 570 });
  useEffect(() => {
    const drawing = svg.current;
    if (drawing === null) return;
    const started = startZooming(drawing, setView);
    zooming.current = started;
    const watching = new ResizeObserver(() => {
      const { clientWidth, clientHeight } = drawing;
      if (clientWidth > 0) setSize({ widthPx: clientWidth, heightPx: clientHeight });
    });
    watching.observe(drawing);
    return () => {
      watching.disconnect();
      started.end();
    };
  }, []);
  useEffect(() => {
    zooming.current?.whole();
  }, [drawn]);
  const press = (key: string): boolean => {
    const act = Object.hasOwn(KEYS, key) ? KEYS[key] : undefined;
    if (act === undefined || zooming.current === null) return false;
    act(zooming.current);
    return true;
  };
  const { box } = drawn;
  return (
    <figure class="plan-view">
      <svg
        ref={svg}
        viewBox={`${box.x} ${box.y} ${box.width} ${box.height}`}
        role="img"
        aria-label={inWords(drawn)}
        tabindex={0}
        onKeyDown={(down) => {
          if (press(down.key)) down.preventDefault();
        }}
      >
        <Drawing drawn={drawn} view={view} size={size} />
      </svg>
      <figcaption class="row wrap no-print">
        {[
          { key: '+', name: 'Nearer' },
          { key: '-', name: 'Farther' },
          { key: '0', name: 'The whole' },
        ].map(({ key, name }) => (
          <button
            key={key}
            type="button"
            onClick={() => {
              press(key);
            }}
          >
            {name}
          </button>
        ))}
        <span class="soft">Two fingers, or + and - and the arrows, move it.</span>
      </figcaption>
    </figure>
  );
}

function inWords({ legs, stations }: Drawn): string {
  const idents = stations.map(({ ident }) => ident).join(', ');
  const courses = legs.map(({ label }, at) => `leg ${at + 1} on ${label}`).join(', ');
  return `The flight from above, by ${idents}: ${courses}`;
}

/** Letters keep this size on the screen, however large the drawing is, px. */
const LETTER_PX = 15;

interface DrawingProps {
  readonly drawn: Drawn;
  readonly view: View;
  /** Of the drawing on the screen. */
  readonly size: Size;
}

function Drawing({ drawn, view, size }: DrawingProps): JSX.Element {
  const { box } = drawn;
  const unit = LETTER_PX * Math.max(box.width / size.widthPx, box.height / size.heightPx);
  const text = unit / view.k;
  return (
    <>
      <g transform={`translate(${view.x} ${view.y}) scale(${view.k})`}>
        {drawn.stations.map((station) => (
          <Reach key={station.id} station={station} />
        ))}
        {drawn.crossings.map((crossing, at) => (
          <Crossing key={at} crossing={crossing} text={text} />
        ))}
        {drawn.legs.map((leg, at) => (
          <Leg key={at} leg={leg} text={text} />
        ))}
        <circle class="end" r={text / 3} cx={drawn.start.x} cy={drawn.start.y} />
        <circle class="end goal" r={text / 3} cx={drawn.destination.x} cy={drawn.destination.y} />
        {drawn.stations.map((station) => (
          <Station key={station.id} station={station} text={text} />
        ))}
      </g>
      <Frame box={box} unit={unit} scale={view.k} />
    </>
  );
}

function Crossing({
  crossing: { ident, from, to },
  text,
}: {
  readonly crossing: DrawnCrossing;
  readonly text: number;
}): JSX.Element {
  return (
    <>
      <line class="crossing" x1={from.x} y1={from.y} x2={to.x} y2={to.y} />
      <circle class="station-mark" cx={from.x} cy={from.y} r={text / 5} />
      <text class="tick-figure" x={from.x} y={from.y + text} font-size={text * 0.75}>
        {ident}
      </text>
    </>
  );
}

function Reach({ station }: { readonly station: DrawnStation }): JSX.Element {
  const { at, coneNm, reachNm } = station;
  return (
    <>
      <circle class="reach" cx={at.x} cy={at.y} r={reachNm} />
      <circle class="cone" cx={at.x} cy={at.y} r={coneNm} />
    </>
  );
}

function Station({
  station,
  text,
}: {
  readonly station: DrawnStation;
  readonly text: number;
}): JSX.Element {
  const { at, ident } = station;
  return (
    <>
      <circle class="station-mark" cx={at.x} cy={at.y} r={text / 4} />
      <text class="ident" x={at.x + text / 2} y={at.y + text} font-size={text}>
        {ident}
      </text>
    </>
  );
}

function Leg({ leg, text }: { readonly leg: DrawnLeg; readonly text: number }): JSX.Element {
  const { from, to, label, ticks, isChangeOver } = leg;
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.hypot(dx, dy) || 1;
  // To the left of the leg as it is flown.
  const across = { x: dy / length, y: -dx / length };
  // Figures that would stand on each other are left out.
  const everyNm = [5, 10, 20].find((nm) => nm > text) ?? 1000;
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  return (
    <>
      <line class="leg" x1={from.x} y1={from.y} x2={to.x} y2={to.y} />
      {ticks.map(({ at, label: nm }) => (
        <g key={nm}>
          <line
            class="tick"
            x1={at.x - (across.x * text) / 4}
            y1={at.y - (across.y * text) / 4}
            x2={at.x + (across.x * text) / 4}
            y2={at.y + (across.y * text) / 4}
          />
          {Number(nm) % everyNm === 0 ? (
            <text
              class="tick-figure"
              x={at.x - across.x * text * 0.75}
              y={at.y - across.y * text * 0.75 + text * 0.2}
              font-size={text * 0.6}
            >
              {nm}
            </text>
          ) : null}
        </g>
      ))}
      {isChangeOver ? (
        <path
          class="change-over"
          d={`M${to.x - text / 3} ${to.y - text / 3}L${to.x + text / 3} ${to.y + text / 3}M${to.x - text / 3} ${to.y + text / 3}L${to.x + text / 3} ${to.y - text / 3}`}
        />
      ) : null}
      <text
        class="course"
        x={middle.x + across.x * text * 1.3}
        y={middle.y + across.y * text * 1.3 + text * 0.3}
        font-size={text * 0.9}
      >
        {label}
      </text>
    </>
  );
}

/** North and scale, which stay where they are. */
function Frame({
  box,
  unit,
  scale,
}: {
  readonly box: Drawn['box'];
  readonly unit: number;
  readonly scale: number;
}): JSX.Element {
  const barNm = roundLengthNm(box.width / scale / 4);
  const bar = barNm * scale;
  const [x, y] = [box.x + unit, box.y + box.height - unit];
  const north = { x: box.x + box.width - 1.5 * unit, y: box.y + 3 * unit };
  return (
    <g class="frame">
      <path d={`M${x} ${y - unit / 3}V${y}H${x + bar}V${y - unit / 3}`} />
      <text x={x + bar + unit / 3} y={y} font-size={unit * 0.9}>
        {barNm} NM
      </text>
      <path d={`M${north.x} ${north.y}V${north.y - 1.6 * unit}`} />
      <text x={north.x} y={north.y - 1.8 * unit} font-size={unit * 0.9} text-anchor="middle">
        N
      </text>
    </g>
  );
}
