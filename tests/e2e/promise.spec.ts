import { expect, test } from './app.ts';
import { goTo, openDemo } from './steps.ts';

/** A date to promise while an order is typed: it is put into the due field, an earlier one is said and can be kept. */

test('while an order is typed its line says when it is ready; the date is promised, saved and undone', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/orders/+');
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Number').fill('9001');
  await dialog.getByLabel('Customer').fill('Invented Gutters');
  await dialog.getByRole('combobox', { name: 'Part' }).fill('Ridge');
  await page.getByRole('option').first().click();
  const line = dialog.getByRole('group', { name: 'Line 9001/1' });
  await expect(line.getByText(/without making anything late/)).toBeHidden();
  await dialog.getByLabel('Pieces', { exact: true }).fill('12');
  await dialog.getByLabel('Customer').click();
  await expect(line.getByText(/^Ready .* without making anything late\.$/)).toBeVisible();

  await dialog.getByLabel('Due').fill('2026-11-30');
  await dialog.getByLabel('Customer').click();
  await expect(
    line.getByText(/The due date is .* before that: this line or another would be late\./),
  ).toBeVisible();

  await expect(line.getByText(/^Ready by .* in 90 of 100 such plans/)).toBeVisible();
  const ninety = (await line.getByText(/^Ready by /).textContent()) ?? '';
  await dialog.getByRole('button', { name: /How sure a date/ }).click();
  await page.getByRole('option', { name: '50 %' }).click();
  await expect(line.getByText(/^Ready by .* in 50 of 100 such plans/)).toBeVisible();
  await expect(line.getByText(/^Ready by /)).not.toHaveText(ninety.replace('90 of', '50 of'));

  await line.getByRole('button', { name: 'Accept the surer date' }).click();
  await expect(line.getByRole('button', { name: 'Accept the surer date' })).toBeDisabled();
  await line.getByRole('button', { name: 'Accept this date' }).click();
  await expect(line.getByText(/before that: this line or another/)).toBeHidden();
  await expect(dialog.getByLabel('Due')).not.toHaveValue('2026-11-30');
  await dialog.getByRole('button', { name: 'Save' }).click();
  await expect(dialog).toBeHidden();
  await expect(page.getByText('Add work order 9001: done.')).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(page.getByText('Undone: Add work order 9001.')).toBeVisible();
});

test('a due date earlier than the promise is kept as typed', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/orders/4106');
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByText(/without making anything late|becomes late/).first()).toBeVisible();
  await dialog.getByLabel('Due').fill('2026-11-30');
  await dialog.getByLabel('Customer').click();
  await dialog.getByRole('button', { name: 'Save' }).click();
  await expect(dialog).toBeHidden();
  await goTo(page, '#/orders/4106');
  await expect(page.getByRole('dialog').getByLabel('Due')).toHaveValue('2026-11-30');
});
