import { Type } from 'typebox';
import type { ReadingFields } from '../flight/event.ts';
import type { Reading } from '../track/reading.ts';
import { heldTo } from './held.ts';
import { StationSchema } from './station.ts';

const headingDeg = Type.Number({
  description: 'a heading from 0 to 360 degrees, magnetic, as the direction indicator shows it',
});
const courseSetDeg = Type.Number({
  description: 'the course set on the OBS, 0 to 360 degrees',
});
const needleDots = Type.Number({
  description: 'the needle in dots, left of centre negative; full deflection is dotsFullScale',
});
const flag = Type.Enum(['to', 'from', 'off'], { description: "'to', 'from' or 'off'" });
const dmeNm = Type.Number({ description: 'the DME distance in NM (slant range)' });

/** The fields of a reading as an event carries them: what was not read is left out. */
export const readingFields = {
  headingDeg: Type.Optional(headingDeg),
  courseSetDeg: Type.Optional(courseSetDeg),
  needleDots: Type.Optional(needleDots),
  flag: Type.Optional(flag),
  dmeNm: Type.Optional(dmeNm),
  station: Type.Optional(StationSchema),
};

heldTo<ReadingFields>()(Type.Object(readingFields));

/** What the pilot reads off the panel at one moment, as it crosses the wire. */
export const ReadingSchema = heldTo<Reading>()(
  Type.Object(
    {
      atMs: Type.Number({ description: 'the moment of the reading in milliseconds' }),
      headingDeg: Type.Optional(headingDeg),
      courseSetDeg,
      needleDots: Type.Optional(needleDots),
      flag,
      dmeNm: Type.Optional(dmeNm),
      station: Type.Optional(StationSchema),
    },
    {
      additionalProperties: false,
      description:
        'a reading: atMs, courseSetDeg, flag and, as read, headingDeg, needleDots, dmeNm',
    },
  ),
);
