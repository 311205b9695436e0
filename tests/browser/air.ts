import geographiclib from 'geographiclib-geodesic';
import geomagnetism from 'geomagnetism';

// The truth that the page never sees: where the aircraft is, what the wind does, what the panel shows.
// It shares no code with the tool. Geodesics: geographiclib (Karney 2013). Magnetic variation: the
// package geomagnetism (NOAA's World Magnetic Model), another one than the tool's. Wind triangle: plain
// vector sum. Needle, flag and DME: common practice, no source; cone of 50 degrees half-angle.

const wgs84 = geographiclib.Geodesic.WGS84;
const METRES_PER_NM = 1852;
const FT_PER_NM = 6076.115;
const RAD = Math.PI / 180;
const CONE_DEG = 50;
const STANDARD_TURN_DEG_PER_S = 3;

/** A station as the chart gives it. */
export interface Beacon {
  readonly ident: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly elevationFt: number;
  readonly declinationDegEast: number;
}

/** How a flight begins. */
export interface AirStart {
  readonly beacon: Beacon;
  /** Radial and distance over ground on which the aircraft is. */
  readonly radialDeg: number;
  readonly groundNm: number;
  readonly altitudeFt: number;
  /** Magnetic. */
  readonly headingDeg: number;
  readonly trueAirspeedKt: number;
  readonly windFromDegTrue: number;
  readonly windKt: number;
  readonly dateIso: string;
  readonly startMs: number;
}

/** What the panel shows. */
export interface Panel {
  readonly headingDeg: number;
  readonly courseSetDeg: number;
  /** Half dots; null: the flag is OFF. */
  readonly needleDots: number | null;
  readonly flag: 'TO' | 'FROM' | 'OFF';
  readonly dmeNm: number;
}

/** An aircraft in its air. */
export interface Air {
  readonly beacon: Beacon;
  /** The pilot turns onto this heading, magnetic. */
  turnTo(headingDeg: number): void;
  /** Flies on until this moment. */
  flyUntil(atMs: number): void;
  panel(courseSetDeg: number): Panel;
  /** Ground distance from the station. */
  groundNm(): number;
  /** Degrees off the course as the needle would tell them without a full scale, right of course positive. */
  offCourseDeg(courseDeg: number, direction: 'to' | 'from'): number;
  /** Local variation where the aircraft is, east positive. */
  variationDeg(): number;
  /** What the DME reads at a ground distance from its antenna. */
  dmeAtNm(groundNm: number): number;
}

const half = (angleDeg: number): number => angleDeg - 360 * Math.round(angleDeg / 360);

/** Puts an aircraft into the air. */
export function takeOff(start: AirStart): Air {
  const { beacon } = start;
  const heightNm = (start.altitudeFt - beacon.elevationFt) / FT_PER_NM;
  const model = geomagnetism.model(new Date(`${start.dateIso}T12:00:00Z`));
  const first = wgs84.Direct(
    beacon.latitudeDeg,
    beacon.longitudeDeg,
    start.radialDeg + beacon.declinationDegEast,
    start.groundNm * METRES_PER_NM,
  );
  let place = { lat: first.lat2 ?? 0, lon: first.lon2 ?? 0 };
  let headingDeg = start.headingDeg;
  let wantedDeg = start.headingDeg;
  let nowMs = start.startMs;

  const variationDeg = (): number =>
    model.point([place.lat, place.lon, start.altitudeFt * 0.0003048]).decl;

  /** Where the aircraft is, seen from the station: true direction and ground distance. */
  const fromBeacon = (): { azimuthDeg: number; groundNm: number } => {
    const { azi1 = 0, s12 = 0 } = wgs84.Inverse(
      beacon.latitudeDeg,
      beacon.longitudeDeg,
      place.lat,
      place.lon,
    );
    return { azimuthDeg: azi1, groundNm: s12 / METRES_PER_NM };
  };
  const radialDeg = (): number => fromBeacon().azimuthDeg - beacon.declinationDegEast;
  const isInCone = (): boolean => fromBeacon().groundNm < heightNm * Math.tan(CONE_DEG * RAD);

  const flyFor = (seconds: number): void => {
    const most = STANDARD_TURN_DEG_PER_S * seconds;
    const turn = half(wantedDeg - headingDeg);
    headingDeg += Math.max(-most, Math.min(most, turn));
    const trueHeading = (headingDeg + variationDeg()) * RAD;
    const wind = start.windFromDegTrue * RAD;
    const east = start.trueAirspeedKt * Math.sin(trueHeading) - start.windKt * Math.sin(wind);
    const north = start.trueAirspeedKt * Math.cos(trueHeading) - start.windKt * Math.cos(wind);
    const metres = (Math.hypot(east, north) * METRES_PER_NM * seconds) / 3600;
    const to = wgs84.Direct(place.lat, place.lon, Math.atan2(east, north) / RAD, metres);
    place = { lat: to.lat2 ?? place.lat, lon: to.lon2 ?? place.lon };
  };

  const offCourseDeg = (courseDeg: number, direction: 'to' | 'from'): number =>
    direction === 'from' ? half(radialDeg() - courseDeg) : -half(radialDeg() - courseDeg - 180);

  return {
    beacon,
    turnTo: (to) => {
      wantedDeg = to;
    },
    flyUntil: (atMs) => {
      while (nowMs < atMs) {
        const stepMs = Math.min(1000, atMs - nowMs);
        flyFor(stepMs / 1000);
        nowMs += stepMs;
      }
    },
    panel: (courseSetDeg) => {
      const { groundNm } = fromBeacon();
      const shownHeading = ((Math.round(headingDeg) % 360) + 360) % 360;
      const dmeNm = Math.round(Math.hypot(groundNm, heightNm) * 10) / 10;
      const shown = { headingDeg: shownHeading, courseSetDeg, dmeNm };
      if (isInCone()) return { ...shown, needleDots: null, flag: 'OFF' };
      const flag = Math.abs(half(radialDeg() - courseSetDeg)) < 90 ? 'FROM' : 'TO';
      // The needle points to where the course is: right of course, it stands on the left.
      const off = offCourseDeg(courseSetDeg, flag === 'TO' ? 'to' : 'from');
      const dots = Math.max(-5, Math.min(5, Math.round(-off) / 2));
      return { ...shown, needleDots: dots, flag };
    },
    groundNm: () => fromBeacon().groundNm,
    offCourseDeg,
    variationDeg,
    dmeAtNm: (groundNm) => Math.hypot(groundNm, heightNm),
  };
}
