import { request as httpRequest, type IncomingMessage } from 'node:http';
import { connect } from 'node:net';
import { inspect } from 'node:util';
import type { Reply } from '../../../core/contract/call.ts';
import { contract } from '../../../core/contract/index.ts';
import { anEverythingShop } from '../everything-shop.ts';
import { sameContent, Watch, type Verdict } from './case.ts';
import type { Hosts } from './file-case.ts';
import { exportFile, ordersFile } from './files.ts';
import type { DoorHost } from './host.ts';
import { mutateBytes } from './mutate-bytes.ts';
import { mutateValue } from './mutate-value.ts';
import { samplerOf } from './sample.ts';
import { Draw, wildCopied, wildJson, wildText } from './wild.ts';

const calls = Object.values(contract);
const sample = samplerOf(anEverythingShop(), {
  base64: [Buffer.from(ordersFile).toString('base64')],
  gzipBase64: [Buffer.from(exportFile).toString('base64')],
  fileName: ['orders.csv'],
  name: ['shop 2026-11-30T12-00-00 asked.db'],
  queues: ['S1', 'B1'],
  jobId: ['a-job'],
  timeZone: ['America/Chicago'],
  standards: ['hitLong'],
});

/** One request that does not fit, or just fits: handed over as a window does, or sent over HTTP. */
export async function tryRequest(hosts: Hosts, seed: number): Promise<Verdict> {
  const draw = new Draw(seed);
  const call = draw.of(calls);
  const host = call.name === 'app.begin' && draw.chance(50) ? hosts.fresh : hosts.shop;
  const fits = sample(call.input, draw);
  const overHttp = draw.chance(50);
  const input = draw.chance(20)
    ? fits
    : mutateValue(fits, draw, overHttp || draw.chance(70) ? wildJson : wildCopied);
  const name = draw.chance(97) ? call.name : wildText(draw);
  const watch = new Watch();
  watch.note(`${overHttp ? 'HTTP' : 'IPC'} ${name} ${shown(input)}`);
  const before = host.content();
  const reply = overHttp
    ? await overLine(host, name, input, draw, watch)
    : await watch.asked(name, () =>
        host.serve(name, input, draw.of(['desk', 'floor S1', '', 7, '\0', 'x'.repeat(500)])),
      );
  const same = sameContent(before, host.content());
  if (reply && !reply.ok && !same) watch.blame('partial', 'a refused request left something behind');
  const verdict = await watch.end(host);
  if (!same) host.reset();
  return verdict;
}

/** Whatever it is, in a line. */
const shown = (input: unknown): string =>
  inspect(input, { depth: 8, maxArrayLength: 20, maxStringLength: 200, breakLength: Infinity });

/** Over HTTP: as a page does it, or as no page ever would. */
async function overLine(
  host: DoorHost,
  name: string,
  input: unknown,
  draw: Draw,
  watch: Watch,
): Promise<Reply<unknown> | null> {
  const json = draw.chance(3) ? nestedText(draw) : (JSON.stringify(input) ?? '');
  const body = draw.chance(15) ? mutateBytes(json, draw) : Buffer.from(json);
  const odd = draw.below(100);
  if (odd < 6) await watch.timed('raw', () => raw(host, draw, name));
  else if (odd < 16) await watch.timed('odd', () => odds(host, draw, name, body));
  else return watch.asked(`POST ${name}`, () => posted(host, `/call/${encoded(name)}`, body));
  return null;
}

/** Half a pair of code units cannot be written in an address. */
const encoded = (name: string): string => encodeURIComponent(Buffer.from(name).toString());

const nestedText = (draw: Draw): string =>
  draw.of(['[', '{"a":', '[{"a":']).repeat(draw.of([100, 100_000, 1_000_000]));

const usual = (host: DoorHost) => ({
  'content-type': 'application/json',
  cookie: host.cookie,
  origin: host.origin,
  'x-caller': 'desk',
});

interface Sent {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: Uint8Array;
}

/** @returns the answer; null when the line was cut, as it may be for what is refused unread */
function send(host: DoorHost, path: string, { method = 'POST', headers = {}, body }: Sent) {
  return new Promise<{ response: IncomingMessage; text: string } | null>((resolve) => {
    const asked = httpRequest(`${host.origin}/`, { path, method, headers, agent: false }, (response) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.once('close', () => resolve({ response, text: Buffer.concat(chunks).toString('utf8') }));
    });
    asked.once('error', () => resolve(null));
    asked.end(body);
  });
}

