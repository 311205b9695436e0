/** Radius of a turn over the ground, as a part of the groundspeed: NM for each knot. */
const RADIUS_NM_PER_KT = { standard: 0.005, half: 0.01 } as const;

/** A standard-rate turn takes three degrees a second, half of it one and a half. */
export type TurnRate = keyof typeof RADIUS_NM_PER_KT;

/**
 * Radius of a turn, NM: half a per cent of the groundspeed at standard rate, one per cent at half of it.
 *
 * The circle itself has 0.53 and 1.06 per cent. The handbooks disagree on the lead for a turn onto an arc: the
 * FAA's 0.5 NM for all groundspeeds up to 150 kt is this rule's value at 100 kt; at 150 kt the Navy's is 0.75
 * (printed as 0.8). Here the rule, so at 150 kt the turn begins a quarter of a mile earlier than the FAA's.
 * *Source:* US Navy P-340, p. 208 ("0.6 at 120 kt"; its "5 %" is a misprint), P-871, p. 58; for half the rate
 * P-1265, p. 71. FAA-H-8083-15B, Instrument Flying Handbook, p. 9-17.
 */
export function turnRadiusNm(groundSpeedKt: number, rate: TurnRate = 'standard'): number {
  return RADIUS_NM_PER_KT[rate] * groundSpeedKt;
}

/** The turn that leaves an arc. */
export interface ArcExit {
  readonly groundSpeedKt: number;
  readonly dmeNm: number;
  /** Where the radial is then flown; `null`: not known, a turn of 90 degrees. */
  readonly onto: 'inbound' | 'outbound' | null;
  readonly rate?: TurnRate;
}

/** No radial is led by more than this, degrees. */
const GREATEST_LEAD_DEG = 60;

/**
 * How many radials before the wanted one the turn off the arc begins, degrees.
 *
 * The radius of the turn by the 60-to-1 rule (60 divided by the DME is the number of radials in a mile); inbound
 * the turn is larger than 90 degrees by the lead itself, outbound smaller, and the lead grows and shrinks with it.
 * 0 where there is no distance; never above 60.
 * *Source:* US Navy P-340, p. 208 (radius x 60 / DME), P-1204, p. 91 (the part for inbound and outbound).
 */
export function leadRadialsDeg({ groundSpeedKt, dmeNm, onto, rate }: ArcExit): number {
  if (!(dmeNm > 0)) return 0;
  const radialsPerNm = 60 / dmeNm;
  const plainDeg = turnRadiusNm(groundSpeedKt, rate) * radialsPerNm;
  const turnDeg = onto === null ? 90 : onto === 'inbound' ? 90 + plainDeg : 90 - plainDeg;
  const leadDeg = (Math.max(0, turnDeg) / 90) * plainDeg;
  return Math.min(GREATEST_LEAD_DEG, leadDeg);
}
