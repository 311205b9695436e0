/** A rule by which fuel is kept in reserve. */
export interface ReserveRule {
  readonly minutes: number;
  /** Where it comes from, as shown to the pilot. */
  readonly source: string;
}

/** Reserves at normal cruise for flight under visual rules; other states differ, and more is always allowed. */
export const RESERVE_RULES = {
  'us-day': { minutes: 30, source: '14 CFR 91.151: VFR by day' },
  'us-night': { minutes: 45, source: '14 CFR 91.151: VFR by night' },
  'us-rotorcraft': { minutes: 20, source: '14 CFR 91.151: rotorcraft, VFR' },
  'eu-day': { minutes: 30, source: 'Part-NCO: VFR by day' },
  'eu-local': { minutes: 10, source: 'Part-NCO: VFR by day, staying in sight of the aerodrome' },
  'eu-night': { minutes: 45, source: 'Part-NCO: VFR by night' },
} as const satisfies Readonly<Record<string, ReserveRule>>;

/** The name of a rule. */
export type ReserveName = keyof typeof RESERVE_RULES;

/** Fuel for the legs, kept back, and in all, in the aircraft's unit. */
export interface FuelNeeded {
  readonly trip: number;
  readonly reserve: number;
  readonly total: number;
}

/**
 * The fuel to have on board at the start of the first leg; taxi, climb and alternate are the pilot's to add.
 *
 * *Source:* as named by each rule.
 */
export function fuelNeeded(tripFuel: number, fuelPerHour: number, rule: ReserveName): FuelNeeded {
  const reserve = (fuelPerHour * RESERVE_RULES[rule].minutes) / 60;
  return { trip: tripFuel, reserve, total: tripFuel + reserve };
}
