/**
 * What the filter assumes about the air, the instruments and the pilot. The table with the reason for
 * each value is in docs/method.md, section Tracking.
 */

/** Wind before anything is known: one standard deviation of each component, knots. */
export const WIND_UNKNOWN_SD_KT = 20;
/** Error of a forecast wind, each component. */
export const WIND_FORECAST_SD_KT = 7;
/** Wander of the wind: variance of each component gained in a second, kt^2 (6 kt in an hour). */
export const WIND_WANDER_KT2_PER_S = 36 / 3600;

/** Error of an indicated radial that stays for a while. */
export const VOR_BIAS_SD_DEG = 1.5;
/** How long it stays, as the radial or the place changes. */
export const VOR_BIAS_TIME_S = 1800;
/** Error of an indicated radial from one reading to the next. */
export const SCALLOPING_SD_DEG = 0.5;
/** To what part of a dot a pilot reads the needle. */
export const NEEDLE_STEP_DOTS = 0.5;

export const AIRSPEED_ERROR_SD_KT = 3;
/** Airspeed from gusts, over one interval. */
export const GUST_SD_KT = 1;
export const HEADING_ERROR_SD_DEG = 2;
/** Wander of the direction indicator: variance gained in a second, deg^2. */
export const HEADING_ERROR_WANDER_DEG2_PER_S = 1 / 900;
/** How a heading is held by hand: standard deviation, and how long one excursion lasts. */
export const HEADING_WANDER_SD_DEG = 1.5;
export const HEADING_WANDER_TIME_S = 20;

/** Time from being told to starting the turn, and its spread. */
export const REACTION_S = 5;
export const REACTION_SD_S = 2;
/** Standard-rate turn. */
export const TURN_RATE_DEG_PER_S = 3;
/** Left over in the place after any interval, NM. */
export const PLACE_NOISE_SD_NM = 0.015;

/** Error of a DME reading, and the step in which it is shown. */
export const DME_SD_NM = 0.15;
export const DME_STEP_NM = 0.1;
/** How well the edge of the cone is known, as a factor of its radius. */
export const CONE_EDGE_SD_LN = 0.2;

/** Range before anything is known: its middle, NM, and the spread of its logarithm. */
export const UNKNOWN_RANGE_NM = 14;
export const UNKNOWN_RANGE_SD_LN = 0.7;

/** Limits of the range, NM: nearer or farther means nothing to a VOR. */
export const LEAST_RANGE_NM = 0.05;
export const GREATEST_RANGE_NM = 200;

/** Squared surprise beyond which a reading is asked for again (4 standard deviations). */
export const GATE_SURPRISE = 16;
/** A longer gap than this starts the place afresh: too much may have been flown unseen. */
export const LONGEST_GAP_S = 900;
/** A heading read this near to the one told means that the advice is being flown. */
export const FOLLOWS_ADVICE_DEG = 7;