async function posted(host: DoorHost, path: string, body: Uint8Array): Promise<Reply<unknown> | null> {
  const got = await send(host, path, { headers: usual(host), body });
  if (got === null) return null;
  if ((got.response.statusCode ?? 500) >= 500) throw new Error(`${got.response.statusCode} ${got.text}`);
  return got.response.headers['content-type'] === 'application/json'
    ? (JSON.parse(got.text) as Reply<unknown>)
    : null;
}

const PATHS = [
  '/%',
  '/%E0%A4%A',
  '/call/%FF',
  '/call/',
  '/call',
  '/..%2f..%2fetc',
  '//',
  '/%00',
  `/${'a'.repeat(3000)}`,
];
const METHODS = ['GET', 'HEAD', 'OPTIONS', 'PUT', 'DELETE', 'PATCH', 'TRACE'];
const TYPES = [
  '',
  'text/plain',
  'application/json; charset=utf-16',
  'application/jsonp',
  'multipart/form-data',
];

/** A request that is wrong before its body is looked at. Whoever has no session must leave no trace. */
async function odds(host: DoorHost, draw: Draw, name: string, body: Uint8Array): Promise<void> {
  const path = draw.chance(50) ? draw.of(PATHS) : `/call/${encoded(name)}`;
  const headers: Record<string, string> = { ...usual(host) };
  const session = draw.chance(50);
  if (!session) headers.cookie = draw.of(['', 'foldweek=1', `${host.cookie}x`, 'a=b; '.repeat(500)]);
  if (draw.chance(30)) headers['content-type'] = draw.of(TYPES);
  if (draw.chance(20)) headers.origin = draw.of(['null', 'http://elsewhere.example', '']);
  if (draw.chance(20)) headers['content-encoding'] = 'gzip';
  if (draw.chance(10)) headers.expect = draw.of(['100-continue', 'something']);
  const method = draw.chance(60) ? draw.of(METHODS) : 'POST';
  const got = await send(
    host,
    path,
    method === 'GET' || method === 'HEAD' ? { method, headers } : { method, headers, body },
  );
  const status = got?.response.statusCode ?? 400;
  if (status >= 500) throw new Error(`${method} ${path}: ${status}`);
  if (!session && status < 400) throw new Error(`${method} ${path} without a session: ${status}`);
}

/** Bytes that are hardly HTTP, or stop in the middle. */
function raw(host: DoorHost, draw: Draw, name: string): Promise<void> {
  const { port } = new URL(host.origin);
  const head = `Host: 127.0.0.1:${port}\r\nCookie: ${host.cookie}\r\nOrigin: ${host.origin}\r\nContent-Type: application/json\r\n`;
  const path = `/call/${encoded(name)}`;
  const bytes = draw.of([
    `POST ${path} HTTP/1.1\r\n${head}Content-Length: 1000\r\n\r\n{"half":`,
    `POST ${path} HTTP/1.1\r\n${head}Content-Length: 99999999999\r\n\r\n{}`,
    `POST ${path} HTTP/1.1\r\n${head}Content-Length: -1\r\n\r\n{}`,
    `POST ${path} HTTP/1.1\r\n${head}Transfer-Encoding: chunked\r\n\r\n5\r\n{"a":\r\nzz\r\n`,
    `POST ${path} HTTP/1.1\r\n${head}Transfer-Encoding: chunked\r\nContent-Length: 2\r\n\r\n{}`,
    `GET / HTTP/1.1\r\n${head}X-Long: ${'x'.repeat(100_000)}\r\n\r\n`,
    `GET / HTTP/9.9\r\n\r\n`,
    `CONNECT elsewhere.example:443 HTTP/1.1\r\n${head}\r\n`,
    `GET http://elsewhere.example/ HTTP/1.1\r\n${head}\r\n`,
    `GET /push HTTP/1.1\r\n${head}Upgrade: websocket\r\nConnection: Upgrade\r\n\r\n`,
    `\x16\x03\x01\x02\x00\x01\x00`,
    `POST ${path}`,
  ]);
  return new Promise((resolve) => {
    const line = connect(Number(port), '127.0.0.1', () => line.write(bytes));
    line.on('data', () => undefined);
    line.on('error', () => undefined);
    line.once('close', () => resolve());
    setTimeout(() => line.destroy(), 20);
  });
}
