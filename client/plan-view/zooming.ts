import { select } from 'd3-selection';
import { zoom, zoomIdentity, type D3ZoomEvent } from 'd3-zoom';

/** How far the drawing is moved and how many times it is enlarged. */
export interface View {
  readonly x: number;
  readonly y: number;
  readonly k: number;
}

/** The whole of it. */
export const WHOLE: View = { x: 0, y: 0, k: 1 };

/** Moves and enlarges a drawing by touch, wheel and by what the buttons and keys ask for. */
export interface Zooming {
  readonly by: (factor: number) => void;
  /** In parts of what is in sight. */
  readonly move: (right: number, down: number) => void;
  readonly whole: () => void;
  readonly end: () => void;
}

const MOST_TIMES = 40;

/** Begins to follow touch and wheel over a drawing; `onView` hears of every change. */
export function startZooming(svg: SVGSVGElement, onView: (view: View) => void): Zooming {
  const behaviour = zoom<SVGSVGElement, unknown>()
    .scaleExtent([1, MOST_TIMES])
    // One finger scrolls the page as everywhere; two move and enlarge. The wheel only with Control.
    .filter((event: Event) => {
      if (event instanceof WheelEvent) return event.ctrlKey;
      return 'touches' in event ? (event as TouchEvent).touches.length === 2 : true;
    })
    .on('zoom', ({ transform }: D3ZoomEvent<SVGSVGElement, unknown>) => {
      onView({ x: transform.x, y: transform.y, k: transform.k });
    });
  const drawing = select(svg);
  drawing.call(behaviour);
  return {
    by: (factor) => {
      drawing.call((each) => {
        behaviour.scaleBy(each, factor);
      });
    },
    move: (right, down) => {
      const { width, height } = svg.viewBox.baseVal;
      drawing.call((each) => {
        behaviour.translateBy(each, -right * width, -down * height);
      });
    },
    whole: () => {
      drawing.call((each) => {
        behaviour.transform(each, zoomIdentity);
      });
    },
    end: () => {
      drawing.on('.zoom', null);
    },
  };
}
