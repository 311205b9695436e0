import type { FlightEvent } from '../../src/flight/event.ts';

/** The other tabs of this browser that have the same flight open. */
export interface TabLink {
  /** Tells them of events that are on disk already. */
  tell(events: readonly FlightEvent[]): void;
  close(): void;
}

/** Joins the tabs of one flight; they share the disk, so a telling only saves them from reading it again. */
export function linkTabs(
  flightId: string,
  receive: (events: readonly FlightEvent[]) => void,
): TabLink {
  if (!('BroadcastChannel' in globalThis)) return { tell: () => undefined, close: () => undefined };
  const channel = new BroadcastChannel(`spoken-radial.flight.${flightId}`);
  channel.onmessage = (message: MessageEvent<readonly FlightEvent[]>): void => {
    receive(message.data);
  };
  return {
    tell: (events) => {
      channel.postMessage(events);
    },
    close: () => {
      channel.close();
    },
  };
}
