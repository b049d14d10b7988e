import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { expect, host, test } from './app.ts';
import { pdfPages, printTo } from './pdf.ts';
import { figure, goTo, lane, openDemo, operations, planFor } from './steps.ts';

/** A real week, from a first start to paper, as a planner goes through it. */

/** "Late lines 41 of 160, due-date order: 34": of the plan, and of taking orders by due date. */
async function lateLines(page: Page): Promise<{ late: number; byDueDate: number }> {
  const text = await figure(page, 'Late lines').textContent();
  const [late = NaN, , byDueDate = NaN] = (text?.match(/\d+/g) ?? []).map(Number);
  return { late, byDueDate };
}

test('the first start offers the demo shop or an empty one', { tag: host }, async ({ app }) => {
  await expect(app.page.getByRole('button', { name: 'Set up your shop' })).toBeVisible();
  await openDemo(app.page);
  for (const machine of ['Shear', 'Long brake', 'Short brake'])
    await expect(lane(app.page, machine)).toBeVisible();
});

test(
  'one press plans the week: fewer late lines than by due date, and it can be stopped and undone',
  { tag: host },
  async ({ app }) => {
    const { page } = app;
    await openDemo(page);
    const before = await lateLines(page);
    await planFor(app.page, 3);
    await expect
      .poll(() => lateLines(page).then(({ late, byDueDate }) => late < Math.min(byDueDate, before.late)))
      .toBe(true);
    await page.getByRole('button', { name: /^Undo: / }).click();
    await expect.poll(() => lateLines(page)).toEqual(before);
  },
);

test(
  'a bar moves by keyboard, says what got late, and comes back by undo',
  { tag: host },
  async ({ app }) => {
    const { page } = app;
    await openDemo(page);
    const bars = lane(page, 'Long brake').getByRole('option');
    const before = await operations(bars);
    const moved = before[4] ?? '';
    await bars.nth(4).click();
    await page.keyboard.press('Alt+ArrowLeft');
    await expect(bars.nth(3)).toHaveAccessibleName(new RegExp(`^${moved},`));
    await expect(page.getByRole('status').filter({ hasText: moved })).toBeVisible();
    await expect(page.getByRole('button', { name: /^Undo: / })).toBeVisible();
    await page.keyboard.press('Control+z');
    await expect.poll(() => operations(bars)).toEqual(before);
    await page.keyboard.press('Control+Shift+z');
    await expect(bars.nth(3)).toHaveAccessibleName(new RegExp(`^${moved},`));
  },
);

test('a bar is dragged to another place in its queue; Escape lets it be', { tag: host }, async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  const bars = lane(page, 'Long brake').getByRole('option');
  const before = await operations(bars);
  const drag = async (): Promise<void> => {
    const from = await bars.nth(2).boundingBox();
    const to = await bars.nth(0).boundingBox();
    if (!from || !to) throw new Error('the bars are not on screen');
    await page.mouse.move(from.x + from.width / 2, from.y + from.height / 2);
    await page.mouse.down();
    await page.mouse.move(to.x + to.width / 2, to.y + to.height / 2, { steps: 8 });
    await page.mouse.move(to.x + 2, to.y + to.height / 2, { steps: 4 });
  };
  await drag();
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect.poll(() => operations(bars)).toEqual(before);
  await drag();
  await page.mouse.up();
  await expect(bars.nth(0)).toHaveAccessibleName(new RegExp(`^${before[2]},`));
});

test('everything is as it was after closing, the history included', { tag: host }, async ({ app }) => {
  await openDemo(app.page);
  await planFor(app.page, 1);
  const bars = () => lane(app.page, 'Shear').getByRole('option');
  const order = await operations(bars());
  const late = await figure(app.page, 'Late lines').textContent();
  const page = await app.restart();
  await expect(lane(page, 'Shear')).toBeVisible();
  await expect.poll(() => operations(bars())).toEqual(order);
  await expect(figure(page, 'Late lines')).toHaveText(late ?? '');
  await page.getByRole('button', { name: /^Undo: / }).click();
  await expect(figure(page, 'Late lines')).not.toHaveText(late ?? '');
});

test(
  'dispatch lists come out as a PDF whose lines are on the board, with cautions and page numbers',
  { tag: host },
  async ({ app }) => {
    await openDemo(app.page);
    await planFor(app.page, 1);
    const path = join(app.dataDir, 'dispatch.pdf');
    const [first] = await operations(lane(app.page, 'Shear').getByRole('option'));
    await goTo(app.page, '#/print');
    await printTo(path, app);
    await expect
      .poll(async () => (await pdfPages(path).catch(() => [])).length, { timeout: 20_000 })
      .toBeGreaterThan(2);
    const pages = await pdfPages(path);
    expect(pages.join(' ')).toContain(first?.split(' ')[0]);
    for (const [index, page] of pages.entries()) {
      expect(page).toMatch(/guards on, hands clear/i);
      expect(page.replaceAll(/\s+/g, ' ')).toContain(`page ${index + 1} of ${pages.length}`);
    }
  },
);
