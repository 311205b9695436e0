// The package has no types of its own; this is the one function that we call.
declare module 'magvar' {
  /** The main field by WMM2025: nanotesla, north `x` and east `y`; `altitudeKm` above mean sea level. */
  export function magneticField(
    latitudeDeg: number,
    longitudeDeg: number,
    altitudeKm: number,
    decimalYear: number,
  ): { readonly x: number; readonly y: number; readonly h: number; readonly declination: number };
}
