import { turnDeg } from '../../base/angle.ts';
import type { PlacedLeg } from './route-leg.ts';

/** What the warnings of a leg are judged by. */
export interface LegFacts {
  readonly leg: PlacedLeg;
  readonly distanceNm: number;
  readonly groundSpeedKt: number;
  readonly windCorrectionDeg: number;
  readonly trueAirspeedKt: number;
  readonly coneRadiusNm: number;
  readonly lineOfSightNm: number;
  readonly serviceVolumeNm: number | null;
  readonly variationDegEast: number;
  readonly variationAtEndDegEast: number;
  readonly variationAtStationDegEast: number;
}

/** A declination this far from today's model is worth a look at the chart, degrees. Common practice, no source. */
const DECLINATION_APART_DEG = 2;
/** A variation that changes by more than this along the leg changes the heading with it, degrees. */
const VARIATION_CHANGE_DEG = 1;
/** A correction as large as this leaves the needle hard to hold, degrees: sine one half. Common practice, no source. */
const STRONG_CORRECTION_DEG = 30;
/** Less than this part of the airspeed over the ground: fuel and time run away. Common practice, no source. */
const SLOW_PART = 0.5;

/** What a pilot should know of a leg before flying it, each in one plain sentence; empty when there is nothing. */
export function legWarnings(facts: LegFacts): readonly string[] {
  return [
    ...receptionWarnings(facts),
    ...windWarnings(facts),
    ...northWarnings(facts),
    ...(facts.leg.station.hasDme
      ? []
      : [`${facts.leg.station.ident} has no DME: this leg is flown by time.`]),
  ];
}

function receptionWarnings(facts: LegFacts): string[] {
  const { leg, distanceNm, lineOfSightNm, serviceVolumeNm, coneRadiusNm } = facts;
  const { ident } = leg.station;
  const where = leg.direction === 'to' ? 'begins' : 'ends';
  const warnings: string[] = [];
  if (distanceNm > lineOfSightNm) {
    warnings.push(
      `Out of reception: the leg ${where} ${distanceNm.toFixed(0)} NM from ${ident}, whose horizon at this ` +
        `altitude is at ${lineOfSightNm.toFixed(0)} NM. Fly higher or choose a nearer station.`,
    );
  } else if (serviceVolumeNm === null) {
    warnings.push(`No service volume is published for ${ident} at this altitude.`);
  } else if (distanceNm > serviceVolumeNm) {
    warnings.push(
      `Reception is not assured: the leg ${where} ${distanceNm.toFixed(0)} NM from ${ident}, which serves ` +
        `${serviceVolumeNm} NM at this altitude` +
        (leg.serviceClass === undefined ? ' if its class, which is not known, is low.' : '.'),
    );
  }
  if (distanceNm <= coneRadiusNm) {
    warnings.push(
      `The whole leg lies in the blind cone over ${ident}, ${coneRadiusNm.toFixed(1)} NM wide each way.`,
    );
  }
  return warnings;
}

function windWarnings({ windCorrectionDeg, groundSpeedKt, trueAirspeedKt }: LegFacts): string[] {
  const warnings: string[] = [];
  if (Math.abs(windCorrectionDeg) >= STRONG_CORRECTION_DEG) {
    warnings.push(
      `Strong crosswind: ${Math.abs(windCorrectionDeg).toFixed(0)} degrees of wind correction.`,
    );
  }
  if (groundSpeedKt < SLOW_PART * trueAirspeedKt) {
    warnings.push(`Strong headwind: only ${groundSpeedKt.toFixed(0)} kt over the ground.`);
  }
  return warnings;
}

function northWarnings(facts: LegFacts): string[] {
  const { station } = facts.leg;
  const warnings: string[] = [];
  const apart = Math.abs(turnDeg(facts.variationAtStationDegEast, station.declinationDegEast));
  if (apart >= DECLINATION_APART_DEG) {
    warnings.push(
      `The declination of ${station.ident} is ${apart.toFixed(1)} degrees from today's variation there. ` +
        'Compare it with a current chart.',
    );
  }
  const change = Math.abs(turnDeg(facts.variationDegEast, facts.variationAtEndDegEast));
  if (change >= VARIATION_CHANGE_DEG) {
    warnings.push(`The variation changes by ${change.toFixed(1)} degrees along the leg.`);
  }
  return warnings;
}
