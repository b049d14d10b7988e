import { expect, test } from './app.ts';
import { goTo, openDemo, type } from './steps.ts';

/** A line with a due date and a note of its own: on the orders, the board, the floor and on paper. */

test('a line’s own due date and note are where its work is planned, done and printed', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/orders/4105');
  const dialog = page.getByRole('dialog');
  const line = dialog.getByRole('group', { name: 'Line 4105/1' });
  await line.getByText('More for this line').click();
  await line.getByLabel('Line due').fill('2026-12-02');
  await line.getByLabel('Line note').fill('Film side out. Ring the yard first.');
  await type(page, 'Note', 'Deliver to the yard');
  await dialog.getByRole('button', { name: 'Save' }).click();
  await expect(dialog).toBeHidden();

  await page.getByLabel('Find lines').fill('4105/1');
  const row = page.getByRole('row', { name: /^4105\/1/ });
  await expect(row).toContainText('Wed 2 Dec');
  await page.getByRole('gridcell', { name: '4105/1', exact: true }).click();
  await page.getByRole('button', { name: 'Show on the board' }).click();
  await expect(page.getByText('Wed 2 Dec, 17:00')).toBeVisible();
  await expect(page.getByText('Film side out. Ring the yard first.')).toBeVisible();

  await goTo(page, '#/print/dispatch?machine=S1&days=7');
  await expect(page.getByText('Film side out. Ring the yard first.')).toBeVisible();
  await goTo(page, '#/print/traveller?line=4105%2F1');
  const traveller = page.getByRole('region', { name: 'Traveller of line 4105/1' });
  await expect(traveller).toContainText('Deliver to the yard');
  await expect(traveller).toContainText('Wed 2 Dec 17:00');

  await goTo(page, '#/floor');
  await page.getByText('S1 Shear').click();
  await expect(page.getByRole('heading', { name: '4105/2' })).toBeVisible();
  await expect(page.getByRole('region', { name: 'Note' })).toHaveText('Deliver to the yard');
});
