import { createServer } from 'node:http';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { startBrowserHost } from '../../electron/host/browser.ts';
import { appFolder, tempFolder } from './support.ts';

async function start(folder: string) {
  const host = await startBrowserHost({
    ...{ appFolder, version: '0', port: 0, solver: join(appFolder, 'electron/solver/solver.ts') },
    env: { FOLDWEEK_DATA_DIR: folder },
  });
  return { port: Number(new URL(host.address).port), close: () => host.close() };
}

it('is found at the same place after a restart, so that a browser still knows what it kept for it', async () => {
  const folder = tempFolder();
  const first = await start(folder);
  await first.close();
  const second = await start(folder);
  await second.close();
  expect(second.port).toBe(first.port);
});

it('goes elsewhere when another program is there now', async () => {
  const folder = tempFolder();
  const first = await start(folder);
  await first.close();
  const other = createServer();
  await new Promise<void>((resolve) => other.listen(first.port, '127.0.0.1', resolve));
  onTestFinished(() => void other.close());
  const second = await start(folder);
  await second.close();
  expect(second.port).not.toBe(first.port);
});
