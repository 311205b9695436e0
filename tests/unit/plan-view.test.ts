import { describe, expect, it } from 'vitest';
import { trueDeg } from '../../src/base/bearing.ts';
import { placeAt } from '../../src/earth/geodesic.ts';
import { boxOf, middleOf, projection, roundLengthNm } from '../../client/plan-view/project.ts';
import { ocean } from './station-sets.ts';

describe('the plan view', () => {
  it('keeps distance and direction from its middle', () => {
    const point = projection(ocean)(placeAt(ocean, trueDeg(60), 40));
    expect(point.x).toBeCloseTo(40 * Math.sin(Math.PI / 3), 9);
    expect(point.y).toBeCloseTo(-20, 9);
  });

  it('has its middle halfway between the places that are farthest apart', () => {
    const end = placeAt(ocean, trueDeg(90), 200);
    const middle = middleOf([ocean, placeAt(ocean, trueDeg(90), 30), end]);
    const project = projection(middle);
    const far = [project(ocean), project(end)].map(({ x, y }) => Math.hypot(x, y));
    expect(far[0]).toBeCloseTo(100, 6);
    expect(far[1]).toBeCloseTo(100, 6);
  });

  it('is whole across the antimeridian and over the pole', () => {
    const west = { latitudeDeg: 10, longitudeDeg: 179.5 };
    const east = { latitudeDeg: 10, longitudeDeg: -179.5 };
    const across = projection(middleOf([west, east]));
    expect(Math.abs(across(west).x - across(east).x)).toBeCloseTo(59.2, 0);
    const near = { latitudeDeg: 89, longitudeDeg: 0 };
    const beyond = { latitudeDeg: 89, longitudeDeg: 180 };
    const over = projection(middleOf([near, beyond]));
    expect(
      Math.abs(over(near).y - over(beyond).y) + Math.abs(over(near).x - over(beyond).x),
    ).toBeGreaterThan(119);
  });

  it('frames its points with a margin, and a single one with room', () => {
    expect(
      boxOf([
        { x: 0, y: 0 },
        { x: 80, y: 40 },
      ]),
    ).toEqual({ x: -10, y: -10, width: 100, height: 60 });
    expect(boxOf([{ x: 3, y: 3 }]).width).toBe(12.5);
  });

  it.each([
    [0.7, 0.5],
    [7, 5],
    [19, 10],
    [20, 20],
    [99, 50],
    [100, 100],
  ])('has for %d NM a scale bar of %d', (most, length) => {
    expect(roundLengthNm(most)).toBeCloseTo(length, 9);
  });
});
