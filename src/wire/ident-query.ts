import { Type } from 'typebox';
import type { Static } from 'typebox';
import { IDENT_LIMITS } from '../ident/limits.ts';

const { wpm, toneHz, repeats, intervalS, sampleRateHz } = IDENT_LIMITS;

const within = (limits: { readonly min: number; readonly max: number }, what: string) => ({
  minimum: limits.min,
  maximum: limits.max,
  description: `${what}, ${limits.min} to ${limits.max}`,
});

/** How an ident is to sound, as asked for in a query; what is left out is as usual for a VOR. */
export const IdentQuerySchema = Type.Object(
  {
    wpm: Type.Optional(Type.Number(within(wpm, 'words a minute'))),
    toneHz: Type.Optional(Type.Number(within(toneHz, 'the tone in Hz'))),
    repeats: Type.Optional(Type.Integer(within(repeats, 'how often it is keyed'))),
    intervalS: Type.Optional(
      Type.Number(
        within(intervalS, 'seconds from the start of one ident to the start of the next'),
      ),
    ),
    sampleRateHz: Type.Optional(Type.Integer(within(sampleRateHz, 'samples a second'))),
  },
  { additionalProperties: false, description: 'how the ident is to sound' },
);

/** See `IdentQuerySchema`. */
export type IdentQuery = Static<typeof IdentQuerySchema>;
