import { emptyRoute, type RouteDraft } from './route-draft.ts';

const PLACE = 'spoken-radial.routes';

/** The planned flights of this device, the last changed first. */
export function keptRoutes(): readonly RouteDraft[] {
  try {
    const stored = JSON.parse(localStorage.getItem(PLACE) ?? '[]') as readonly RouteDraft[];
    return stored.map((route) => ({ ...emptyRoute(route.id, route.date), ...route }));
  } catch {
    return [];
  }
}

/** Keeps a flight, in front of the others; throws a sentence where the browser has no room. */
export function keepRoute(route: RouteDraft): void {
  write([route, ...keptRoutes().filter(({ id }) => id !== route.id)]);
}

/** Takes a flight off the shelf. */
export function dropRoute(id: string): void {
  write(keptRoutes().filter((each) => each.id !== id));
}

function write(routes: readonly RouteDraft[]): void {
  try {
    localStorage.setItem(PLACE, JSON.stringify(routes));
  } catch (reason) {
    throw new Error('This browser has no room for the flight. Take old ones out.', {
      cause: reason,
    });
  }
}
