import { mkdirSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { connect } from 'node:net';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { startHttp, type HttpHost } from '../../electron/host/http.ts';
import { makePushes } from '../../electron/service/pushes.ts';
import { memoryLog, tempFolder } from './support.ts';

const INDEX =
  '<!doctype html><meta name="csp-nonce" content="" /><script type="module" src="/assets/app.js"></script>';

async function start() {
  const folder = tempFolder();
  const pages = join(folder, 'renderer');
  mkdirSync(join(pages, 'assets'), { recursive: true });
  writeFileSync(join(pages, 'index.html'), INDEX);
  writeFileSync(join(pages, 'assets', 'app.js'), 'export {};');
  writeFileSync(join(folder, 'secret.json'), '{"secret":true}');
  const log = memoryLog();
  const pushes = makePushes(log);
  const host = await startHttp({
    port: 0,
    pages,
    serve: (name, input) => Promise.resolve({ ok: true, value: { name, input } }),
    pushes,
    log,
    maxBodyBytes: 1000,
    arrivalMs: 300,
  });
  onTestFinished(() => host.close());
  return { host, log, pushes, origin: new URL(host.address).origin };
}

/** Come in through the printed address, as a browser does. @returns the session's cookie */
async function enter({ address }: HttpHost): Promise<string> {
  const response = await fetch(address, { redirect: 'manual' });
  expect(response.status).toBe(303);
  return (response.headers.get('set-cookie') ?? '').split(';')[0]!;
}

const json = { 'content-type': 'application/json' };
const post = (origin: string, headers: Record<string, string>, body = '{}', name = 'shop.read') =>
  fetch(`${origin}/call/${name}`, { method: 'POST', headers: { ...json, ...headers }, body });

/** Node's fetch sets the Host header itself; this one lets a test lie. */
const statusWithHost = (origin: string, host: string, cookie: string): Promise<number | undefined> =>
  new Promise((resolve, reject) => {
    request(`${origin}/`, { headers: { host, cookie } }, (response) => {
      response.resume();
      resolve(response.statusCode);
    })
      .on('error', reject)
      .end();
  });

describe('the loopback host', () => {
  it('lets nobody in without the key', async () => {
    const { origin } = await start();
    expect((await fetch(`${origin}/`)).status).toBe(403);
    expect((await fetch(`${origin}/assets/app.js`)).status).toBe(403);
    expect((await fetch(`${origin}/push`)).status).toBe(403);
    expect((await post(origin, { origin })).status).toBe(403);
    expect((await fetch(`${origin}/?key=guess`, { redirect: 'manual' })).status).toBe(403);
  });

  it('writes nothing into the log for whoever has no session, and nothing when a line goes dead', async () => {
    const { host, log, origin } = await start();
    const { port } = new URL(origin);
    const ask = (text: string, hangUp: boolean) =>
      new Promise<string>((resolve) => {
        const line = connect(Number(port), '127.0.0.1', () => line.write(text));
        let heard = '';
        line.on('data', (chunk) => (heard += String(chunk)));
        line.once('close', () => resolve(heard));
        if (hangUp) setTimeout(() => line.destroy(), 50);
      });
    const head = `Host: 127.0.0.1:${port}\r\n`;
    expect(await ask(`GET // HTTP/1.1\r\n${head}Connection: close\r\n\r\n`, false)).toContain('400');
    const cookie = `Cookie: ${await enter(host)}\r\nOrigin: ${origin}\r\nContent-Type: application/json\r\n`;
    await ask(`POST /call/shop.read HTTP/1.1\r\n${head}${cookie}Content-Length: 500\r\n\r\n{"half":`, true);
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(log.lines).toEqual([]);
  });

  it('takes the key once and hands out a cookie that scripts and other sites cannot use', async () => {
    const { host } = await start();
    const first = await fetch(host.address, { redirect: 'manual' });
    expect(first.headers.get('location')).toBe('/');
    expect(first.headers.get('set-cookie')).toMatch(/; HttpOnly; SameSite=Strict; Path=\/$/);
    expect(first.headers.get('cache-control')).toBe('no-store');
    expect((await fetch(host.address, { redirect: 'manual' })).status).toBe(403);
  });

  it('sends a browser that is in already on to the page when the address is opened again', async () => {
    const { host } = await start();
    const cookie = await enter(host);
    const again = await fetch(host.address, { redirect: 'manual', headers: { cookie } });
    expect([again.status, again.headers.get('location')]).toEqual([303, '/']);
  });

  it('answers the contract to its own page', async () => {
    const { host, origin } = await start();
    const cookie = await enter(host);
    const response = await post(origin, { cookie, origin }, '{"a":1}', 'edit.undo');
    expect(await response.json()).toEqual({ ok: true, value: { name: 'edit.undo', input: { a: 1 } } });
  });

  it('refuses another site’s page, a page that hides where it comes from, and a name that points here', async () => {
    const { host, origin } = await start();
    const cookie = await enter(host);
    expect((await post(origin, { cookie, origin: 'http://elsewhere.example' })).status).toBe(403);
    expect((await post(origin, { cookie, origin: 'http://127.0.0.1:1' })).status).toBe(403);
    expect((await post(origin, { cookie, origin: 'null' })).status).toBe(403);
    expect((await post(origin, { cookie })).status).toBe(403);
    expect(await statusWithHost(origin, 'elsewhere.example', cookie)).toBe(403);
    expect(await statusWithHost(origin, new URL(origin).host, cookie)).toBe(200);
  });

  it('refuses what is too large, no JSON, or not posted', async () => {
    const { host, origin } = await start();
    const cookie = await enter(host);
    expect((await post(origin, { cookie, origin }, JSON.stringify('x'.repeat(2000)))).status).toBe(413);
    expect((await post(origin, { cookie, origin }, 'no json')).status).toBe(400);
    expect((await post(origin, { cookie, origin, 'content-type': 'text/plain' })).status).toBe(415);
    expect((await fetch(`${origin}/call/shop.read`, { headers: { cookie } })).status).toBe(405);
    expect((await fetch(`${origin}/`, { method: 'PUT', headers: { cookie, origin } })).status).toBe(405);
  });

  it('says which way a page is asked for, and how a request is made', async () => {
    const { host, origin } = await start();
    const cookie = await enter(host);
    const ask = (path: string, method: string) =>
      fetch(origin + path, { method, headers: { cookie, origin } });
    expect((await ask('/', 'OPTIONS')).headers.get('allow')).toBe('GET');
    expect((await ask('/call/shop.read', 'HEAD')).headers.get('allow')).toBe('POST');
    expect((await ask('/', 'HEAD')).status).toBe(405);
  });

  it('refuses letters that cannot be read, so that none is kept as another', async () => {
    const { host, origin } = await start();
    const cookie = await enter(host);
    const headers = { ...json, cookie, origin };
    const body = Buffer.from('{"a":"Gütersloh"}', 'latin1');
    const response = await fetch(`${origin}/call/shop.read`, { method: 'POST', headers, body });
    expect(response.status).toBe(400);
  });

  it('cuts off a request that does not arrive in time', async () => {
    const { host, log, origin } = await start();
    const cookie = await enter(host);
    const head = `Host: ${new URL(origin).host}\r\nCookie: ${cookie}\r\nOrigin: ${origin}\r\n`;
    const heard = await new Promise<string>((resolve) => {
      let text = '';
      const line = connect(Number(new URL(origin).port), '127.0.0.1', () =>
        line.write(
          `POST /call/shop.read HTTP/1.1\r\n${head}Content-Type: application/json\r\nContent-Length: 20\r\n\r\n{`,
        ),
      );
      line.on('data', (chunk) => (text += String(chunk)));
      line.on('error', () => undefined);
      line.once('close', () => resolve(text));
    });
    expect(heard).toMatch(/^(HTTP\/1.1 408|$)/);
    expect(log.lines).toEqual([]);
  });

  it('listens on this machine only', async () => {
    const { host } = await start();
    expect(new URL(host.address).hostname).toBe('127.0.0.1');
  });
});

describe('the pages', () => {
  it('come with a strict policy and a nonce that is new for every page', async () => {
    const { host, origin } = await start();
    const cookie = await enter(host);
    const nonces = await Promise.all(
      [1, 2].map(async () => {
        const response = await fetch(`${origin}/`, { headers: { cookie } });
        const policy = response.headers.get('content-security-policy') ?? '';
        const nonce = /name="csp-nonce" content="([^"]+)"/.exec(await response.text())?.[1];
        expect(policy).toContain(`style-src 'self' 'nonce-${nonce}'`);
        expect(policy).toMatch(/^default-src 'none'; script-src 'self';.*frame-ancestors 'none'$/);
        expect(policy).not.toContain('unsafe');
        expect(response.headers.get('x-content-type-options')).toBe('nosniff');
        return nonce;
      }),
    );
    expect(nonces[0]).not.toBe(nonces[1]);
  });

  it('never come from outside their folder', async () => {
    const { host, origin } = await start();
    const cookie = await enter(host);
    for (const path of [
      '/..%2fsecret.json',
      '/%2e%2e/secret.json',
      '/assets/..%2f..%2fsecret.json',
      '/%00',
      '/%',
      '/none.js',
      '/assets',
      `/${'a'.repeat(300)}.js`,
    ])
      expect((await fetch(origin + path, { headers: { cookie } })).status, path).toBe(404);
    expect((await fetch(`${origin}/assets/app.js`, { headers: { cookie } })).status).toBe(200);
  });
});

