import { expect, test } from './app.ts';
import { openRun } from './run-steps.ts';
import { goTo, openDemo } from './steps.ts';

/** Sheets told apart by dye lot: received, given to a run, fetched, asked for by a line. */
test.describe.configure({ timeout: 180_000 });

test('where dye lots are told apart a run names the lot to fetch, on screen and paper; a line may name its own', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/settings');
  await page.getByText('By dye lot').click();
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await goTo(page, '#/stock/galv-26-moss-48x120');
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Pieces', { exact: true }).fill('300');
  await dialog.getByLabel('Dye lot').fill('M-22');
  await dialog.getByRole('button', { name: 'Receive' }).click();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('row').filter({ hasText: 'galv-26-moss-48x120-m-22' })).toContainText(
    'lot M-22',
  );

  await openRun(page, '4128/1');
  await expect(page.getByText(/, lot M-22 on /)).toBeVisible();
  await goTo(page, '#/print/dispatch?machine=S1&days=14');
  await expect(page.getByText('lot M-22').first()).toBeVisible();

  await goTo(page, '#/orders/4128');
  const line = dialog.getByRole('group', { name: 'Line 4128/1' });
  await line.getByText('More for this line').click();
  await line.getByLabel('Dye lot').fill('X-9');
  await dialog.getByRole('button', { name: 'Save' }).click();
  await expect(dialog).toBeHidden();
  await openRun(page, '4128/1');
  await expect(page.getByText(/, one lot to be bought: lot X-9 on /)).toBeVisible();
});
