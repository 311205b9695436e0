import type { IncomingMessage } from 'node:http';
import type { FastifyHelmetOptions } from '@fastify/helmet';

/**
 * Security headers. No inline script and nothing from elsewhere; WebAssembly and workers of our own.
 *
 * No HSTS and no upgrade to https: the server speaks plain HTTP on the pilot's own machine.
 */
export const SECURITY_HEADERS: FastifyHelmetOptions = {
  contentSecurityPolicy: {
    useDefaults: false,
    directives: {
      defaultSrc: ["'self'"],
      scriptSrc: ["'self'", "'wasm-unsafe-eval'"],
      scriptSrcAttr: ["'none'"],
      workerSrc: ["'self'"],
      connectSrc: ["'self'", socketOfSameOrigin],
      styleSrc: ["'self'"],
      imgSrc: ["'self'", 'data:', 'blob:'],
      fontSrc: ["'self'", 'data:'],
      mediaSrc: ["'self'", 'data:', 'blob:'],
      objectSrc: ["'none'"],
      baseUri: ["'none'"],
      formAction: ["'self'"],
      frameAncestors: ["'none'"],
    },
  },
  strictTransportSecurity: false,
  referrerPolicy: { policy: 'no-referrer' },
  xFrameOptions: { action: 'deny' },
};

/** Older browsers do not count a WebSocket to the same host as 'self'. The guard has checked the host. */
function socketOfSameOrigin(request: IncomingMessage): string {
  return `ws://${request.headers.host ?? '127.0.0.1'}`;
}
