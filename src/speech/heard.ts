/** What the flag of the course indicator may show. */
export type HeardFlag = 'to' | 'from' | 'off';

/** The readings that one sentence may carry; what was not said is left out. */
export interface HeardReading {
  /** Direction indicator, whole degrees magnetic, 0 <= x < 360 (north, "three six zero", is 0). */
  readonly headingDeg?: number;
  /** Course set on the OBS, whole degrees, 0 <= x < 360. */
  readonly courseSetDeg?: number;
  /** Radial read with the needle centred and FROM, whole degrees, 0 <= x < 360. */
  readonly radialDeg?: number;
  /** Needle in half dots, negative left; full scale is the instrument's `dotsFullScale`. */
  readonly needleDots?: number;
  readonly flag?: HeardFlag;
  /** DME distance, NM to a tenth, 0 to 200. */
  readonly dmeNm?: number;
}

/** What the pilot asks for or reports besides readings. */
export type Command =
  'how-far' | 'which-way' | 'say-again' | 'next-step' | 'ident-confirmed' | 'correction' | 'why';

/**
 * A sentence that was understood: at least one of `reading` and `command` is there. Where both are, the
 * reading came first in meaning ("heading 125, how far to go"); `correction` always stands alone.
 */
export interface Understood {
  readonly kind: 'heard';
  /** What was understood, in the words of the vocabulary, figures as plain words. */
  readonly text: string;
  readonly reading?: HeardReading;
  readonly command?: Command;
  /** 1: a sentence in text is either understood or not. A recogniser puts its own number here. */
  readonly confidence: number;
}

/** A sentence that was not understood, with the reason in a pilot's words. */
export interface Rejected {
  readonly kind: 'rejected';
  readonly reason: string;
}

/** What came of one sentence. */
export type Heard = Understood | Rejected;

/** What the vocabulary needs to know of the course indicator. */
export interface HearingScale {
  /** Dots from the centre to full deflection. */
  readonly dotsFullScale: number;
}
