import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { importFiles } from '../../demo-data/make/files.ts';
import { expect, host, test } from './app.ts';
import { figure, goTo, lane, openDemo } from './steps.ts';

/** Work orders: from a file, fixed on the spot, and typed in. */

const files = importFiles(join(import.meta.dirname, '../../demo-data'), '2026-11-30');

async function choose(page: Page, name: 'broken.csv' | 'next-week.csv'): Promise<void> {
  const text = files[name];
  if (text === undefined) throw new Error(`the demo has no ${name}`);
  await goTo(page, '#/import/orders');
  const input = page.locator('input[type=file]').first();
  await input.setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });
}

test(
  'a file is checked row by row; right rows are imported, a fixed one follows, twice adds nothing twice',
  { tag: host },
  async ({ app }) => {
    const { page } = app;
    await openDemo(page);
    await choose(page, 'broken.csv');
    await expect(page.getByText('18 rows to fix')).toBeVisible();
    await expect(page.getByText('4 rows waiting for an answer')).toBeVisible();
    await expect(page.getByText(/The quantity must be at least 1, not -5/).first()).toBeVisible();
    await page.getByRole('button', { name: 'Import 1 line', exact: true }).click();
    await expect(page.getByText('0 lines ready')).toBeVisible();
    await expect(page.getByText('18 rows to fix')).toBeVisible();

    await page.getByRole('gridcell', { name: '▲ -5', exact: true }).click();
    await page.getByLabel('quantity, row 4').fill('45');
    await page.keyboard.press('Enter');
    await expect(page.getByText('17 rows to fix')).toBeVisible();
    await page.getByRole('button', { name: 'Import 1 line', exact: true }).click();
    await expect(page.getByText('0 lines ready')).toBeVisible();

    await choose(page, 'broken.csv');
    await expect(page.getByText('1 line already exists')).toBeVisible();
    await goTo(page, '#/board');
    await expect(figure(page, 'Late lines')).toContainText('of 162');
  },
);

test('next week’s file goes in with one press and out with one undo', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  await choose(page, 'next-week.csv');
  await page.getByRole('button', { name: 'Import 30 lines', exact: true }).click();
  await goTo(page, '#/board');
  await expect(figure(page, 'Late lines')).toContainText('of 190');
  await page.keyboard.press('Control+z');
  await expect(figure(page, 'Late lines')).toContainText('of 160');
});

test('a file dropped on the window opens the import', { tag: host }, async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  const data = await page.evaluateHandle((text) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([text], 'next-week.csv', { type: 'text/csv' }));
    return transfer;
  }, files['next-week.csv'] ?? '');
  for (const type of ['dragenter', 'dragover', 'drop'])
    await page.dispatchEvent('main', type, { dataTransfer: data });
  await expect(page.getByRole('button', { name: 'Import 30 lines', exact: true })).toBeVisible();
});

test('the quantity of a line is changed in its order; the refused entry stays on the form', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/orders/4106');
  const dialog = page.getByRole('dialog');
  const pieces = dialog.getByLabel('Pieces', { exact: true }).first();
  await pieces.fill('0');
  await pieces.blur();
  await dialog.getByRole('button', { name: 'Save' }).click();
  await expect(dialog.getByText(/at least 1/i)).toBeVisible();
  await expect(pieces).toHaveValue('0');
  await pieces.fill('12');
  await pieces.blur();
  await dialog.getByRole('button', { name: 'Save' }).click();
  await expect(dialog).toBeHidden();
  await goTo(page, '#/board');
  await expect(
    lane(page, 'Shear').getByRole('option', { name: /^4106\/1 shearing, Valley, plain, 12 pieces/ }),
  ).toBeVisible();
});

test(
  'an order that is not saved is there again after the window was closed, until it is thrown away',
  { tag: host },
  async ({ app }) => {
    await openDemo(app.page);
    await goTo(app.page, '#/orders/+');
    await app.page.getByRole('dialog').getByLabel('Customer').fill('Invented Gutters');
    await app.page.keyboard.press('Escape');
    await expect(app.page.getByRole('dialog')).toBeHidden();
    // A browser keeps it for as long as it keeps the address; each story has a browser of its own.
    const page = app.host === 'desktop' ? await app.restart() : app.page;
    await page.reload();
    await goTo(page, '#/orders');
    const kept = page.getByRole('list', { name: 'Not saved yet' });
    await expect(kept).toContainText('Invented Gutters');
    await kept.getByRole('button', { name: 'Go on with a new work order' }).click();
    await expect(page.getByRole('dialog').getByLabel('Customer')).toHaveValue('Invented Gutters');
    await page.keyboard.press('Escape');
    await kept.getByRole('button', { name: 'Discard a new work order' }).click();
    await expect(kept).toBeHidden();
    await page.reload();
    await expect(page.getByRole('button', { name: 'New work order' })).toBeVisible();
    await expect(kept).toBeHidden();
  },
);

test('load against capacity stands beside the due-date order', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/load');
  await expect(page.getByRole('heading', { name: /^Against orders in due-date order/ })).toBeVisible();
  await expect(page.getByRole('figure', { name: /Load of Long brake/ })).toBeVisible();
  await page.getByText('Tables', { exact: true }).click();
  await expect(page.getByRole('columnheader', { name: /open hours|Open/ }).first()).toBeVisible();
});
