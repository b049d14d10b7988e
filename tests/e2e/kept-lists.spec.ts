import type { Page } from '@playwright/test';
import { expect, test } from './app.ts';
import { openRun, OTHER, RUN, steps, undo } from './run-steps.ts';
import { openDemo, type } from './steps.ts';

/** A list of steps kept by a name for another time, and its steps in groups under headings. */
test.describe.configure({ timeout: 180_000 });

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();

test('a list is kept by a name, used for another run and removed; steps are grouped, folded and ungrouped', async ({
  app,
}, info) => {
  const { page } = app;
  await openDemo(page);
  await openRun(page, RUN);
  const count = await steps(page).count();

  await press(page, 'Lists by name');
  await type(page, 'Keep this list as', 'Weekly trim');
  await press(page, 'Keep the list');
  await expect(undo(page)).toHaveAccessibleName(/Keep a list as “Weekly trim”/);

  await press(page, 'Group steps');
  await type(page, 'To step', '2');
  await type(page, 'Name of the group', 'First cuts');
  await press(page, 'Save');
  const head = page.getByRole('row', { name: 'First cuts' });
  await expect(head).toContainText('steps 1 to 2');
  await expect(steps(page)).toHaveCount(count + 1);
  await page.setViewportSize({ width: 1440, height: 900 });
  await head.scrollIntoViewIfNeeded();
  await page.screenshot({ path: info.outputPath('grouped-1440.png') });
  await head.press('Enter');
  await expect(steps(page)).toHaveCount(count - 1);
  await page.setViewportSize({ width: 1024, height: 768 });
  await page.screenshot({ path: info.outputPath('folded-1024.png') });

  await openRun(page, OTHER);
  await press(page, 'Lists by name');
  const kept = page.getByRole('list', { name: 'Kept lists' });
  await expect(kept).toContainText('Weekly trim');
  await page.screenshot({ path: info.outputPath('kept-1024.png') });
  await press(page, 'Use Weekly trim for this run');
  await expect(undo(page)).toHaveAccessibleName(new RegExp(`Use the list “Weekly trim” for run ${OTHER}`));
  await expect(steps(page)).toHaveCount(count);
  await press(page, 'Lists by name');
  await press(page, 'Remove Weekly trim');
  await expect(page.getByText('No list is kept yet.')).toBeVisible();
});
