import { once } from 'node:events';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { judge } from '../payload-judge/judge.ts';
import { barePath } from '../payload-judge/operations.ts';
import { asLine } from '../payload-judge/problem.ts';
import { faultFor } from './faults.ts';
import { receivedBody } from './multipart.ts';
import { type Answer, badPayload, found, noSuchRoute, unauthorized } from './refusals.ts';
import type { Request } from './route.ts';
import { routes } from './routes.ts';
import type { Logged, World } from './world.ts';

const mostRemembered = 20_000;

/** The platform's REST interface, the place its files are fetched from, and nothing else. */
export function restServer(world: World): Server {
  return createServer((incoming, outgoing) => {
    const arrivedAt = performance.now();
    if (servedOddly(world, incoming, outgoing)) return;
    answer(world, incoming, arrivedAt).then(
      ({ status, body, headers, raw }) => {
        const bytes = raw ?? (body === undefined ? undefined : JSON.stringify(body));
        outgoing.writeHead(status, {
          ...(body === undefined ? {} : { 'content-type': 'application/json' }),
          ...headers,
        });
        outgoing.end(bytes);
      },
      (error: unknown) => {
        world.violations.push(`the stand-in failed at ${incoming.method} ${incoming.url}: ${String(error)}`);
        outgoing.writeHead(500).end();
      },
    );
  });
}

/** Hands out a file in the odd way planned for it; false where nothing is planned. */
function servedOddly(world: World, incoming: IncomingMessage, outgoing: ServerResponse): boolean {
  const { pathname } = new URL(incoming.url ?? '/', world.origin);
  const served = world.files.get(pathname)?.served;
  if (pathname.startsWith('/api/') || !served || 'gone' in served) return false;
  world.fetched.push(pathname);
  if ('redirect' in served) outgoing.writeHead(302, { location: served.redirect }).end();
  if ('stream' in served) void streamed(outgoing, served.stream);
  if ('breaks' in served) {
    outgoing.writeHead(200, { 'content-length': '1000000' });
    outgoing.write(Buffer.alloc(1000), () => outgoing.destroy());
  }
  return true;
}

/** Sends bytes in pieces until all are sent or nobody listens any more. */
async function streamed(outgoing: ServerResponse, size: number): Promise<void> {
  outgoing.writeHead(200, { 'content-type': 'image/jpeg' });
  const piece = Buffer.alloc(64 * 1024, 0xff);
  const closed = once(outgoing, 'close');
  for (let sent = 0; sent < size && !outgoing.destroyed; sent += piece.length) {
    if (!outgoing.write(piece)) await Promise.race([new Promise((go) => outgoing.once('drain', go)), closed]);
  }
  outgoing.end();
}

type RawAnswer = Answer & { readonly raw?: Uint8Array };

async function answer(world: World, incoming: IncomingMessage, arrivedAt: number): Promise<RawAnswer> {
  const url = new URL(incoming.url ?? '/', world.origin);
  const method = incoming.method ?? 'GET';
  if (!url.pathname.startsWith('/api/')) return fileAnswer(world, url.pathname);
  const received = await receivedBody(await bytesOf(incoming), incoming.headers['content-type'] ?? '');
  const path = barePath(url.pathname);
  const log: { -readonly [Key in keyof Logged]: Logged[Key] } = {
    method,
    path,
    query: url.search,
    body: received.body,
    files: received.files.map(({ field, name, bytes }) => ({ field, name, size: bytes.length })),
    problems: [],
    status: 0,
    at: world.clock.now(),
  };
  if (world.requests.push(log) > mostRemembered) world.requests.splice(0, mostRemembered / 2);
  const judged: Request['judged'] = (around = {}) => {
    if (!world.judging) return undefined;
    log.problems = judge({
      ...around,
      method,
      path,
      body: received.body,
      files: log.files,
      fileLimit: world.fileLimit,
    });
    world.violations.push(...log.problems.map((problem) => `${method} ${path}: ${asLine(problem)}`));
    const refused = log.problems.filter((problem) => problem.refused);
    return refused.length > 0 ? badPayload(refused) : undefined;
  };
  const fault = await faultFor(world.faults, method, path);
  const given =
    fault ?? route(world, incoming, { ...received, method, path, query: url.searchParams, arrivedAt, judged });
  log.status = given.status;
  world.signal.notify();
  return given;
}

function route(world: World, incoming: IncomingMessage, request: Request): Answer {
  const { method, path } = request;
  // The tokens in the paths of interactions and webhooks are all the proof these two need.
  const open = path.startsWith('/interactions/') || path.startsWith('/webhooks/');
  if (!open && incoming.headers.authorization !== `Bot ${world.token}`) return unauthorized;
  for (const { method: wanted, pattern, handle } of routes) {
    const match = wanted === method ? pattern.exec(path) : null;
    if (match) return handle(world, request, ...match.slice(1).map(decodeURIComponent));
  }
  return noSuchRoute;
}

function fileAnswer(world: World, path: string): RawAnswer {
  const file = world.files.get(path);
  world.fetched.push(path);
  if (!file || file.served)
    return { status: 404, raw: new TextEncoder().encode('This content is no longer available.') };
  return { ...found(undefined), raw: file.bytes, headers: { 'content-type': file.contentType } };
}

async function bytesOf(incoming: IncomingMessage): Promise<Buffer<ArrayBuffer>> {
  const chunks: Buffer[] = [];
  for await (const chunk of incoming) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks);
}
