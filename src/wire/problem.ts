import { Type } from 'typebox';
import type { Static } from 'typebox';
import type { FieldProblem } from '../base/result.ts';
import { heldTo } from './held.ts';

const FieldProblemSchema = heldTo<FieldProblem>()(
  Type.Object(
    {
      field: Type.String({ description: 'dotted path of the field' }),
      expected: Type.String({ description: 'what would have been accepted' }),
      got: Type.String({ description: 'what was given' }),
    },
    { additionalProperties: false },
  ),
);

/** Why a request was refused (RFC 9457, application/problem+json), with the fields at fault. */
export const ProblemSchema = Type.Object(
  {
    type: Type.String(),
    title: Type.String(),
    status: Type.Integer(),
    detail: Type.String(),
    errors: Type.Array(FieldProblemSchema),
  },
  { additionalProperties: false, description: 'why the request was refused' },
);

/** See `ProblemSchema`. */
export type Problem = Static<typeof ProblemSchema>;
