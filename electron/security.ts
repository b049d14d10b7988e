import { app, session, type WebFrameMain } from 'electron';

/** The only origin pages come from; protocol.ts answers it. */
export const PAGE_SCHEME = 'app';
export const PAGE_HOST = 'foldweek';
export const PAGE_ADDRESS = `${PAGE_SCHEME}://${PAGE_HOST}/`;

/**
 * True for the top frame of one of our own pages. Protocol and host are compared one by one: for a scheme of one's own,
 * `origin` is the string "null".
 */
export function isOurPage(frame: WebFrameMain | null): boolean {
  if (!frame || frame.parent !== null) return false;
  const { protocol, host } = new URL(frame.url);
  return protocol === `${PAGE_SCHEME}:` && host === PAGE_HOST;
}

/** Pages stay where they are: no other address, no new window, no permission, no page inside a page. */
export function lockDown(): void {
  app.on('web-contents-created', (_event, contents) => {
    contents.on('will-navigate', (event) => event.preventDefault());
    contents.on('will-attach-webview', (event) => event.preventDefault());
    contents.setWindowOpenHandler(() => ({ action: 'deny' }));
  });
  session.defaultSession.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.defaultSession.setPermissionCheckHandler(() => false);
}
