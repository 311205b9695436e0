import type { FastifyDynamicSwaggerOptions } from '@fastify/swagger';

/** The head of the interface's description; the rest comes from the schemas of the routes. */
export function OPENAPI(version: string): FastifyDynamicSwaggerOptions {
  return {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Spoken Radial',
        version,
        description:
          'Readings in, one spoken heading out, and the record of flights. A practice and prompting ' +
          'aid, never the primary means of navigation. Bearings in degrees, distances in NM, heights ' +
          'in feet, speeds in knots. Unknown fields are refused. Errors are RFC 9457 problem details.',
      },
      servers: [{ url: '/' }],
    },
  };
}
