import { join } from 'node:path';
import { startBrowserHost, type BrowserOptions } from './host/browser.ts';
import { Refused } from './refused.ts';

/**
 * The host for a browser, as it is built (`npm start` loads it as one file): opens the data file, prints the address and
 * answers until it is ended.
 * @param why there is no desktop window, in words
 */
export async function serveBrowser(options: Omit<BrowserOptions, 'solver'>, why: string): Promise<void> {
  const solver = join(options.appFolder, 'dist', 'electron', 'solver.cjs');
  try {
    const host = await startBrowserHost({ ...options, solver });
    console.log(
      `${why}; Foldweek runs in a browser instead. Open this address, once; Ctrl+C ends it:\n${host.address}`,
    );
    for (const signal of ['SIGINT', 'SIGTERM'] as const)
      process.once(signal, () => void host.close().then(() => process.exit(0)));
  } catch (error) {
    if (error instanceof Refused) fail(error.message);
    if (error instanceof Error && 'code' in error && error.code === 'EADDRINUSE')
      fail(`Port ${options.port} is used by another program. Choose another with --port.`);
    throw error;
  }
}

function fail(message: string): never {
  console.error(message);
  process.exit(1);
}
