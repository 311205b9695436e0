import { RAD_PER_DEG, turnDeg } from '../base/angle.ts';
import { REACTION_S, TURN_RATE_DEG_PER_S } from './tuning.ts';

/** Told at `atS` to take up a heading. Same north as the start heading. */
export interface HeadingChange {
  readonly atS: number;
  readonly toDeg: number;
}

/** Where a speed of one NM a second would have carried the aircraft through still air. */
export interface AirPath {
  readonly eastS: number;
  readonly northS: number;
  readonly durationS: number;
  /** Heading at the end, not wrapped. */
  readonly endHeadingDeg: number;
  /** How far apart the headings told lie, as the length of the difference of their unit vectors. */
  readonly turnChord: number;
}

/** No way flown. */
export const NOT_MOVED: AirPath = {
  eastS: 0,
  northS: 0,
  durationS: 0,
  endHeadingDeg: 0,
  turnChord: 0,
};

/** One heading flown until a reaction time has passed, then a standard-rate turn to the next, and on. */
function flyPiece(start: AirPath, toDeg: number, pieceS: number, reactionS: number): AirPath {
  const fromDeg = start.endHeadingDeg;
  const turn = turnDeg(fromDeg, toDeg);
  const straightS = Math.min(reactionS, pieceS);
  const turningS = Math.min(Math.abs(turn) / TURN_RATE_DEG_PER_S, pieceS - straightS);
  const endDeg = fromDeg + Math.sign(turn) * TURN_RATE_DEG_PER_S * turningS;
  const restS = pieceS - straightS - turningS;
  const from = fromDeg * RAD_PER_DEG;
  const end = endDeg * RAD_PER_DEG;
  const rate = Math.sign(turn) * TURN_RATE_DEG_PER_S * RAD_PER_DEG;
  const turnEast = turningS > 0 ? (Math.cos(from) - Math.cos(end)) / rate : 0;
  const turnNorth = turningS > 0 ? (Math.sin(end) - Math.sin(from)) / rate : 0;
  return {
    eastS: start.eastS + straightS * Math.sin(from) + turnEast + restS * Math.sin(end),
    northS: start.northS + straightS * Math.cos(from) + turnNorth + restS * Math.cos(end),
    durationS: start.durationS + pieceS,
    endHeadingDeg: endDeg,
    turnChord: start.turnChord + 2 * Math.abs(Math.sin(((end - from) / 2) % Math.PI)),
  };
}

/**
 * The path through still air in `durationS` seconds that starts on a heading and answers each change
 * after the pilot's reaction time, in the shorter direction, at standard rate.
 *
 * Closed form: straight pieces and arcs of a circle. What it leaves out (the wander of a heading held by
 * hand, a slower or later turn) is in the noise of the prediction.
 */
export function airPath(
  startHeadingDeg: number,
  changes: readonly HeadingChange[],
  durationS: number,
): AirPath {
  let path: AirPath = { ...NOT_MOVED, endHeadingDeg: startHeadingDeg };
  let targetDeg = startHeadingDeg;
  let reactionS = 0;
  for (const change of changes) {
    const untilS = Math.min(Math.max(change.atS, path.durationS), durationS);
    path = flyPiece(path, targetDeg, untilS - path.durationS, reactionS);
    if (change.atS >= durationS) return path;
    targetDeg = change.toDeg;
    reactionS = REACTION_S;
  }
  return flyPiece(path, targetDeg, durationS - path.durationS, reactionS);
}
