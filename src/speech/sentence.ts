import type { Piece } from './grammar.ts';
import type { Command, Heard, HeardReading } from './heard.ts';
import { COMMAND_TEXT } from './command-phrase.ts';

type Field = keyof HeardReading;

const FIELD_NAME: Readonly<Record<Field, string>> = {
  headingDeg: 'heading',
  courseSetDeg: 'course',
  radialDeg: 'radial',
  needleDots: 'needle reading',
  flag: 'flag',
  dmeNm: 'distance',
};

/** What the pieces read so far come to. */
interface Sum {
  /** The pieces that stand, in the order in which they were said. */
  readonly pieces: readonly Piece[];
  readonly command?: Command;
  /** "correction" was said after readings of this sentence: those that follow replace them. */
  readonly isCorrecting: boolean;
  readonly hasCorrected: boolean;
  readonly refusal?: string;
}

/** Puts the phrases of one sentence together, or refuses where they contradict each other. */
export function joined(pieces: readonly Piece[]): Heard {
  const sum = pieces.reduce<Sum>(
    (before, piece) => (before.refusal === undefined ? plus(before, piece) : before),
    { pieces: [], isCorrecting: false, hasCorrected: false },
  );
  if (sum.refusal !== undefined) return { kind: 'rejected', reason: plain(sum.refusal) };
  if (pieces.length === 0) return { kind: 'rejected', reason: 'nothing was said' };
  if (sum.command === 'correction' && sum.pieces.length > 1) {
    const reason = 'correction takes the last reading back; give the right one after that';
    return { kind: 'rejected', reason };
  }
  if (sum.isCorrecting && !sum.hasCorrected) {
    return { kind: 'rejected', reason: 'correction: say the right reading after it' };
  }
  const readings = sum.pieces.flatMap((each) => each.reading ?? []);
  const reading = Object.assign({}, ...readings) as HeardReading;
  return {
    kind: 'heard',
    text: plain(sum.pieces.map((each) => each.text).join(', ')),
    ...(readings.length > 0 ? { reading } : {}),
    ...(sum.command === undefined ? {} : { command: sum.command }),
    confidence: 1,
  };
}

/** The radio's "niner" is for the ear; in writing nine is "nine". */
function plain(text: string): string {
  return text.replaceAll('niner', 'nine');
}

function plus(sum: Sum, piece: Piece): Sum {
  return piece.command === undefined
    ? plusReading(sum, piece)
    : plusCommand(sum, piece, piece.command);
}

function plusCommand(sum: Sum, piece: Piece, command: Command): Sum {
  const hasReadings = sum.pieces.some((each) => each.reading !== undefined);
  if (command === 'correction' && hasReadings) {
    return { ...sum, isCorrecting: true, hasCorrected: false };
  }
  if (sum.command === command) return sum;
  if (sum.command !== undefined) {
    const both = `${COMMAND_TEXT[sum.command]}, or ${COMMAND_TEXT[command]}`;
    return { ...sum, refusal: `one thing at a time: ${both}?` };
  }
  return { ...sum, pieces: [...sum.pieces, piece], command };
}

function plusReading(sum: Sum, piece: Piece): Sum {
  const field = fieldOf(piece);
  if (field === null) return sum;
  const earlier = sum.pieces.find((each) => fieldOf(each) === field);
  if (earlier === undefined) {
    return sum.isCorrecting
      ? { ...sum, refusal: `correction: no ${FIELD_NAME[field]} was given before it` }
      : { ...sum, pieces: [...sum.pieces, piece] };
  }
  if (sum.isCorrecting) {
    const pieces = sum.pieces.map((each) => (each === earlier ? piece : each));
    return { ...sum, pieces, hasCorrected: true };
  }
  if (earlier.reading?.[field] === piece.reading?.[field]) return sum;
  return { ...sum, refusal: `two ${FIELD_NAME[field]}s: ${earlier.text}, or ${piece.text}?` };
}

function fieldOf(piece: Piece): Field | null {
  const fields = Object.keys(piece.reading ?? {}) as Field[];
  return fields[0] ?? null;
}
