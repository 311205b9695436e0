import { turnDeg, wrap360 } from '../../base/angle.ts';
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
  /** True, where the leg begins and ends: they differ as the meridians converge. */
  readonly trackTrueDeg: number;
  readonly trackAtEndTrueDeg: number;
  /** Magnetic, where the leg begins and ends; null where the wind cannot be flown against at the end. */
  readonly headingDeg: number;
  readonly headingAtEndDeg: number | null;
}

/** A declination this far from today's model is worth a look at the chart, degrees. Common practice, no source. */
const DECLINATION_APART_DEG = 2;
/** A variation that changes by more than this along the leg changes the heading with it, degrees. */
const VARIATION_CHANGE_DEG = 1;
/** A track or heading that turns by more than this along the leg has to be followed, degrees. Common practice, no source. */
const TURN_ALONG_DEG = 2;
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
  return [...warnings, ...turningWarnings(facts)];
}

/** On a long leg the needle stays centred on a heading that does not stay the same. */
function turningWarnings(facts: LegFacts): string[] {
  const { headingDeg, headingAtEndDeg } = facts;
  const trackDeg = Math.abs(turnDeg(facts.trackTrueDeg, facts.trackAtEndTrueDeg));
  const change = Math.abs(turnDeg(facts.variationDegEast, facts.variationAtEndDegEast));
  const headingTurnDeg =
    headingAtEndDeg === null ? 0 : Math.abs(turnDeg(headingDeg, headingAtEndDeg));
  if (headingAtEndDeg !== null && headingTurnDeg > TURN_ALONG_DEG) {
    return [
      `The heading turns from ${figures(headingDeg)} to ${figures(headingAtEndDeg)} along the leg: the true track ` +
        `turns by ${trackDeg.toFixed(1)} degrees (meridians converge), the variation by ${change.toFixed(1)}.`,
    ];
  }
  return [
    ...(trackDeg > TURN_ALONG_DEG
      ? [
          `The true track turns by ${trackDeg.toFixed(1)} degrees along the leg (meridians converge); with the ` +
            'variation the heading hardly does.',
        ]
      : []),
    ...(change >= VARIATION_CHANGE_DEG
      ? [`The variation changes by ${change.toFixed(1)} degrees along the leg.`]
      : []),
  ];
}

/** North is 360. */
function figures(headingDeg: number): string {
  return String(wrap360(Math.round(headingDeg)) || 360).padStart(3, '0');
}
