import { expect, test } from './app.ts';
import { card, factsIn, standAt } from './floor-steps.ts';
import { goTo, openDemo, said } from './steps.ts';

test('what was recorded wrongly is corrected with the reason; the log keeps what was said first', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  const line = await standAt(page, 'S1 Shear');
  await card(page).getByRole('button', { name: 'Start', exact: true }).click();
  await expect(card(page).getByText(/Under way/)).toBeVisible();
  await page.keyboard.press('d');
  await page.getByRole('button', { name: 'They are good' }).click();
  await expect(card(page).getByRole('heading')).not.toHaveText(line);

  await goTo(page, '#/learning/S1');
  const row = page.getByRole('row', { name: new RegExp(`^${line}:shear`) });
  const made = Number(await row.getByRole('cell').nth(1).textContent());
  await row.getByRole('button', { name: 'Correct…' }).click();
  const dialog = page.getByRole('dialog', { name: `Correct ${line} shearing` });
  const save = dialog.getByRole('button', { name: 'Correct the record' });
  await expect(save).toBeDisabled();
  await dialog.getByLabel('Good pieces').fill(String(made - 1));
  await dialog.getByLabel('Scrapped').fill('1');
  await expect(save).toBeDisabled();
  await dialog.getByLabel('Reason').fill('One had a scratch');
  await save.click();
  await expect(dialog).toBeHidden();
  await expect(said(page)).toContainText(/Correct .*One had a scratch/);
  await expect(row.getByRole('cell').nth(1)).toHaveText(String(made - 1));
  await app.close();
  expect(factsIn(app.dataDir).slice(-2)).toEqual(['floor.done', 'floor.correct']);
});
