import { expect, test } from './app.ts';
import { goTo, openDemo } from './steps.ts';

test('figures are read as people write them; what can be two, or is past, is asked in words', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/orders/4106');
  const dialog = page.getByRole('dialog');
  const pieces = dialog.getByLabel('Pieces', { exact: true }).first();
  const importance = dialog.getByLabel('Importance').first();
  for (const [typed, words] of [
    ['2,5', 'It must be a whole number, not 2,5. Write it like 40.'],
    ['1e3', '“1e3” is not a number. Write it like 40.'],
    ['2,000', '“2,000” can be 2000 or 2. Write 2000 or 2.'],
  ] as const) {
    await pieces.fill(typed);
    await pieces.blur();
    await expect(dialog.getByText(words)).toBeVisible();
    await expect(pieces).toHaveValue(typed);
  }
  await dialog.getByRole('button', { name: 'Save' }).click();
  await expect(dialog).toBeVisible();
  await pieces.fill('12');
  await importance.fill('0,6');
  await importance.blur();
  await expect(importance).toHaveValue('0.6');
  await importance.press('ArrowUp');
  await expect(importance).toHaveValue('0.7');

  await dialog.getByLabel('Due', { exact: true }).fill('2026-11-27');
  await dialog.getByRole('button', { name: 'Save' }).click();
  await expect(dialog.getByText(/^Fri 27 Nov .*is past. Change it, or save once more/)).toBeVisible();
  for (const size of [
    { width: 1440, height: 900 },
    { width: 1024, height: 768 },
  ]) {
    await page.setViewportSize(size);
    await page.screenshot({ path: test.info().outputPath(`past-due-${size.width}.png`) });
  }
  await dialog.getByRole('button', { name: 'Save' }).click();
  await expect(dialog).toBeHidden();

  await goTo(page, '#/settings');
  const zone = page.getByRole('combobox', { name: 'Time zone' });
  await zone.fill('Berlin');
  await zone.press('Enter');
  await expect(zone).toHaveValue('Europe/Berlin, Germany');
  await page.getByRole('button', { name: /Decimal mark/ }).click();
  await page.getByRole('option', { name: 'comma, as 9,5' }).click();
  await page.screenshot({ path: test.info().outputPath('settings.png') });
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await goTo(page, '#/orders/4106');
  await expect(importance).toHaveValue('0,7');
});
