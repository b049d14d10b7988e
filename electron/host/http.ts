import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { appBegin } from '../../core/contract/app.ts';
import type { Reply } from '../../core/contract/call.ts';
import { megabytes, MOST } from '../../core/input-limits.ts';
import type { Log } from '../log.ts';
import type { Pushes } from '../service/pushes.ts';
import { makeGuard, type Guard } from './http-guard.ts';
import { readPage, textPage } from './pages.ts';
import { refuse, type Serve } from './serve.ts';

interface HttpOptions {
  /** 0 takes any free one. */
  readonly port: number;
  /** dist/renderer */
  readonly pages: string;
  readonly serve: Serve;
  readonly pushes: Pushes;
  readonly log: Log;
  readonly maxBodyBytes?: number;
  readonly arrivalMs?: number;
}

export interface HttpHost {
  /** Opens the app in a browser, once. */
  readonly address: string;
  close(): Promise<void>;
}

const ARRIVAL_MS = MOST.arrivalSeconds * 1000;
/** Comments keep the line open through proxies that drop idle ones. */
const KEEP_ALIVE_MS = 25_000;

/**
 * The screens in a plain browser, on this machine only. `POST /call/NAME` with JSON answers the contract, `GET /push`
 * streams the pushes, everything else is a file of the built screens.
 * @throws Error when the port is taken
 */
export async function startHttp(options: HttpOptions): Promise<HttpHost> {
  let guard: Guard | null = null;
  const { arrivalMs = ARRIVAL_MS } = options;
  const timing = {
    headersTimeout: arrivalMs,
    requestTimeout: arrivalMs,
    connectionsCheckingInterval: arrivalMs / 10,
  };
  const server = createServer(timing, (request, response) => {
    if (!guard) return void response.destroy();
    answer(request, response, guard, options).catch((error: unknown) => {
      // A line went dead in the middle of a request: its end is all there is to say.
      if (request.complete) options.log.error(`${request.method} ${request.url} failed`, error);
      response.destroy();
    });
  });
  server.maxConnections = MOST.connections;
  await listen(server, options.port);
  guard = makeGuard((server.address() as AddressInfo).port);
  return {
    address: guard.address,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

const listen = (server: Server, port: number): Promise<void> =>
  new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => resolve());
  });

async function answer(
  request: IncomingMessage,
  response: ServerResponse,
  guard: Guard,
  options: HttpOptions,
): Promise<void> {
  // Whoever has no session leaves no line in the log, whatever is asked.
  const url = URL.parse(request.url ?? '/', 'http://127.0.0.1');
  if (!url) return sendText(response, 400, 'This is no address of a page.');
  if (url.pathname === '/' && url.searchParams.has('key') && !guard.hasSession(request)) {
    const cookie = guard.enter(url);
    if (cookie) return redirectHome(response, cookie);
  }
  const refusal = guard.refusal(request);
  if (refusal) return sendText(hungUp(request, response), 403, refusal);
  if (url.searchParams.has('key')) return redirectHome(response);
  if (url.pathname.startsWith('/call/'))
    return answerCall(request, response, url.pathname.slice('/call/'.length), options);
  if (request.method !== 'GET') return notAllowed(request, response, 'GET', 'Only GET is answered here.');
  if (url.pathname === '/push') return streamPushes(response, options.pushes);
  const page = await readPage(options.pages, url.pathname);
  response.writeHead(page.status, page.headers).end(page.body);
}

/** Takes the key out of the address bar and the history. */
function redirectHome(response: ServerResponse, cookie?: string): void {
  const headers = { ...textPage('').headers, Location: '/' };
  response.writeHead(303, cookie ? { ...headers, 'Set-Cookie': cookie } : headers).end();
}

/** Nobody waits for the rest of a request that is answered already. */
function hungUp(request: IncomingMessage, response: ServerResponse): ServerResponse {
  if (!request.complete) response.setHeader('Connection', 'close');
  return response;
}

function notAllowed(
  request: IncomingMessage,
  response: ServerResponse,
  allow: 'GET' | 'POST',
  text: string,
): void {
  response.setHeader('Allow', allow);
  sendText(hungUp(request, response), 405, text);
}

function sendText(response: ServerResponse, status: number, text: string): void {
  const { headers, body } = textPage(text);
  response.writeHead(status, headers).end(body);
}

function sendReply(response: ServerResponse, status: number, reply: Reply<unknown>): void {
  const { headers } = textPage('');
  response.writeHead(status, { ...headers, 'Content-Type': 'application/json' }).end(JSON.stringify(reply));
}

async function answerCall(
  request: IncomingMessage,
  response: ServerResponse,
  name: string,
  { serve, maxBodyBytes }: HttpOptions,
): Promise<void> {
  if (request.method !== 'POST') return notAllowed(request, response, 'POST', 'Requests are made with POST.');
  if (!/^application\/json *(;|$)/i.test(request.headers['content-type'] ?? ''))
    return sendReply(hungUp(request, response), 415, refuse('bad-input', 'A request must be JSON.'));
  const most = maxBodyBytes ?? roomFor(name);
  const body = await readBody(request, most);
  if (body === null) {
    const sentence = `The request is larger than ${megabytes(most)}. Nothing was changed; send less at a time.`;
    return sendReply(hungUp(request, response), 413, refuse('bad-input', sentence));
  }
  const input = parsed(body);
  if (input === undefined) return sendReply(response, 400, refuse('bad-input', 'The request is not JSON.'));
  sendReply(response, 200, await serve(name, input, request.headers['x-caller']));
}

function roomFor(name: string): number {
  if (name === appBegin.name) return MOST.exportRequestBytes;
  return name.startsWith('import.') ? MOST.fileRequestBytes : MOST.requestBytes;
}

/** Null when it is larger than allowed; the rest is then not read. */
async function readBody(request: IncomingMessage, maxBytes: number): Promise<Buffer | null> {
  if (Number(request.headers['content-length'] ?? 0) > maxBytes) return null;
  const chunks: Buffer[] = [];
  let bytes = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    bytes += chunk.length;
    if (bytes > maxBytes) return null;
    chunks.push(chunk);
  }
  return Buffer.concat(chunks);
}

/** Undefined when it is not JSON in UTF-8: letters that cannot be read must not be kept as others. */
function parsed(body: Buffer): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(body)) as unknown;
  } catch {
    return undefined;
  }
}

function streamPushes(response: ServerResponse, pushes: Pushes): void {
  response.writeHead(200, { ...textPage('').headers, 'Content-Type': 'text/event-stream' });
  response.write(':\n\n');
  const deafen = pushes.listen((push) => {
    // A page that takes nothing is cut off; connected again, it reads everything anew.
    if (response.writableLength > MOST.unheardBytes) response.destroy();
    else response.write(`data: ${JSON.stringify(push)}\n\n`);
  });
  const beat = setInterval(() => response.write(':\n\n'), KEEP_ALIVE_MS);
  response.once('close', () => {
    clearInterval(beat);
    deafen();
  });
}
