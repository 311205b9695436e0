import { refusal } from './problems.ts';

/** Every address of this machine: the server then answers on whichever the request came in. */
const WILDCARDS = ['0.0.0.0', '::', ''];

const HOST = /^(\[[0-9a-f:.]+\]|[a-z0-9._-]+)(?::\d{1,5})?$/;

/** True for the names and addresses that only this machine itself can reach. */
export function isLoopback(name: string): boolean {
  return name === 'localhost' || name === '[::1]' || /^127(\.\d{1,3}){3}$/.test(name);
}

/** True when the other end of the connection is this machine. */
export function comesFromLoopback(address: string): boolean {
  return address === '::1' || isLoopback(address.replace(/^::ffff:/, ''));
}

/** What a request says about where it is going and where it comes from. */
interface Addressed {
  readonly host: string | undefined;
  readonly origin: string | undefined;
  /** The address of this machine that it came in on. */
  readonly localAddress: string | undefined;
}

/**
 * Refuses what a page of another site could send with the pilot's browser (403).
 *
 * The Host header must name this server: a name that an attacker has pointed here (DNS rebinding)
 * does not. An Origin, which browsers send with every request that can change something and with
 * every WebSocket, must be the page that this server itself serves.
 */
export function guard(request: Addressed, configuredHost: string): void {
  const host = (request.host ?? '').toLowerCase();
  const name = HOST.exec(host)?.[1];
  if (name === undefined || !isOurs(name, configuredHost, request.localAddress ?? ''))
    throw refusal(403, 'The Host header does not name this server.', [
      { field: 'host', expected: 'the address of this server', got: host.slice(0, 100) },
    ]);
  const origin = request.origin?.toLowerCase();
  if (origin !== undefined && origin !== `http://${host}` && origin !== `https://${host}`)
    throw refusal(403, 'The request comes from a page of another site.', [
      { field: 'origin', expected: `http://${host}`, got: origin.slice(0, 100) },
    ]);
}

function isOurs(name: string, configuredHost: string, localAddress: string): boolean {
  if (isLoopback(name)) return true;
  const bare = name.replace(/^\[|\]$/g, '');
  if (bare === configuredHost.toLowerCase()) return true;
  return WILDCARDS.includes(configuredHost) && bare === localAddress.replace(/^::ffff:/, '');
}
