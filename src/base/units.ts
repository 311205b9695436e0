/** Metres in one nautical mile, exact (International Hydrographic Conference, Monaco, 1929). */
export const METRES_PER_NM = 1852;

/** Metres in one foot, exact (international yard and pound agreement, 1959). */
export const METRES_PER_FT = 0.3048;

/** Feet in one nautical mile, 6076.1155 (exact quotient of the two definitions above). */
export const FT_PER_NM = METRES_PER_NM / METRES_PER_FT;

/** Seconds in one hour. */
export const S_PER_H = 3600;

/** Milliseconds in one second. */
export const MS_PER_S = 1000;
