const S_PER_MIN = 60;

/**
 * How long a change of bearing takes with the station abeam at a given distance, seconds, as the handbooks reckon;
 * null where there is no distance, airspeed or change.
 *
 * The rule the other way round: distance = airspeed x minutes / degrees. In still air the station is 5 to 6 % nearer
 * than the rule says for 5 to 10 degrees; it knows no wind.
 * *Source:* FAA-H-8083-25C, Pilot's Handbook of Aeronautical Knowledge, pp. 16-26 and 16-27, figures 16-33 and 16-34.
 */
export function bearingChangeS(
  rangeNm: number,
  trueAirspeedKt: number,
  changeDeg: number,
): number | null {
  if (!(rangeNm > 0) || !(trueAirspeedKt > 0) || !(changeDeg > 0)) return null;
  return ((rangeNm * changeDeg) / trueAirspeedKt) * S_PER_MIN;
}
