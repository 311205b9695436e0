import type { Aircraft } from '../leg/leg.ts';
import type { DatedLeg } from '../leg/leg-frame.ts';
import type { AirPath } from './air-path.ts';
import type { RangeCheck } from './bearing-change-record.ts';
import type { Belief } from './belief.ts';
import type { Misfit } from './judge.ts';
import type { Piece } from './range-pieces.ts';
import type { Flag, Reading } from './reading.ts';
import type { Scene } from './scene.ts';
import type { Watch } from './watch-record.ts';

/** The headings that the pilot was told to fly: one now, another after a while. Magnetic, local. */
export interface ToldPlan {
  readonly headingDeg: number;
  /** Seconds until the second heading; null: the first one stays. */
  readonly holdS: number | null;
  readonly thenHeadingDeg: number;
}

/** What stands when a leg begins: nothing but the forecast, or what another leg has left behind. */
export interface LegStart {
  /** Air and instruments; the place too where `isPlaced`. */
  readonly belief: Belief;
  readonly isPlaced: boolean;
  readonly atMs: number | null;
  readonly headingDeg: number | null;
  readonly overStation: OverStation | null;
}

/** What was believed before the station, while the readings over it tell nothing about the place (over-station.ts). */
export interface OverStation {
  /** After the last reading that told something. */
  readonly belief: Belief;
  /** The way through the air since then, in magnetic directions. */
  readonly path: AirPath;
}

/** Readings that do not fit: kept out until another one tells who is right. */
export interface Doubt {
  readonly misfit: Misfit;
  readonly reading: Reading;
  /** How many in a row did not fit what was believed. */
  readonly count: number;
  /** What would be believed if the readings in doubt are right. */
  readonly otherwise: Belief;
  /** How many readings in a row have since fitted that. */
  readonly agreed: number;
  /** Whether the DME has shown the same distance all the while, though it should not. */
  readonly isDmeStill: boolean;
}

/** A settled place that was given up for another one. */
export interface Jump {
  /** What had not fitted. */
  readonly misfit: Misfit;
  /** For how many more readings it is told. */
  readonly readingsLeft: number;
}

/** All that is needed to go on from where the readings have led so far: plain data. */
export interface Estimate {
  readonly scene: Scene;
  readonly leg: DatedLeg;
  readonly aircraft: Aircraft;
  readonly start: LegStart;
  /** In time order. */
  readonly readings: readonly Reading[];
  readonly belief: Belief;
  /** False until the first reading (or what is carried over) tells where the aircraft is. */
  readonly isPlaced: boolean;
  /** What is open while no needle was read off its stop since the place was set (see open-bearing.ts); else null. */
  readonly openBearing: readonly Piece[] | null;
  /** Null unless the last reading was taken over the station; `belief` is then this one, carried on. */
  readonly overStation: OverStation | null;
  /** Time of the last reading, or of what was carried over. */
  readonly atMs: number | null;
  /** Heading held then, magnetic. */
  readonly headingDeg: number | null;
  /** What the pilot was told after it. */
  readonly plan: ToldPlan | null;
  /** What a leg to the station would have told, on one from it whose station is still ahead (see inbound-plan.ts). */
  readonly inbound: ToldPlan | null;
  /** Readings of this leg that were taken in whole since the place was last started afresh. */
  readonly takenIn: number;
  readonly doubt: Doubt | null;
  readonly watch: Watch;
  /** The place was started afresh from the last reading because nothing fitted. */
  readonly isLost: boolean;
  /** The place has jumped to where readings in doubt had it; told for a while. */
  readonly jump: Jump | null;
  /** The last reading is a cross-bearing that does not fit, and was not used. */
  readonly isCrossOff: boolean;
  /** The heading in the last reading that was taken for a slip, magnetic; null: it was believed, or none was read. */
  readonly headingDoubtDeg: number | null;
  readonly flag: Flag | null;
  readonly lastToAtMs: number | null;
  /** On a `to` leg: the flag has turned to FROM at the station. */
  readonly hasPassed: boolean;
  readonly rangeCheck: RangeCheck;
}
