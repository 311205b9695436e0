import { STATUS_CODES } from 'node:http';
import type { IncomingMessage } from 'node:http';
import type { FastifyError, FastifyReply, FastifyRequest } from 'fastify';
import type { FieldProblem } from '../src/base/result.ts';
import type { Problem } from '../src/wire/problem.ts';

/** An error that carries its own answer: a status, one sentence, and the fields at fault. */
interface Refusal extends Error {
  readonly statusCode: number;
  readonly fieldProblems: readonly FieldProblem[];
}

/** Makes an error to throw: the request is refused with this status and this sentence. */
export function refusal(
  statusCode: number,
  detail: string,
  fieldProblems: readonly FieldProblem[] = [],
): Refusal {
  return Object.assign(new Error(detail), { statusCode, fieldProblems });
}

/** Makes an error to throw: these fields are wrong (422). */
export function fieldRefusal(fieldProblems: readonly FieldProblem[]): Refusal {
  const first = fieldProblems[0];
  const more = fieldProblems.length > 1 ? ` And ${fieldProblems.length - 1} more.` : '';
  const detail =
    first === undefined
      ? 'A field is wrong.'
      : `${first.field}: expected ${first.expected}, got ${first.got || 'nothing'}.${more}`;
  return refusal(422, detail, fieldProblems);
}

/** What is sent for an error, by RFC 9457. Errors of our own making say only that there was one. */
export function problemOf(error: Partial<FastifyError & Refusal>): Problem {
  const status = statusOf(error);
  return {
    type: 'about:blank',
    title: STATUS_CODES[status] ?? 'Error',
    status,
    detail: detailOf(error, status),
    errors: [...(error.fieldProblems ?? (isNoJson(error) ? [NO_JSON] : bodyProblems(status)))],
  };
}

/** Answers any error that a handler or Fastify itself has thrown. */
export function answerError(
  error: Partial<FastifyError & Refusal>,
  request: FastifyRequest,
  reply: FastifyReply,
): FastifyReply {
  const problem = problemOf(error);
  // A refusal of our own that names its field (busy, ending) is no fault of the server.
  if (problem.status >= 500 && problem.errors.length === 0)
    console.error(`${request.method} ${request.url}:`, error);
  if (problem.status !== 413) return sendProblem(reply, problem);
  readAway(request.raw, () => {
    sendProblem(reply, problem);
  });
  return reply;
}

/** Sends a problem with its status and media type. */
function sendProblem(reply: FastifyReply, problem: Problem): FastifyReply {
  return reply
    .code(problem.status)
    .type('application/problem+json')
    .serializer(JSON.stringify)
    .send(problem);
}

/** Answering while the other end still sends breaks the connection, and the answer is lost with it. */
const MOST_READ_AWAY_BYTES = 256 * 1024 * 1024;
const LONGEST_READ_AWAY_MS = 10_000;

/** Reads what is left of a body that is too large and throws it away, within reason, then goes on. */
function readAway(body: IncomingMessage, goOn: () => void): void {
  let bytes = 0;
  const end = (): void => {
    clearTimeout(timer);
    body.off('data', count).off('end', end).off('close', end).pause();
    goOn();
  };
  const count = (chunk: Buffer): void => {
    bytes += chunk.length;
    if (bytes > MOST_READ_AWAY_BYTES) end();
  };
  const timer = setTimeout(end, LONGEST_READ_AWAY_MS);
  body.on('data', count).once('end', end).once('close', end).resume();
  if (body.readableEnded || body.destroyed) end();
}

function statusOf(error: Partial<FastifyError>): number {
  if (error.code?.startsWith('SQLITE_FULL') === true) return 507;
  if (error.code?.startsWith('SQLITE_') === true) return 503;
  const status = error.statusCode ?? 500;
  return status >= 400 && status <= 599 ? status : 500;
}

const DETAILS: Readonly<Record<number, string>> = {
  413: 'The body is larger than 1 MB.',
  414: 'A name or an id in the address is too long: at most 200 letters.',
  415: 'The body must be application/json.',
  500: 'Something went wrong in the server. Nothing that was recorded is lost.',
  503: 'The records cannot be written at the moment. Nothing of this request was recorded.',
  507: 'The disk is full. Nothing of this request was recorded.',
};

const NO_JSON: FieldProblem = { field: 'body', expected: 'JSON', got: 'something else' };

/** A body that is called JSON and is none: Fastify's own error, or that of its parser. */
function isNoJson({ code, name, statusCode }: Partial<FastifyError>): boolean {
  if (code === 'FST_ERR_CTP_INVALID_JSON_BODY' || code === 'FST_ERR_CTP_EMPTY_JSON_BODY')
    return true;
  return statusCode === 400 && name === 'SyntaxError';
}

function detailOf(error: Partial<FastifyError & Refusal>, status: number): string {
  if ((error.fieldProblems ?? []).length > 0) return error.message ?? '';
  if (isNoJson(error)) return 'The body is not JSON. Nothing of this request was recorded.';
  return DETAILS[status] ?? error.message ?? 'The request was refused.';
}

/** Fastify refuses a body before any field is known; then the body itself is the field. */
function bodyProblems(status: number): readonly FieldProblem[] {
  if (status === 413) return [{ field: 'body', expected: 'at most 1 MB', got: 'more' }];
  if (status === 414)
    return [{ field: 'address', expected: 'a name or an id of at most 200 letters', got: 'more' }];
  if (status === 415)
    return [{ field: 'content-type', expected: 'application/json', got: 'another one' }];
  return [];
}
