/** Where an antenna stands: WGS84 degrees (north and east positive), feet above mean sea level. */
export interface AntennaSite {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly elevationFt: number;
}

/** A VOR, with or without a DME. */
export interface Station extends AntennaSite {
  /** 1 to 4 letters (or figures) as keyed in Morse. Never unique in the world. */
  readonly ident: string;
  /** What its radials are aligned to: angle from true north to the zero radial, east positive. */
  readonly declinationDegEast: number;
  readonly hasDme: boolean;
  /** 108.00 to 117.95, in 50 kHz steps. Left out where nobody has to tune it (a computation). */
  readonly frequencyMhz?: number;
  readonly name?: string;
  /** The DME's own antenna where it stands elsewhere. */
  readonly dme?: AntennaSite;
}
