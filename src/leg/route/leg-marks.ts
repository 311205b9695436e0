import { S_PER_H } from '../../base/units.ts';
import { geodesicTo, placeAt, type LatLon } from '../../earth/geodesic.ts';
import { coneRadiusNm } from '../../station/cone.ts';
import { dmeNmAt } from './dme-at.ts';
import type { PlacedLeg } from './route-leg.ts';

/** Something that happens on the way along a leg. */
export interface LegMark {
  /** A whole five on the DME, the edge of the blind cone, or an end of the leg. */
  readonly kind: 'start' | 'dme' | 'flag-off' | 'flag-on' | 'end';
  readonly place: LatLon;
  /** From the start of the leg. */
  readonly flownNm: number;
  readonly timeS: number;
  /** What the DME reads there, slant NM; null without one. */
  readonly dmeNm: number | null;
}

const EACH_NM = 5;
const STEPS = 400;

/**
 * What is met along a leg, in order: its start, each whole 5 NM on the DME, where the flag goes off at the edge of
 * the cone (inbound) or comes on (outbound), its end.
 *
 * `altitudeFt` above mean sea level; `groundSpeedKt` above 0. DME figures are slant range to its own antenna.
 * *Source:* as for `dmeNmAt` and `coneRadiusNm`.
 */
export function legMarks(
  leg: PlacedLeg,
  { altitudeFt, groundSpeedKt }: { readonly altitudeFt: number; readonly groundSpeedKt: number },
): readonly LegMark[] {
  const line = geodesicTo(leg.start, leg.end);
  const isTo = leg.direction === 'to';
  const markAt = (kind: LegMark['kind'], flownNm: number, dmeNm?: number): LegMark => {
    const place = placeAt(leg.start, line.azimuthDeg, flownNm);
    return {
      kind,
      place,
      flownNm,
      timeS: (flownNm / groundSpeedKt) * S_PER_H,
      dmeNm: dmeNm ?? dmeNmAt(place, leg.station, altitudeFt),
    };
  };
  const coneNm = coneRadiusNm(altitudeFt - leg.station.elevationFt);
  const edgeNm = isTo ? line.distanceNm - coneNm : coneNm;
  const marks = [
    markAt('start', 0),
    ...wholeFives(leg, line.distanceNm, altitudeFt).map(({ flownNm, dmeNm }) =>
      markAt('dme', flownNm, dmeNm),
    ),
    ...(edgeNm > 0 && edgeNm < line.distanceNm
      ? [markAt(isTo ? 'flag-off' : 'flag-on', edgeNm)]
      : []),
    markAt('end', line.distanceNm),
  ];
  return marks.toSorted((one, other) => one.flownNm - other.flownNm);
}

/** Where the DME passes a whole five: looked for in small steps, because its antenna may stand beside the line. */
function wholeFives(
  leg: PlacedLeg,
  lengthNm: number,
  altitudeFt: number,
): readonly { readonly flownNm: number; readonly dmeNm: number }[] {
  if (!leg.station.hasDme) return [];
  const { azimuthDeg } = geodesicTo(leg.start, leg.end);
  const found: { flownNm: number; dmeNm: number }[] = [];
  let before = dmeNmAt(leg.start, leg.station, altitudeFt) ?? 0;
  for (let step = 1; step <= STEPS; step += 1) {
    const flownNm = (lengthNm * step) / STEPS;
    const now = dmeNmAt(placeAt(leg.start, azimuthDeg, flownNm), leg.station, altitudeFt) ?? 0;
    const passed = EACH_NM * Math.round((before + now) / 2 / EACH_NM);
    if (passed > 0 && (before - passed) * (now - passed) <= 0 && before !== now) {
      const part = (passed - before) / (now - before);
      const atNm = (lengthNm * (step - 1 + part)) / STEPS;
      if (part > 0 || step === 1) found.push({ flownNm: atNm, dmeNm: passed });
    }
    before = now;
  }
  return found;
}
