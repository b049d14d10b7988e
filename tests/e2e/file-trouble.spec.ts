import { existsSync, mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, host, test } from './app.ts';
import { startBrowserHost, startDesktopShell } from './open.ts';
import { goTo, lane, openDemo, said, type } from './steps.ts';

/** What a person reads when the data file or what lies beside it gives trouble. */

test(
  'a file that goes away is said to be away, nothing of the step is kept, and the work goes on when it is back',
  {
    tag: host,
  },
  async ({ app }) => {
    const { page, dataDir } = app;
    await openDemo(page);
    await goTo(page, '#/settings');
    await type(page, 'Shop name', 'Written while away');
    const away = `${dataDir}-away`;
    renameSync(dataDir, away);
    try {
      await page.getByRole('button', { name: 'Save' }).click();
      await expect(
        page.getByText(/cannot be reached .* Nothing of this step was kept, all before it is/),
      ).toBeVisible();
      await expect(page.getByRole('textbox', { name: 'Shop name' })).toHaveValue('Written while away');
      // No empty file in its place.
      expect(existsSync(join(dataDir, 'foldweek.db'))).toBe(false);
    } finally {
      rmSync(dataDir, { recursive: true, force: true });
      renameSync(away, dataDir);
    }
    await page.getByRole('button', { name: 'Save' }).click();
    await expect(page.getByRole('button', { name: 'Save' })).toBeDisabled();
    const again = await app.restart();
    await expect(again.getByText('Written while away')).toBeVisible();
  },
);

test('a log that cannot be written makes no failure of what was kept', async ({ app }) => {
  await openDemo(app.page);
  const log = join(app.dataDir, 'foldweek.log');
  rmSync(log, { force: true });
  mkdirSync(log);
  const page = await app.restart();
  await expect(lane(page, 'Shear')).toBeVisible();
  await goTo(page, '#/floor/S1');
  const card = page.getByRole('article');
  await card.getByRole('button', { name: 'Start', exact: true }).click();
  await expect(card.getByText(/Under way/)).toBeVisible();
  await expect(said(page)).not.toContainText(/Nothing was changed|not kept/);
  const again = await app.restart();
  await goTo(again, '#/floor/S1');
  await expect(again.getByRole('article').getByText(/Under way/)).toBeVisible();
});

test('a file from a newer version is named as that, and no other is begun or offered beside it', async ({
  app,
}) => {
  await openDemo(app.page);
  await app.close();
  const connection = new Database(join(app.dataDir, 'foldweek.db'));
  connection.pragma('user_version = 999');
  connection.close();
  const files = () => readdirSync(app.dataDir).filter((name) => name.endsWith('.db'));
  const before = files();
  const started = app.host === 'desktop' ? startDesktopShell(app.dataDir) : startBrowserHost(app.dataDir);
  let words = '';
  for (const stream of [started.stdout, started.stderr])
    stream?.on('data', (chunk: Buffer) => (words += chunk.toString()));
  await new Promise((resolve) => started.once('close', resolve));
  expect(words).toMatch(
    /comes from a newer Foldweek .* It was left as it is\. Install the newer version to open it\./,
  );
  if (app.host === 'desktop') expect(words).toContain('"buttons":["Quit","Try again"]');
  else expect(words).not.toContain('http://');
  expect(files()).toEqual(before);
});
