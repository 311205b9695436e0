import { geodesicTo } from '../../src/earth/geodesic.ts';
import type { ReadingFields } from '../../src/flight/event.ts';
import type { HeardReading } from '../../src/speech/heard.ts';
import { hear } from '../../src/speech/vocabulary.ts';
import { stationOf } from '../../src/station/library/library-station.ts';
import type { Station } from '../../src/station/station.ts';
import { allStations } from '../stations/station-disk.ts';

/** No VOR is received from farther away, NM. Common practice, no source. */
const FARTHEST_NM = 200;

/** What of a second station's panel is taken. */
const TAKEN: ReadonlySet<string> = new Set(['radialDeg', 'dmeNm']);

const SENTENCE = /^\s*([a-z]{1,4})[\s,:]+(.+)$/i;

/** A reading of a second station, or why it cannot be one, in words. */
export type OtherReading =
  | { readonly kind: 'read'; readonly fields: ReadingFields; readonly text: string }
  | { readonly kind: 'refused'; readonly reason: string };

/**
 * "QXF radial 240" (and "distance 14"): the radial of another station than the leg's, with the needle centred and FROM.
 * Null where the sentence is nothing of the kind.
 *
 * `legStation` is the station of the leg, `planned` those of the whole flight. An ident may stand for several stations:
 * the one nearest to the leg's is taken, from the flight or from the library on this device.
 */
export async function otherStationIn(
  sentence: string,
  legStation: Station,
  planned: readonly Station[],
): Promise<OtherReading | null> {
  const said = radialSaid(sentence);
  if (said === null) return null;
  const { ident, reading, text } = said;
  if (said.isMore) return refused(`${ident}: only its radial, and its distance, can be given`);
  const station = await nearest(ident, legStation, planned);
  if (station === null) {
    return refused(
      `no station ${ident} is known here within ${FARTHEST_NM} NM: add it under Stations first`,
    );
  }
  if (reading.dmeNm !== undefined && !station.hasDme) {
    return refused(`${ident} has no DME: only its radial`);
  }
  const fields = { ...fieldsHeard(reading), ...(station === legStation ? {} : { station }) };
  return { kind: 'read', fields, text: `${ident} ${text}` };
}

/** An ident and a radial in a sentence, and whether anything else is in it that is not a distance. */
function radialSaid(sentence: string) {
  const [, ident = '', rest = ''] = SENTENCE.exec(sentence) ?? [];
  const heard = hear(rest);
  if (heard.kind === 'rejected' || heard.reading?.radialDeg === undefined) return null;
  const { reading, command, text } = heard;
  const isMore = !Object.keys(reading).every((each) => TAKEN.has(each)) || command !== undefined;
  return { ident: ident.toUpperCase(), reading, isMore, text };
}

/** The fields of what was said. A radial is read with the needle centred and FROM in the window. */
export function fieldsHeard({ radialDeg, ...rest }: HeardReading): ReadingFields {
  if (radialDeg === undefined) return rest;
  return { courseSetDeg: radialDeg, needleDots: 0, flag: 'from', ...rest };
}

function refused(reason: string): OtherReading {
  return { kind: 'refused', reason };
}

async function nearest(
  ident: string,
  legStation: Station,
  planned: readonly Station[],
): Promise<Station | null> {
  if (ident === legStation.ident) return legStation;
  // Without a library there are still the stations of the flight.
  const library = await allStations().catch(() => []);
  const found = [...planned, ...library.map(stationOf)]
    .filter((each) => each.ident === ident)
    .map((station) => ({ station, distanceNm: geodesicTo(legStation, station).distanceNm }))
    .filter(({ distanceNm }) => distanceNm <= FARTHEST_NM)
    .toSorted((one, other) => one.distanceNm - other.distanceNm);
  return found[0]?.station ?? null;
}
