import { expect, test } from './app.ts';
import { goTo, openDemo } from './steps.ts';

test('a line is split in two from Orders, the whole order is dated, and one undo makes it one again', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/orders');
  await page.getByLabel('Find lines').fill('4106/');
  await page.getByRole('gridcell', { name: '4106/1', exact: true }).click();
  const whole = page.getByRole('group', { name: 'Work order 4106' });
  await expect(whole).toContainText(/All of it is planned to be done .* its due date/);

  await page.getByRole('button', { name: 'Split…' }).click();
  const dialog = page.getByRole('dialog', { name: 'Split line 4106/1' });
  await dialog.getByLabel('Pieces for later').fill('2');
  await dialog.getByLabel('Pieces for later').blur();
  await expect(dialog.getByText(/2 become line 4106\/\d+, not queued yet/)).toBeVisible();
  await dialog.getByRole('button', { name: 'Split the line' }).click();
  await expect(dialog).toBeHidden();
  await expect(page.getByText(/^Split line 4106\/1: \d+ stay, 2 are line 4106\/\d+: done\./)).toBeVisible();
  const lines = page.getByRole('gridcell', { name: /^4106\/\d+$/ });
  const after = await lines.count();

  await page.reload();
  await goTo(page, '#/orders');
  await page.getByLabel('Find lines').fill('4106/');
  await expect(lines).toHaveCount(after);
  await page.keyboard.press('Escape');
  await page.getByRole('heading', { name: 'Orders' }).click();
  await page.keyboard.press('Control+z');
  await page.getByLabel('Find lines').fill('4106/');
  await expect(lines).toHaveCount(after - 1);

  await page.getByRole('gridcell', { name: '4106/1', exact: true }).click();
  await whole.getByRole('button', { name: 'Can it be sooner?' }).click();
  await expect(page.getByRole('dialog', { name: /how to fit it in/ })).toBeVisible();
});
