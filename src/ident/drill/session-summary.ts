import { mixedPairs, withAnswer, type MixedPair, type PairCounts } from './pairs.ts';
import type { Answered, Session } from './practice.ts';

/** What a session came to. */
export interface SessionSummary {
  readonly answered: number;
  readonly right: number;
  /** Letters taken wrong at least once, in the order of the alphabet. */
  readonly missed: readonly string[];
  readonly mixed: readonly MixedPair[];
  /** A wrong station, or none at all, taken for the one on the plate: what must not happen in flight. */
  readonly wrongYes: number;
  /** From the first to the last answer, seconds. */
  readonly durationS: number;
}

/** What a session came to, ended or not; of one without answers all figures are 0. */
export function summaryOf(session: Session): SessionSummary {
  const { answered, startedAtMs } = session;
  const judged = answered.flatMap(({ judgement }) => judgement.letters);
  const missed = judged.flatMap(({ sent, answered: as }) =>
    sent !== null && sent !== as ? [sent] : [],
  );
  const counts = judged.reduce<PairCounts>(
    (pairs, { sent, answered: as }) =>
      sent === null || as === null ? pairs : withAnswer(pairs, sent, as),
    new Map(),
  );
  const lastAtMs = answered.at(-1)?.atMs ?? startedAtMs;
  return {
    answered: answered.length,
    right: answered.filter(({ judgement }) => judgement.isRight).length,
    missed: [...new Set(missed)].sort(),
    mixed: mixedPairs(counts),
    wrongYes: answered.filter(isWrongYes).length,
    durationS: Math.max(0, lastAtMs - startedAtMs) / 1000,
  };
}

function isWrongYes({ answer, judgement }: Answered): boolean {
  return answer.kind === 'yes' && !judgement.isRight;
}
