import { protocol } from 'electron';
import { readPage } from './host/pages.ts';
import { PAGE_HOST, PAGE_SCHEME } from './security.ts';

/** Before the app is ready: makes app://foldweek a secure origin of its own, like https. */
export function registerScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: PAGE_SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);
}

/** Serve the built screens, and nothing else, at app://foldweek/. @param folder dist/renderer */
export function servePages(folder: string): void {
  protocol.handle(PAGE_SCHEME, async (request) => {
    const { host, pathname } = new URL(request.url);
    if (host !== PAGE_HOST || request.method !== 'GET') return new Response('Not here.', { status: 404 });
    const { status, headers, body } = await readPage(folder, pathname);
    return new Response(new Uint8Array(body), { status, headers });
  });
}
