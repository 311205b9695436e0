const MIN_PER_H = 60;

/** What the rule for a change of bearing gives. */
export interface RangeByRule {
  readonly minutesToStation: number;
  readonly distanceNm: number;
}

/**
 * Time and distance to a station by the change of its bearing, flown with the station abeam, as the handbooks reckon:
 * minutes to the station = 60 x minutes flown / degrees of change; distance = airspeed x minutes / degrees.
 *
 * `flownMin`: between the two bearings. `changeDeg`: either sign. `speedKt`: true airspeed, where no groundspeed is
 * known. Null where the bearing has not changed, or no time has passed. In still air 5 to 6 % too long for 5 to 10
 * degrees; it knows no wind.
 * *Source:* FAA-H-8083-25C, Pilot's Handbook of Aeronautical Knowledge, pp. 16-26 and 16-27, figures 16-33 and 16-34.
 */
export function rangeByBearingChange(
  flownMin: number,
  changeDeg: number,
  speedKt: number,
): RangeByRule | null {
  const degrees = Math.abs(changeDeg);
  if (!(flownMin > 0) || !(degrees > 0) || !(speedKt > 0)) return null;
  return {
    minutesToStation: (MIN_PER_H * flownMin) / degrees,
    distanceNm: (speedKt * flownMin) / degrees,
  };
}
