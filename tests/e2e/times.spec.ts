import type { Page } from '@playwright/test';
import { expect, test } from './app.ts';
import { goTo, openDemo, planFor, type } from './steps.ts';

/** New times and blanks beyond the pieces: told before they are taken, one step each, said where blanks are shown. */

const undo = (page: Page) => page.getByRole('banner').getByRole('button', { name: /^Undo: / });

test('new usual times say what they would do, are taken in one step, and undo brings the old ones back', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  await planFor(page, 5);
  await goTo(page, '#/shop/machines');
  await page.getByRole('button', { name: 'Look at the new usual times' }).click();
  const dialog = page.getByRole('dialog', { name: 'Usual times have changed' });
  await expect(dialog.getByRole('row', { name: /First piece/ })).toContainText('with every line');
  await expect(dialog.getByRole('status')).toHaveText(/Late lines: \d+ → \d+|would be late, as now/);
  await dialog.getByRole('button', { name: 'Take the new times', exact: true }).click();
  await expect(undo(page)).toHaveAccessibleName(/Take the new usual times/);
  await expect(page.getByRole('button', { name: 'Look at the new usual times' })).toBeHidden();
  await undo(page).click();
  await expect(page.getByRole('button', { name: 'Look at the new usual times' })).toBeVisible();
});

test('blanks to set up with are offered, said on the board and the list, and a part may need others', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/settings');
  await page.getByRole('button', { name: 'Usual: 1 a line and 2 %' }).click();
  await expect(page.getByText(/Late lines: \d+ → \d+|would be late, as now/)).toBeVisible();
  await page.getByRole('form').getByRole('button', { name: 'Save', exact: true }).click();
  await expect(undo(page)).toHaveAccessibleName(/settings/i);
  await goTo(page, '#/print');
  await expect(page.getByText(/^\d+ \+ 1 to set up/).first()).toBeVisible();
  await goTo(page, '#/shop/parts/fascia-6');
  await page.getByText('Others than usual in this shop').click();
  await type(page, 'To set up with', '3');
  await page.getByRole('form').getByRole('button', { name: 'Save', exact: true }).click();
  await expect(undo(page)).toHaveAccessibleName(/fascia-6/);
});
