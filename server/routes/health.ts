import type { FastifyInstance } from 'fastify';
import { Type } from 'typebox';

const HealthSchema = Type.Object(
  { status: Type.Literal('ok'), version: Type.String() },
  { additionalProperties: false, description: 'the server is up' },
);

/** `GET /api/health`. */
export function healthRoute(app: FastifyInstance, version: string): void {
  const schema = { summary: 'Is the server up?', response: { 200: HealthSchema } };
  app.get('/api/health', { schema }, () => ({ status: 'ok', version }));
}
