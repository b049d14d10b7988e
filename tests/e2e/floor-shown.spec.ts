import type { Page } from '@playwright/test';
import { expect, host, test } from './app.ts';
import { standAt } from './floor-steps.ts';
import { goTo, openDemo } from './steps.ts';

/** Step lists at the machines, and what is read of them from afar. */

/** Longer than controls that changed stay dead. */
const SETTLED_MS = 900;

/** What must be read from three metres, as the window draws it: its type size in pixels. */
const farSizes = (page: Page): Promise<number[]> =>
  page
    .locator('[data-far]')
    .evaluateAll((all) => all.map((one) => Number.parseFloat(getComputedStyle(one).fontSize)));

test(
  'the shear is worked step by step; its cuts are counted at once and are there after a restart',
  { tag: host },
  async ({ app }) => {
    const { page } = app;
    await openDemo(page);
    await standAt(page, 'S1 Shear');
    const step = (of: Page) => of.getByRole('region', { name: /^Step \d+ of \d+$/ });
    await expect(step(page)).toHaveAccessibleName(/^Step 1 of/, { timeout: 30_000 });
    await page.getByRole('button', { name: /^(Take|They lie here: take) \d+ sheets?/ }).click();
    const count = (of: Page) => of.getByRole('group', { name: 'Cuts made' });
    await expect(count(page)).toBeVisible();
    await page.waitForTimeout(SETTLED_MS);
    await page.keyboard.press('c');
    await expect(count(page).getByRole('status')).toHaveText(/^1 of/);
    await count(page).getByRole('button', { name: 'One more cut' }).click();
    await expect(count(page).getByRole('status')).toHaveText(/^2 of/);
    await page.keyboard.press('ArrowRight');
    await expect(step(page)).toHaveAccessibleName(/^Step 2 of/);

    const again = await app.restart();
    await goTo(again, '#/floor/S1');
    await expect(step(again)).toHaveAccessibleName(/^Step 2 of/);
    await again.waitForTimeout(SETTLED_MS);
    await again.keyboard.press('ArrowLeft');
    await expect(count(again).getByRole('status')).toHaveText(/^2 of/);
  },
);

for (const { width, height, least } of [
  { width: 800, height: 1280, least: 127 },
  { width: 1280, height: 800, least: 127 },
  { width: 1920, height: 1080, least: 77 },
])
  test(`bends stand one by one, and line, pieces, gauge, next and caution are read from three metres, ${width} × ${height}`, async ({
    app,
  }) => {
    const { page } = app;
    await openDemo(page);
    await page.setViewportSize({ width, height });
    await standAt(page, 'B1 Long brake');
    await expect(page.getByRole('region', { name: /^Step 1 of/ })).toContainText(/at the gauge/);
    const sizes = await farSizes(page);
    expect(sizes).toHaveLength(5);
    for (const size of sizes) expect(size).toBeGreaterThanOrEqual(least);
    await page.keyboard.press('ArrowRight');
    await expect(page.getByRole('region', { name: /^Step 2 of/ })).toBeVisible();
  });
