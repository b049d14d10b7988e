import { randomBytes, timingSafeEqual } from 'node:crypto';
import type { IncomingMessage } from 'node:http';

/** Who may talk to the loopback host: a browser that came through the one-time address, and no other page in it. */
export interface Guard {
  /** The address to open; it works once. */
  readonly address: string;
  /** Exchange the address's key for the session's cookie. @returns the Set-Cookie value; null when the key is wrong or used */
  enter(url: URL): string | null;
  /** Null when the request may go on, else why not. */
  refusal(request: IncomingMessage): string | null;
  hasSession(request: IncomingMessage): boolean;
}

/** @param port the loopback port that is listened on */
export function makeGuard(port: number): Guard {
  const hosts = [`127.0.0.1:${port}`, `localhost:${port}`];
  const origins = hosts.map((host) => `http://${host}`);
  const session = randomBytes(32).toString('base64url');
  // Cookies know no ports: the port in the name keeps two hosts on one machine apart.
  const cookie = `foldweek-${port}`;
  let key: string | null = randomBytes(32).toString('base64url');

  const hasSession = (request: IncomingMessage): boolean =>
    (request.headers.cookie ?? '').split(/;\s*/).some((pair) => {
      const [name, value = ''] = pair.split('=');
      return name === cookie && same(value, session);
    });

  return {
    address: `${origins[0]}/?key=${key}`,
    hasSession,
    enter(url) {
      const given = url.searchParams.get('key') ?? '';
      if (key === null || !same(given, key)) return null;
      key = null;
      return `${cookie}=${session}; HttpOnly; SameSite=Strict; Path=/`;
    },
    refusal(request) {
      // A page elsewhere can point a name of its own at 127.0.0.1; the Host header gives it away.
      if (!hosts.includes(request.headers.host ?? '')) return 'This address is not served here.';
      const { origin } = request.headers;
      if (origin === undefined ? request.method === 'POST' : !origins.includes(origin))
        return 'Requests from other pages are refused.';
      if (!hasSession(request))
        return 'Open the address that was printed when Foldweek started; it works once.';
      return null;
    },
  };
}

function same(a: string, b: string): boolean {
  const [left, right] = [Buffer.from(a), Buffer.from(b)];
  return left.length === right.length && timingSafeEqual(left, right);
}
