import { defineConfig } from '@playwright/test';
import type { HostOptions } from './app.ts';

/**
 * Every story in the desktop window, or in a browser on the loopback host; `host` tells in the browser only what the host
 * may change, for a run that has the desktop window too.
 */
export default defineConfig<HostOptions>({
  testDir: '.',
  outputDir: '../../test-results/window',
  reporter: [['list'], ['json', { outputFile: '../../test-results/window.json' }]],
  timeout: 90_000,
  expect: { timeout: 10_000 },
  // Two files of stories at a time: each story has a data folder and a port of its own, and mostly waits.
  workers: 2,
  // A busy machine may break a story; told once more it must hold, and `npm test` says which were.
  retries: 1,
  forbidOnly: Boolean(process.env.CI),
  use: { trace: 'retain-on-failure' },
  projects: [
    { name: 'desktop', use: { host: 'desktop' } },
    { name: 'browser', grepInvert: /@desktop/, use: { host: 'browser' } },
    { name: 'host', grep: /@host/, use: { host: 'browser' } },
  ],
});
