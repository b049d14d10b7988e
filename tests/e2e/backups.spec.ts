import { readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Page } from '@playwright/test';
import { expect, host, test } from './app.ts';
import { openBrowser, openDesktop } from './open.ts';
import { goTo, lane, openDemo, type } from './steps.ts';

/** Nothing is lost: backups are made and opened again, and everything can be taken along. */

async function openBackups(page: Page): Promise<void> {
  await goTo(page, '#/settings');
  await page.getByRole('tab', { name: 'Backups and export' }).click();
}

const nameShop = async (page: Page, name: string): Promise<void> => {
  await goTo(page, '#/settings');
  await page.getByRole('tab', { name: 'The shop' }).click();
  await type(page, 'Shop name', name);
  await page.getByRole('button', { name: 'Save' }).click();
  await expect(page.getByRole('button', { name: 'Save' })).toBeDisabled();
};

test('a backup is looked into, opened, and what was there before is kept', { tag: host }, async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  await openBackups(page);
  await page.getByRole('button', { name: 'Make a backup now' }).click();
  await expect(page.getByText('A backup was made, and looked at')).toBeVisible();
  await nameShop(page, 'Changed since');
  await openBackups(page);
  await page.getByRole('gridcell', { name: 'asked for' }).click();
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByText('Work orders')).toBeVisible();
  await expect(dialog.getByText('Last entered')).toBeVisible();
  await dialog.getByRole('button', { name: 'Go back to this backup' }).click();
  await expect(page.getByText(/The shop is as it was/)).toBeVisible();
  await expect(page.getByRole('gridcell', { name: 'before an older backup was opened' })).toBeVisible();
  await page.getByRole('tab', { name: 'The shop' }).click();
  await expect(page.getByRole('textbox', { name: 'Shop name' })).not.toHaveValue('Changed since');

  const again = await app.restart();
  await openBackups(again);
  await again.getByRole('gridcell', { name: 'before an older backup was opened' }).click();
  await again.getByRole('button', { name: 'Go back to this backup' }).click();
  await expect(again.getByText(/The shop is as it was/)).toBeVisible();
  await again.getByRole('tab', { name: 'The shop' }).click();
  await expect(again.getByRole('textbox', { name: 'Shop name' })).toHaveValue('Changed since');
});

test('a second folder that is away is said, and the work goes on', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  await openBackups(page);
  await type(page, 'Folder', join(app.dataDir, 'unplugged'));
  await page.getByRole('button', { name: 'Save' }).click();
  await page.getByRole('button', { name: 'Make a backup now' }).click();
  await expect(
    page.getByText(/The second folder for backups, .*unplugged, got none: it is not there/).first(),
  ).toBeVisible();
  await goTo(page, '#/board');
  await expect(lane(page, 'Shear')).toBeVisible();
});

test('everything is exported, and fills another, empty shop', { tag: host }, async ({ app }, info) => {
  const { page } = app;
  await openDemo(page);
  await nameShop(page, 'Taken along');
  await openBackups(page);
  await page.getByRole('button', { name: 'Export everything' }).click();
  const place = page.getByRole('status').filter({ hasText: 'exported to' }).locator('p').last();
  const folder = (await place.textContent()) ?? '';
  expect(dirname(folder)).toBe(join(app.dataDir, 'exports'));
  expect(readdirSync(folder)).toContain('line.csv');

  const dataDir = info.outputPath('other');
  const other = await (app.host === 'desktop' ? openDesktop(dataDir) : openBrowser(dataDir));
  const chooser = other.page.waitForEvent('filechooser');
  await other.page.getByRole('button', { name: 'Open an export' }).click();
  await (await chooser).setFiles(join(folder, 'everything.json'));
  await expect(lane(other.page, 'Shear')).toBeVisible();
  await expect(other.page.getByText('Taken along')).toBeVisible();
  await other.close();
});