describe('the pushes', () => {
  it('reach a page as they happen', async () => {
    const { host, origin, pushes } = await start();
    const cookie = await enter(host);
    const response = await fetch(`${origin}/push`, { headers: { cookie } });
    expect(response.headers.get('content-type')).toBe('text/event-stream');
    pushes.send({ kind: 'changes', epoch: 'one', revision: 2, changes: [] });
    let text = '';
    for await (const chunk of response.body!) {
      text += Buffer.from(chunk).toString();
      if (text.includes('\n\ndata')) break;
    }
    expect(text).toContain('data: {"kind":"changes","epoch":"one","revision":2,"changes":[]}\n\n');
  });

  it('are no longer kept for a page that takes none', async () => {
    const { host, origin, pushes } = await start();
    const cookie = await enter(host);
    let cut = false;
    const line = connect(Number(new URL(origin).port), '127.0.0.1', () => {
      line.write(`GET /push HTTP/1.1\r\nHost: ${new URL(origin).host}\r\nCookie: ${cookie}\r\n\r\n`);
      line.once('data', () => line.pause());
    });
    line.on('error', () => undefined);
    line.once('close', () => (cut = true));
    await new Promise((resolve) => setTimeout(resolve, 100));
    const epoch = 'x'.repeat(2_000_000);
    for (let k = 0; k < 20; k++) pushes.send({ kind: 'changes', epoch, revision: k, changes: null });
    line.resume();
    await expect.poll(() => cut).toBe(true);
    expect(line.bytesRead).toBeLessThan(40_000_000);
  });
});
