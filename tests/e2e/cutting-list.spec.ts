import { expect, test } from './app.ts';
import { openRun, OTHER, RUN, settings, steps, undo } from './run-steps.ts';
import { openDemo } from './steps.ts';

/** A step list changed by hand in every way there is. */
test.describe.configure({ timeout: 180_000 });

test('a figure of a step is changed in its row, what lies on a stack is taken up again, sheets are added, a list is copied', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  await openRun(page, RUN);
  const before = await settings(page);
  const dialog = page.getByRole('dialog');

  await steps(page).first().focus();
  await page.keyboard.press('Enter');
  await dialog.getByLabel('Size cut off').fill('3 1/8 in');
  await dialog.getByRole('button', { name: 'Change', exact: true }).click();
  await expect(steps(page).first()).toContainText('3 1/8 in');
  await undo(page).click();
  await expect.poll(() => settings(page)).toEqual(before);

  // The last step takes up a stack that another lays down: out and in again, the list is whole.
  await page.getByRole('button', { name: `Remove step ${before.length}`, exact: true }).click();
  const faults = page.getByRole('alert').filter({ hasText: 'Cut as it is' });
  await expect(faults).toBeVisible();
  await page.getByRole('button', { name: 'Add a step' }).click();
  await expect(dialog.getByText(/^Left over, after the last step/)).toBeVisible();
  await page.keyboard.press('Escape');
  await undo(page).click();
  await expect.poll(() => settings(page)).toEqual(before);

  await page.getByRole('button', { name: 'Add sheets' }).click();
  await dialog.getByRole('button', { name: 'Add', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'Steps, changed by hand' })).toBeVisible();
  await undo(page).click();

  await page.getByRole('button', { name: 'Copy the list' }).click();
  await dialog.getByRole('combobox', { name: 'Run' }).fill(OTHER);
  await page.getByRole('option', { name: new RegExp(`^${OTHER}`) }).click();
  await dialog.getByRole('button', { name: 'Copy', exact: true }).click();
  await expect(page.getByRole('heading', { name: `Run ${OTHER}`, exact: true })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Steps, changed by hand' })).toBeVisible();
  await expect(steps(page)).toHaveCount(before.length);
  await undo(page).click();
  await expect(page.getByRole('heading', { name: 'Steps', exact: true })).toBeVisible();
});
