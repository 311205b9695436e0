import { Type } from 'typebox';
import type { Static, TSchema } from 'typebox';
import type { Confirmation, IdentHeard, LetterHeard } from '../ident/heard.ts';
import { WHY_WORDS } from '../ident/why-words.ts';
import { heldTo } from './held.ts';

const record = { additionalProperties: false } as const;
const orNull = <Schema extends TSchema>(schema: Schema, description: string) =>
  Type.Union([schema, Type.Null()], { description });
const share = (description: string) => Type.Number({ minimum: 0, maximum: 1, description });

const MOST_RIVALS = 200;

const rivals = Type.Optional(
  Type.String({
    pattern: `^[A-Za-z0-9]{1,4}(,[A-Za-z0-9]{1,4}){0,${MOST_RIVALS - 1}}$`,
    description: `1 to ${MOST_RIVALS} idents of 1 to 4 letters with commas between them: those that can be received there; left out: any`,
  }),
);

/** What may be known before a recording is decoded. */
export const DecodeQuerySchema = Type.Object(
  { rivals },
  { ...record, description: 'which idents it can be' },
);

/** See `DecodeQuerySchema`. */
export type DecodeQuery = Static<typeof DecodeQuerySchema>;

/** Which ident a recording is held to. */
export const ConfirmQuerySchema = Type.Object(
  {
    expected: Type.String({
      pattern: '^[A-Za-z0-9]{1,4}$',
      description: 'the ident of the station on the chart, 1 to 4 letters or figures',
    }),
    rivals,
  },
  { ...record, description: 'which ident is expected' },
);

/** See `ConfirmQuerySchema`. */
export type ConfirmQuery = Static<typeof ConfirmQuerySchema>;

const LetterHeardSchema = heldTo<LetterHeard>()(
  Type.Object(
    {
      letter: Type.String(),
      confidence: share('how probable it is that this letter was keyed here'),
      pattern: Type.String({ description: 'its dots and dashes' }),
    },
    record,
  ),
);

const why = orNull(Type.String(), 'the reason where something is in doubt, in words');

/** The ident in a recording, as it crosses the wire. */
export const DecodedIdentSchema = Type.Object(
  {
    letters: orNull(Type.String(), 'the ident; null: there is none, or it cannot be told'),
    confidence: share('how probable it is that just these letters were keyed; 0: letters is null'),
    toneHz: orNull(Type.Number(), 'the tone, Hz'),
    wpm: orNull(Type.Number(), 'keying speed, words a minute'),
    repeats: Type.Integer({ description: 'how often it is keyed' }),
    perLetter: Type.Array(LetterHeardSchema, {
      description: 'the likeliest ident letter by letter, also where letters is null',
    }),
    why,
  },
  { ...record, description: 'what was heard' },
);

/** See `DecodedIdentSchema`. */
export type DecodedIdent = Static<typeof DecodedIdentSchema>;

/** Whether a recording has the expected ident, as it crosses the wire. */
export const ConfirmedIdentSchema = Type.Object(
  {
    verdict: Type.Enum(['confirmed', 'different', 'cannot-tell'], {
      description: "'different': another ident was heard whole and well",
    }),
    heard: orNull(Type.String(), 'the ident that was heard'),
    confidence: share('how probable it is that `heard` was keyed; 0: it cannot be told'),
    why,
  },
  { ...record, description: 'the verdict' },
);

/** See `ConfirmedIdentSchema`. */
export type ConfirmedIdent = Static<typeof ConfirmedIdentSchema>;

/** What was heard, as it is sent. */
export function decodedIdent(heard: IdentHeard): DecodedIdent {
  const { letters, confidence, toneHz, wpm, repeats, perLetter } = heard;
  return {
    letters,
    confidence,
    toneHz,
    wpm,
    repeats,
    perLetter: [...perLetter],
    why: heard.why === null ? null : WHY_WORDS[heard.why],
  };
}

/** The verdict, as it is sent. */
export function confirmedIdent(confirmation: Confirmation): ConfirmedIdent {
  const { verdict, heard, confidence } = confirmation;
  return {
    verdict,
    heard,
    confidence,
    why: confirmation.why === null ? null : WHY_WORDS[confirmation.why],
  };
}

/** The idents of a list as it stands in a query; see `DecodeQuerySchema`. */
export function rivalsIn(list: string | undefined): { readonly rivals?: readonly string[] } {
  return list === undefined ? {} : { rivals: list.toUpperCase().split(',') };
}
