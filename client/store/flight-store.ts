import { decodeTime, isValid, ulid } from 'ulid';
import { eraseFlight, flightRow, flightRows, saveEvents } from './log-disk.ts';
import { getFlights } from './server-calls.ts';
import { stamp, type PlanFields } from './stamp-event.ts';

export type { FlightStore } from './open-flight.ts';
export type { EventFields, PlanFields } from './stamp-event.ts';

/** One line of the list of flights. */
export interface FlightSummary {
  readonly id: string;
  readonly name: string;
  readonly createdAtMs: number;
  /** False: only the server has it; it can be opened all the same. */
  readonly isHere: boolean;
}

/** The flights of this device, and those of the server when it answers, newest first. */
export async function listFlights(): Promise<readonly FlightSummary[]> {
  const [rows, theirs] = await Promise.all([flightRows(), getFlights()]);
  const known = new Set(rows.map((row) => row.id));
  const here = rows
    .filter((row) => !row.isDeleted)
    .map(({ id, name, createdAtMs }) => ({ id, name, createdAtMs, isHere: true }));
  const there = theirs
    .filter((flight) => !known.has(flight.id))
    .map(({ id, name }) => ({
      id,
      name,
      createdAtMs: isValid(id) ? decodeTime(id) : 0,
      isHere: false,
    }));
  return [...here, ...there].sort((one, other) => other.createdAtMs - one.createdAtMs);
}

/** Asks the browser not to throw the log away when space gets short; it may say no. */
async function askToKeep(): Promise<void> {
  // Missing where the page did not come over a secure connection.
  const storage = (navigator as { readonly storage?: StorageManager }).storage;
  await storage?.persist().catch(() => false);
}

/** Starts a new flight on this device with this plan; gives its id. */
export async function createFlight(plan: PlanFields): Promise<string> {
  const event = stamp({ kind: 'plan', ...plan }, 0);
  const id = ulid(event.atMs);
  const row = { id, name: plan.name, createdAtMs: event.atMs, isDeleted: false };
  // Not waited for: some browsers ask the pilot first.
  void askToKeep();
  await saveEvents(row, [event]);
  return id;
}

/** Takes a flight off this device and out of the list; the server keeps its records. */
export async function deleteFlight(id: string): Promise<void> {
  const row = await flightRow(id);
  await eraseFlight(row ?? { id, name: 'Flight', createdAtMs: Date.now(), isDeleted: true });
}
