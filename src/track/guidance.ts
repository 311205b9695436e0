/** Where on the leg the aircraft seems to be. `lost`: the estimate cannot be trusted. */
export type Phase =
  'intercept' | 'track' | 'near-station' | 'passage' | 'outbound' | 'arriving' | 'lost';

/** How far to go. Each number is null when the readings do not show it: nothing is invented. */
export interface HowFar {
  /** Ground distance to the end of the leg, NM; 0 once it is past. */
  readonly toGoNm: number | null;
  /** How far the end of the leg lies behind, NM; null while it is ahead, or while nothing shows it. */
  readonly pastEndNm: number | null;
  readonly toGoS: number | null;
  readonly groundSpeedKt: number | null;
  /** One standard deviation of `toGoNm`. */
  readonly sdNm: number | null;
  /** One standard deviation of `toGoS`. */
  readonly sdS: number | null;
  /** One standard deviation of `groundSpeedKt`. */
  readonly sdKt: number | null;
}

/** Which way to correct: one heading, how long to hold it, and the heading after that. */
export interface WhichWay {
  readonly turn: 'left' | 'right' | 'none';
  /** Size of the turn, 0 to 180. */
  readonly turnDeg: number;
  /** Heading to fly, magnetic, 0 <= x < 360. */
  readonly headingDeg: number;
  readonly holdS: number;
  /** Heading after `holdS`, magnetic; the same as `headingDeg` when nothing changes. */
  readonly thenHeadingDeg: number;
}

/** The wind as the tool hears it in the readings: from, magnetic, with its standard deviation. */
export interface WindSeen {
  readonly fromDegMag: number;
  readonly speedKt: number;
  /** One standard deviation of the wind vector along its worse axis, knots. */
  readonly sdKt: number;
}

/** What the tool thinks, as far as the readings show it. */
export interface EstimateSeen {
  /** Right of course positive, NM; null while nothing tells. */
  readonly crossTrackNm: number | null;
  readonly crossTrackSdNm: number | null;
  /** Track minus heading, degrees, positive: blown to the right; null while the wind is unknown. */
  readonly driftDeg: number | null;
  /** Null while the wind cannot be seen in the readings. */
  readonly wind: WindSeen | null;
}

/** Which indication or habit an alert is about. */
export type AlertKind =
  | 'needle-not-moving'
  | 'wrong-station'
  | 'dme-not-moving'
  | 'dme-disagrees'
  | 'heading-indicator-disagrees'
  | 'reverse-sensing'
  | 'flag-off'
  | 'ident-not-confirmed'
  | 'outside-reception'
  | 'readings-disagree';

/** Something does not fit; `ask` is the one check that tells the candidates apart, as spoken. */
export interface Alert {
  readonly kind: AlertKind;
  readonly ask: string;
}

/**
 * Why needle and flag may be read the wrong way round: the OBS is set to the reciprocal; the flag contradicts
 * where the aircraft is; FROM on a leg to a station that nothing shows to be passed; the same with a distance that grows; TO on a leg from a station
 * that is still ahead; the needle answers the headings flown the wrong way.
 */
export type ReverseCause =
  | 'obs-reciprocal'
  | 'flag-against-place'
  | 'from-before-station'
  | 'station-behind'
  | 'to-before-station'
  | 'needle-backwards';

/** What the guidance of a leg that is an arc says beyond that of a radial. */
export interface ArcSeen {
  /** The turn onto the arc is still to come; `howFar` is then the distance to it. */
  readonly isJoining: boolean;
  /** That turn: which way, how far before the arc it begins, and in how many seconds it is to be told. */
  readonly turn: 'left' | 'right' | null;
  readonly turnLeadNm: number | null;
  readonly turnInS: number | null;
  /** Outside the arc positive, inside negative, NM; null before the turn. */
  readonly outsideNm: number | null;
  /** The way along the arc, magnetic, abeam the aircraft or, before the turn, where it is joined. */
  readonly tangentDeg: number;
  /** Heading that makes this way good in the wind, magnetic. */
  readonly alongHeadingDeg: number;
  /** Degrees still to the radial where the arc ends, negative past it; null before the turn. */
  readonly toRadialDeg: number | null;
  /** So many radials before it the turn off the arc begins, by how the radial is then flown. */
  readonly leadRadialsDeg: {
    readonly inbound: number;
    readonly outbound: number;
    /** Not known how: a turn of 90 degrees. */
    readonly plain: number;
  };
}

/** What the estimate leads to: how far, which way, and what to ask for next. */
export interface Guidance {
  readonly phase: Phase;
  readonly howFar: HowFar;
  readonly whichWay: WhichWay;
  readonly seen: EstimateSeen;
  /** What the tool most needs to know next, or null when nothing is missing. */
  readonly nextQuestion: Question | null;
  /** When the next reading is worth most, seconds after the last one. */
  readonly nextReadingInS: number;
  /** What the alert `reverse-sensing` is about; left out where there is none. */
  readonly reverseSensing?: ReverseCause;
  /** The wind, as far as it is told, leaves no heading that keeps the line or hardly any way along it. */
  readonly isWindTooStrong?: boolean;
  /** Only on a leg that is an arc, once the place is known. */
  readonly arc?: ArcSeen;
}

/** The reading that would help most. */
export type Question =
  | 'centre-needle-from'
  | 'read-heading'
  | 'read-needle'
  | 'read-dme'
  | 'read-flag'
  | 'turn-obs-three-left'
  | 'compare-compass'
  | 'repeat-reading';
