import { signal, type Signal } from '@preact/signals';
import { rulesProblems } from '../../src/station/library/enter-check.ts';
import type { CheckRules, ReceiverCheck } from '../../src/station/library/receiver-check.ts';

const PLACE = 'spoken-radial.check-rules';

/** What the pilot has set on this device; null: nothing yet. */
const chosen: Signal<CheckRules | null> = signal(stored());

function stored(): CheckRules | null {
  try {
    return readStored(JSON.parse(localStorage.getItem(PLACE) ?? 'null'));
  } catch {
    // Nothing can be kept here, or what was kept is broken: as on a device that is new.
    return null;
  }
}

function readStored(given: unknown): CheckRules | null {
  if (typeof given !== 'object' || given === null || !('state' in given)) return null;
  const { state } = given;
  if (state === 'us' || state === 'canada') return { state };
  if (state !== 'own' || !('permittedDeg' in given) || !('validDays' in given)) return null;
  const { permittedDeg, validDays } = given;
  if (typeof permittedDeg !== 'number' || typeof validDays !== 'number') return null;
  const rules: CheckRules = { state: 'own', permittedDeg, validDays };
  return rulesProblems(rules).length === 0 ? rules : null;
}

/** By whose rules the next check is judged: as set, else as the last one was, else those of 14 CFR 91.171. */
export function rulesFor(last: ReceiverCheck | undefined): CheckRules {
  return chosen.value ?? last?.rules ?? { state: 'us' };
}

/** Sets the rules for the checks to come; those in the log keep theirs. */
export function chooseRules(rules: CheckRules): void {
  chosen.value = rules;
  try {
    localStorage.setItem(PLACE, JSON.stringify(rules));
  } catch {
    // It holds until the page is closed; the check itself keeps the rule that it was judged by.
  }
}
