import fastifyHelmet from '@fastify/helmet';
import fastifyRateLimit from '@fastify/rate-limit';
import fastifySwagger from '@fastify/swagger';
import fastifyWebsocket from '@fastify/websocket';
import fastify from 'fastify';
import type { FastifyInstance } from 'fastify';
import { followersOf } from './follow.ts';
import { comesFromLoopback, guard } from './guard.ts';
import { SECURITY_HEADERS } from './headers.ts';
import { answerMissing } from './missing.ts';
import { OPENAPI } from './openapi.ts';
import { servePage } from './page.ts';
import { answerError, refusal } from './problems.ts';
import type { Records } from './records.ts';
import { adviceRoute } from './routes/advice.ts';
import { eventRoutes } from './routes/events.ts';
import { flightRoutes } from './routes/flights.ts';
import { followRoute } from './routes/follow.ts';
import { healthRoute } from './routes/health.ts';
import { hearRoute } from './routes/hear.ts';
import { identRoute } from './routes/ident.ts';
import { identHeardRoutes } from './routes/ident-heard.ts';
import { legsRoute } from './routes/legs.ts';
import { dropDeadSockets, endSockets, MOST_MESSAGE_BYTES } from './sockets.ts';
import { stationRoutes } from './routes/stations.ts';
import { checkBySchema } from './validation.ts';

/** What the app is built from. */
export interface AppParts {
  readonly records: Records;
  /** The built page. */
  readonly pageDir: string;
  readonly version: string;
  /** The address that the server is asked to listen on. */
  readonly host: string;
  readonly now: () => number;
}

const BODY_LIMIT_BYTES = 1_048_576;

/** For other machines; this one may call as often as it likes. */
const MOST_CALLS_A_MINUTE = 600;

/** Builds the server without listening: hooks first, then one file of `routes/` for each room. */
export async function buildApp(parts: AppParts): Promise<FastifyInstance> {
  const app = fastify({
    bodyLimit: BODY_LIMIT_BYTES,
    forceCloseConnections: 'idle',
    frameworkErrors: (error, request, reply) => {
      void answerError(error, request, reply);
    },
    routerOptions: { maxParamLength: 200 },
  });
  app.setErrorHandler(answerError);
  app.setValidatorCompiler(checkBySchema as never);
  app.setSerializerCompiler(() => JSON.stringify);
  app.removeContentTypeParser('text/plain');
  app.addHook('onSend', (request, reply, _payload, done) => {
    if (request.url.startsWith('/api/') && !reply.hasHeader('cache-control'))
      reply.header('cache-control', 'no-store');
    done();
  });

  await app.register(fastifyHelmet, SECURITY_HEADERS);
  // Before the guard, because it also ends the connection of a WebSocket that the guard refuses.
  await app.register(fastifyWebsocket, {
    options: { maxPayload: MOST_MESSAGE_BYTES },
    preClose: endSockets,
  });
  dropDeadSockets(app);
  app.addHook('onRequest', (request, _reply, done) => {
    const { host, origin } = request.headers;
    guard({ host, origin, localAddress: request.socket.localAddress }, parts.host);
    done();
  });
  await app.register(fastifyRateLimit, {
    max: MOST_CALLS_A_MINUTE,
    timeWindow: '1 minute',
    allowList: (request) => comesFromLoopback(request.ip),
    errorResponseBuilder: () => refusal(429, 'Too many calls from this machine. Wait a minute.'),
  });
  await app.register(fastifySwagger, OPENAPI(parts.version));
  answerMissing(app);

  const followers = followersOf(parts.records);
  healthRoute(app, parts.version);
  adviceRoute(app, parts.now);
  identRoute(app);
  await identHeardRoutes(app);
  await hearRoute(app);
  legsRoute(app, parts.now);
  await stationRoutes(app, parts.records.stations, parts.now);
  flightRoutes(app, parts.records, parts.now);
  eventRoutes(app, parts.records, followers);
  followRoute(app, parts.records, followers);
  app.get('/api/openapi.json', { schema: { hide: true } }, () => app.swagger());
  await servePage(app, parts.pageDir);
  await app.ready();
  return app;
}
