import type { Page } from '@playwright/test';
import { expect, test } from './app.ts';
import { goTo, openDemo, placeInQueue } from './steps.ts';

/** Metal on its way: a line lacks it, a delivery is entered, the line waits, the delivery is late, it comes, the line is free. */
test.describe.configure({ timeout: 240_000 });

const STOCK = 'galv-26-moss-48x120';

/** A fact of the bar in the board's panel. */
const fact = (page: Page, label: string) =>
  page.locator('dl div').filter({ has: page.getByText(label, { exact: true }) });

test('a line waits for its delivery, later for a late one, and is free when it came', async ({ app }) => {
  let { page } = app;
  await openDemo(page);
  await goTo(page, `#/stock/${STOCK}`);
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Pieces', { exact: true }).fill('0');
  await dialog.getByRole('button', { name: 'Set count' }).click();
  await expect(dialog.getByText(/^0 on hand, /)).toBeVisible();
  await page.keyboard.press('Escape');

  // Lacking metal holds nothing up, as before: only what is known to come later does.
  await placeInQueue(page, '4128/1');
  await expect(fact(page, 'Start')).not.toContainText('Tue 8 Dec');

  await goTo(page, '#/stock');
  await page.getByRole('tab', { name: /^Expected/ }).click();
  await expect(page.getByText('No delivery is expected.', { exact: false })).toBeVisible();
  await page.getByRole('button', { name: 'Expect a delivery' }).click();
  await dialog.getByRole('button', { name: /Stock/ }).click();
  await page.getByRole('option', { name: '26 ga Moss, Prefinished galvanized, 48 in × 120 in' }).click();
  await dialog.getByLabel('Pieces expected').fill('300');
  await dialog.getByRole('button', { name: 'Save' }).click();
  await expect(dialog.getByText('Needs a date.')).toBeVisible();
  await dialog.getByLabel('Expected', { exact: true }).fill('2026-12-08');
  await dialog.getByLabel('Supplier’s note').fill('on the Tuesday lorry');
  await dialog.getByRole('button', { name: 'Save' }).click();
  await expect(dialog).toBeHidden();
  const row = page.getByRole('row').filter({ hasText: 'on the Tuesday lorry' });
  await expect(row).toContainText('4128/1');

  await placeInQueue(page, '4128/1');
  await expect(fact(page, 'Metal not here')).toContainText(
    /Waits for \d+ sheets? of 26 ga Moss, Prefinished galvanized, 48 in × 120 in, due Tue 8 Dec \(delivery D1\)/,
  );
  await expect(fact(page, 'Start')).toContainText('Tue 8 Dec');

  page = await app.restart();
  await goTo(page, '#/deliveries/D1');
  const late = page.getByRole('dialog');
  await late.getByRole('button', { name: 'Comes later…' }).click();
  await late.getByLabel('Comes', { exact: true }).fill('2026-12-09');
  const effect = late.getByRole('status', { name: 'What it does' });
  await expect(effect).toContainText(/waits? for it\./);
  await expect(effect).toContainText(/With the order as it is, \d+ lines? (is|are) late; \d+ (is|are) now\./);
  await late.getByRole('button', { name: 'Save and look for a repair' }).click();
  await expect(page.getByRole('heading', { name: 'Metal late: delivery D1' })).toBeVisible();
  await page.keyboard.press('Escape');
  await placeInQueue(page, '4128/1');
  await expect(fact(page, 'Metal not here')).toContainText('due Wed 9 Dec');

  await goTo(page, '#/deliveries/D1');
  await late.getByLabel('Pieces that came').fill('250');
  await expect(late.getByText('50 stay expected')).toBeVisible();
  await late.getByRole('button', { name: 'Receive' }).click();
  await expect(late).toBeHidden();
  await expect(page.getByRole('row').filter({ hasText: 'on the Tuesday lorry' })).toContainText('50');
  await placeInQueue(page, '4128/1');
  await expect(fact(page, 'Metal not here')).toBeHidden();
  await expect(fact(page, 'Start')).not.toContainText('Wed 9 Dec');
});
