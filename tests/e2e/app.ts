/* The fixture `app`: Foldweek in a real window or in a browser, on a data folder of its own, with a clock that stands still. */
import { test as base, type ElectronApplication, type Page } from '@playwright/test';
import { NOW, openBrowser, openDesktop, type Opened } from './open.ts';

export interface HostOptions {
  host: 'desktop' | 'browser';
}

interface ClockOptions {
  /** Where the clock stands, as an ISO instant. */
  now: string;
}

/** Marks a story in which the host matters (start and restart, files, paper, pushes, keys, every screen): told in both. */
export const host = '@host';
/** Marks a story of what only the desktop window has: not told in a browser. */
export const desktop = '@desktop';

export interface App {
  readonly host: HostOptions['host'];
  /** The window's page; a new one after `restart`. */
  page: Page;
  /** The desktop shell's main process; null in the browser. */
  electron: ElectronApplication | null;
  readonly dataDir: string;
  /** Close everything and start again on the same data. @param now where the clock stands then; as before where missing */
  restart(now?: string): Promise<Page>;
  /** For good, so that its files can be looked at. */
  close(): Promise<void>;
}

export const test = base.extend<HostOptions & ClockOptions & { app: App }>({
  host: ['browser', { option: true }],
  now: [NOW, { option: true }],
  app: async ({ host, now }, use, info) => {
    const dataDir = info.outputPath('data');
    let clock = now;
    const open = (stored?: Awaited<ReturnType<Opened['close']>>): Promise<Opened> =>
      host === 'desktop' ? openDesktop(dataDir, clock) : openBrowser(dataDir, undefined, stored, clock);
    let opened = await open();
    let isOpen = true;
    const app: App = {
      host,
      page: opened.page,
      electron: opened.electron,
      dataDir,
      async restart(then = clock) {
        clock = then;
        opened = await open(await opened.close());
        app.page = opened.page;
        app.electron = opened.electron;
        return app.page;
      },
      async close() {
        isOpen = false;
        await opened.close();
      },
    };
    await use(app);
    if (isOpen) await opened.close();
  },
});
export { expect } from '@playwright/test';
