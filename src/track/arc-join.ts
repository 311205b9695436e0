import { turnDeg, wrap360 } from '../base/angle.ts';
import { S_PER_H } from '../base/units.ts';
import { alongLine, lineSpeedKt } from './along-line.ts';
import { arcAirOf, headingAlongDeg } from './arc-air.ts';
import { turnRadiusNm } from './arc-lead.ts';
import { arcPlaceOf, turnOntoArcNm } from './arc-place.ts';
import type { ArcScene } from './arc-scene.ts';
import { crossingDegTrue } from './arc-scene.ts';
import type { StateMean } from './belief.ts';
import { placeOf } from './place.ts';
import { planeFromMagneticDeg } from './scene.ts';
import type { Scene } from './scene.ts';
import { REACTION_S } from './tuning.ts';

/** Turned by more than this off the radial towards the arc, the turn onto it has been made, degrees. */
const TURNED_DEG = 50;
/** So far round from the radial on which the arc is joined, the aircraft is on it, degrees. */
const ROUND_DEG = 12;
/** Farther than this from the turn neither says anything, NM. */
const TURNED_WITHIN_NM = 3;

/** The turn from the radial onto the arc, as it lies ahead. */
export interface ArcJoin {
  /** Along the radial to where the turn begins, NM over the ground. */
  readonly toTurnNm: number;
  /** The same until the pilot has to be told, seconds: the reaction time is taken off. */
  readonly toTellS: number;
  readonly groundSpeedKt: number;
  /** How far before the arc the turn begins, NM. */
  readonly leadNm: number;
  /** The way along the arc where the radial crosses it, degrees true at the station. */
  readonly alongDeg: number;
  /** Heading out of the turn, magnetic: that way, the wind allowed for. */
  readonly headingDeg: number;
  readonly turn: 'left' | 'right';
}

/**
 * The turn onto the arc, or null once the aircraft is on the arc: within the lead of it, beyond it, or close before
 * it and turned away from the radial or already some way round.
 *
 * `presentHeadingDeg`: held now, magnetic; null: not known, then only the distance tells.
 */
export function joinAhead(
  mean: StateMean,
  scene: Scene,
  arc: ArcScene,
  presentHeadingDeg: number | null,
): ArcJoin | null {
  const place = arcPlaceOf(mean, arc);
  const groundSpeedKt = lineSpeedKt(alongLine(mean, scene));
  const leadNm = turnOntoArcNm(turnRadiusNm(groundSpeedKt), arc.radiusNm, scene.isTo);
  const toArcNm = scene.isTo ? place.outsideNm : -place.outsideNm;
  const toTurnNm = toArcNm - leadNm;
  const isTurnLeft = scene.isTo === (arc.sense === 1);
  if (toTurnNm <= 0) return null;
  const isRound = place.sweptDeg > ROUND_DEG;
  const isTurned = isRound || hasTurned(mean, scene, presentHeadingDeg, isTurnLeft);
  if (isTurned && toTurnNm < TURNED_WITHIN_NM) return null;
  const joinDeg = crossingDegTrue(arc, arc.joinRadialDegTrue - mean.vorBiasDeg);
  const alongDeg = wrap360(joinDeg + 90 * arc.sense);
  return {
    toTurnNm,
    toTellS: (toTurnNm / groundSpeedKt) * S_PER_H - REACTION_S,
    groundSpeedKt,
    leadNm,
    alongDeg,
    headingDeg: headingAlongDeg(arcAirOf(mean, scene), alongDeg),
    turn: isTurnLeft ? 'left' : 'right',
  };
}

function hasTurned(
  mean: StateMean,
  scene: Scene,
  presentHeadingDeg: number | null,
  isTurnLeft: boolean,
): boolean {
  if (presentHeadingDeg === null) return false;
  const planeDeg = presentHeadingDeg + planeFromMagneticDeg(scene, placeOf(mean));
  const turned = turnDeg(scene.courseDegTrue, planeDeg);
  return (isTurnLeft ? -turned : turned) > TURNED_DEG;
}
