import { randomBytes, timingSafeEqual } from 'node:crypto';
import { createServer } from 'node:http';
import type { IncomingMessage, Server, ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { dispatch } from '../dispatch.ts';
import type { Session } from '../operations/shell.ts';
import { pageFile } from '../page-files.ts';
import { ropeBytes } from '../rope-bytes.ts';
import { SECURITY_HEADERS } from '../security-policy.ts';

const MEBIBYTE = 1024 * 1024;
/** A photo or scan that is added travels as base64 in one request; nothing else is large. */
const LARGEST_BODY: Readonly<Record<string, number>> = { addFile: 256 * MEBIBYTE, printReport: 64 * MEBIBYTE };
const LARGEST_OTHER = 4 * MEBIBYTE;

export interface Loopback {
  /** Address with the token, to be opened once; the token then lives in a cookie. */
  readonly address: string;
  readonly origin: string;
  readonly server: Server;
  close(): Promise<void>;
}

/** Serves the page and the contract on 127.0.0.1 alone. Every request must name this host; every call must come from our own page with its cookie. */
export async function startLoopback(session: Session, pageRoot: string, port: number): Promise<Loopback> {
  const secret = randomBytes(24).toString('base64url');
  const server = createServer((request, response) => {
    answer(request, response, { session, pageRoot, secret, origin: originOf(server) }).catch(() => {
      if (!response.headersSent) send(response, 500, 'text/plain', 'Strandbook could not answer this request');
      else response.destroy();
    });
  });
  await new Promise<void>((resolve, reject) => server.once('error', reject).listen(port, '127.0.0.1', resolve));
  const origin = originOf(server);
  return {
    address: `${origin}/?key=${secret}`, origin, server,
    close: () => new Promise((resolve) => {
      server.close(() => resolve());
      server.closeAllConnections();
    }),
  };
}

function originOf(server: Server): string {
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
}

interface Context {
  readonly session: Session;
  readonly pageRoot: string;
  readonly secret: string;
  readonly origin: string;
}

async function answer(request: IncomingMessage, response: ServerResponse, context: Context): Promise<void> {
  // A page elsewhere that points its own name at 127.0.0.1 still sends that name here.
  if (`http://${request.headers.host}` !== context.origin) return send(response, 403, 'text/plain', 'This address is not served here');
  const address = new URL(request.url ?? '/', context.origin);
  if (address.pathname === '/' && address.searchParams.has('key')) return enter(response, address.searchParams.get('key')!, context);
  if (!sameSecret(cookieOf(request, context), context.secret)) return send(response, 401, 'text/plain', 'Open the address that Strandbook printed when it started');
  if (address.pathname.startsWith('/call/')) return call(request, response, address.pathname.slice('/call/'.length), context);
  if (request.method !== 'GET') return send(response, 405, 'text/plain', 'Only GET is answered here');
  if (address.pathname.startsWith('/bytes/')) return bytes(response, address.pathname, context);
  const file = await pageFile(context.pageRoot, address.pathname);
  if (file === null) return send(response, 404, 'text/plain', 'There is no such file');
  return send(response, 200, file.type, file.bytes);
}

/** Browsers share cookies between the ports of a host: each running program has its own name for it. */
function cookieName({ origin }: Context): string {
  return `strandbook-${new URL(origin).port}`;
}

function enter(response: ServerResponse, key: string, context: Context): void {
  const { secret } = context;
  if (!sameSecret(key, secret)) return send(response, 401, 'text/plain', 'This key is not the one that Strandbook printed when it started');
  response.writeHead(303, { ...SECURITY_HEADERS, location: '/', 'set-cookie': `${cookieName(context)}=${secret}; HttpOnly; SameSite=Strict; Path=/` });
  response.end();
}

async function call(request: IncomingMessage, response: ServerResponse, name: string, context: Context): Promise<void> {
  if (request.method !== 'POST') return send(response, 405, 'text/plain', 'Calls are sent with POST');
  if (request.headers.origin !== context.origin) return send(response, 403, 'text/plain', 'Calls are answered for our own page only');
  if (!request.headers['content-type']?.startsWith('application/json')) return send(response, 415, 'text/plain', 'Calls carry JSON');
  const text = await bodyText(request, Object.hasOwn(LARGEST_BODY, name) ? LARGEST_BODY[name] : LARGEST_OTHER);
  if (text === null) return refuseRest(request, response);
  const argument = parsed(text);
  if (argument === undefined) return sendJson(response, 400, { message: 'the request is no JSON' });
  const outcome = await dispatch(context.session, name, argument);
  return 'problem' in outcome ? sendJson(response, 422, { message: outcome.problem }) : sendJson(response, 200, outcome.answer);
}

async function bytes(response: ServerResponse, path: string, { session }: Context): Promise<void> {
  const found = await ropeBytes(session, path);
  if (found === null) return send(response, 404, 'text/plain', 'There is no such file in an opened folder');
  response.writeHead(200, { ...SECURITY_HEADERS, 'content-type': found.type, 'cache-control': 'no-store' });
  await pipeline(Readable.from(found.body instanceof Uint8Array ? [found.body] : found.body), response);
}

/** The whole body as text, or null as soon as it is larger than allowed. */
function bodyText(request: IncomingMessage, most: number): Promise<string | null> {
  if (Number(request.headers['content-length'] ?? 0) > most) return Promise.resolve(null);
  return new Promise((resolve, reject) => {
    const parts: Buffer[] = [];
    let size = 0;
    request.on('data', (part: Buffer) => {
      size += part.length;
      if (size <= most) parts.push(part);
      else resolve(null);
    });
    request.on('end', () => resolve(Buffer.concat(parts).toString('utf8'))).on('error', reject);
  });
}

/** Answers before the rest of a body that is too large has come, and takes no more of it. */
function refuseRest(request: IncomingMessage, response: ServerResponse): void {
  response.setHeader('connection', 'close');
  response.once('finish', () => request.destroy());
  sendJson(response, 413, { message: 'the request is too large' });
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function cookieOf(request: IncomingMessage, context: Context): string {
  const pairs = (request.headers.cookie ?? '').split(';').map((pair) => pair.trim().split('='));
  return pairs.find(([key]) => key === cookieName(context))?.[1] ?? '';
}

function sameSecret(given: string, secret: string): boolean {
  const a = Buffer.from(given);
  const b = Buffer.from(secret);
  return a.length === b.length && timingSafeEqual(a, b);
}

function send(response: ServerResponse, status: number, type: string, body: string | Uint8Array): void {
  response.writeHead(status, { ...SECURITY_HEADERS, 'content-type': type, 'cache-control': 'no-store' });
  response.end(body);
}

function sendJson(response: ServerResponse, status: number, body: unknown): void {
  send(response, status, 'application/json', JSON.stringify(body));
}
