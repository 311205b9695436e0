import { describe, expect, it } from 'vitest';
import { asked } from './examples.ts';
import { get, post, serve } from './serve.ts';

const { port } = await serve();
const { status, json, headers } = await get(port, '/api/openapi.json');
const document = json as {
  openapi: string;
  paths: Record<string, Record<string, { responses: object; requestBody?: object }>>;
};

describe('GET /api/openapi.json (OpenAPI Specification 3.1)', () => {
  it('is JSON of version 3.1', () => {
    expect(status).toBe(200);
    expect(headers['content-type']).toMatch(/^application\/json/);
    expect(document.openapi).toMatch(/^3\.1\./);
  });

  it('has each route of the interface, and none of the page', () => {
    expect(Object.keys(document.paths).toSorted()).toEqual([
      '/api/advice',
      '/api/flights',
      '/api/flights/{id}',
      '/api/flights/{id}/events',
      '/api/health',
      '/api/hear',
      '/api/ident/confirm',
      '/api/ident/decode',
      '/api/ident/{file}',
      '/api/legs/compute',
      '/api/stations',
      '/api/stations/import',
      '/api/stations/{id}',
    ]);
    expect(Object.keys(document.paths['/api/flights/{id}/events'] ?? {})).toEqual(
      expect.arrayContaining(['get', 'post']),
    );
  });

  it('has the fields of a request for advice with their units, and refuses others', () => {
    const advice = document.paths['/api/advice']?.['post'];
    expect(advice?.requestBody).toMatchObject({
      content: {
        'application/json': {
          schema: {
            additionalProperties: false,
            required: ['leg', 'aircraft', 'readings'],
            properties: {
              leg: { properties: { courseDeg: { type: 'number' } }, additionalProperties: false },
              readings: { maxItems: 2000 },
            },
          },
        },
      },
    });
    expect(JSON.stringify(advice?.requestBody)).toContain('degrees');
  });

  it('describes the answer and the problem of every route that can refuse', () => {
    const responses = document.paths['/api/advice']?.['post']?.responses ?? {};
    expect(Object.keys(responses)).toEqual(
      expect.arrayContaining(['200', '400', '413', '415', '422']),
    );
    expect(JSON.stringify(responses)).toContain('application/problem+json');
  });

  it('describes the answer as it is: no field more, none less', async () => {
    const answer = (await post(port, '/api/advice', asked)).json as object;
    const described = document.paths['/api/advice']?.['post']?.responses as {
      200: { content: { 'application/json': { schema: { required: string[] } } } };
    };
    const { required } = described[200].content['application/json'].schema;
    expect(Object.keys(answer).toSorted()).toEqual(required.toSorted());
  });
});

describe('GET /api/health', () => {
  it('says that the server is up, and its version', async () => {
    expect((await get(port, '/api/health')).json).toEqual({ status: 'ok', version: '1.2.3' });
  });
});
