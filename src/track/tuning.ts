/**
 * What the filter assumes about the air, the instruments and the pilot, each with where it comes from.
 *
 * "Tuned by simulation": the filter's own spread was held against its errors over some hundred flights
 * (tests/bench/track-loop.ts, the line NEES), in an air and with a pilot that have the same figures.
 */

/**
 * Wind before anything is known: one standard deviation of each component, knots. 28 kt in all covers what a light
 * aircraft meets at its heights on most days. Common practice, no source.
 */
export const WIND_UNKNOWN_SD_KT = 20;
/** Error of a forecast wind, each component, knots: 10 kt of vector error. Common practice, no source. */
export const WIND_FORECAST_SD_KT = 7;
/** Wander of the wind: variance of each component gained in a second, kt^2 (6 kt in an hour). Tuned by simulation. */
export const WIND_WANDER_KT2_PER_S = 36 / 3600;

/**
 * Error of an indicated radial that stays for a while, degrees: ground and receiver together.
 * *Source:* FAA-H-8083-15B, page 9-10, gives about 1 degree for the ground station; the receiver's part (4 degrees are
 * allowed at a ground check, 14 CFR 91.171) makes it more. The value between is common practice, no source.
 */
export const VOR_BIAS_SD_DEG = 1.5;
/** How long it stays, s, as the radial or the place changes. Tuned by simulation. */
export const VOR_BIAS_TIME_S = 1800;
/** Error of an indicated radial from one reading to the next, degrees: scalloping. Common practice, no source. */
export const SCALLOPING_SD_DEG = 0.5;
/** To what part of a dot a pilot reads the needle: the vocabulary has half dots. */
export const NEEDLE_STEP_DOTS = 0.5;

/** Error of the stated true airspeed, knots: 3 in 100. Common practice, no source. */
export const AIRSPEED_ERROR_SD_KT = 3;
/** Airspeed from gusts, over one interval, knots. Common practice, no source. */
export const GUST_SD_KT = 1;
/** Error of the heading shown, degrees: compass deviation, and how it was set. Common practice, no source. */
export const HEADING_ERROR_SD_DEG = 2;
/**
 * Wander of the direction indicator: variance gained in a second, deg^2: 1 degree in 15 minutes, a third of the
 * 3 degrees in 15 minutes that are taught as the limit (Thom, The Pilot's Manual 3, from memory).
 */
export const HEADING_ERROR_WANDER_DEG2_PER_S = 1 / 900;
/** How a heading is held by hand: standard deviation, degrees (within 3), and how long one excursion lasts, s.
 * Common practice, no source. */
export const HEADING_WANDER_SD_DEG = 1.5;
export const HEADING_WANDER_TIME_S = 20;

/** Time from being told to starting the turn, and its spread, s. Common practice, no source. */
export const REACTION_S = 5;
export const REACTION_SD_S = 2;
/** Standard-rate turn. *Source:* FAA-H-8083-15B, glossary: 3 degrees a second (from memory). */
export const TURN_RATE_DEG_PER_S = 3;
/** Left over in the place after any interval, NM. Tuned by simulation. */
export const PLACE_NOISE_SD_NM = 0.015;

/**
 * Error of a DME reading, and the step in which it is shown, NM.
 * *Source:* ICAO Annex 10 vol. I, 3.5.3.1.3: 0.2 NM for equipment since 1989, older 0.25 NM + 1.25 % of the distance,
 * as 95 % limits; the value lies between the standard deviations of the two. Tenths shown: common practice, no source.
 */
export const DME_SD_NM = 0.15;
export const DME_STEP_NM = 0.1;
/** How well the edge of the cone is known, as a factor of its radius. Common practice, no source. */
export const CONE_EDGE_SD_LN = 0.2;

/**
 * Range before anything is known: its middle, NM, and the spread of its logarithm (2 sd: 3.5 to 57 NM, the ranges at
 * which light aircraft fly radials). Common practice, no source.
 */
export const UNKNOWN_RANGE_NM = 14;
export const UNKNOWN_RANGE_SD_LN = 0.7;

/** Limits of the range, NM: over the antenna, and beyond any VOR (served to 130 NM at most, AIM 1-1-8). */
export const LEAST_RANGE_NM = 0.05;
export const GREATEST_RANGE_NM = 200;

/** Squared surprise beyond which a reading is asked for again: 4 standard deviations, 6 in 100,000 good readings. */
export const GATE_SURPRISE = 16;
/** After a longer gap than this, s, the place starts afresh: too much flown unseen. Common practice, no source. */
export const LONGEST_GAP_S = 900;
/** A heading read this near to the one told, degrees, means that the advice is being flown. Tuned by simulation. */
export const FOLLOWS_ADVICE_DEG = 7;
