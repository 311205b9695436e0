import type { Reading } from './reading.ts';

function isSame(one: Reading, other: Reading): boolean {
  return (
    one.headingDeg === other.headingDeg &&
    one.courseSetDeg === other.courseSetDeg &&
    one.needleDots === other.needleDots &&
    one.flag === other.flag &&
    one.dmeNm === other.dmeNm &&
    one.station?.ident === other.station?.ident
  );
}

/** The readings so far that bear the same time as a new one (they are the last ones). */
function atSameTime(readings: readonly Reading[], reading: Reading): readonly Reading[] {
  return readings.slice(readings.findLastIndex((each) => each.atMs < reading.atMs) + 1);
}

/** Whether a reading is one that is already there. */
export function isDuplicate(readings: readonly Reading[], reading: Reading): boolean {
  return atSameTime(readings, reading).some((each) => isSame(each, reading));
}

/** A reading without what another one of the same moment has already told, so that nothing counts twice. */
export function onlyNewPart(readings: readonly Reading[], reading: Reading): Reading {
  const others = atSameTime(readings, reading).filter(
    (each) => each.station?.ident === reading.station?.ident,
  );
  if (others.length === 0) return reading;
  const { needleDots, dmeNm, ...rest } = reading;
  const isNeedleKnown = others.some(
    (each) => each.needleDots === needleDots && each.courseSetDeg === reading.courseSetDeg,
  );
  const isDmeKnown = others.some((each) => each.dmeNm === dmeNm);
  return {
    ...rest,
    ...(needleDots === undefined || isNeedleKnown ? {} : { needleDots }),
    ...(dmeNm === undefined || isDmeKnown ? {} : { dmeNm }),
  };
}
