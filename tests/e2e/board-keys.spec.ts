import type { Locator, Page } from '@playwright/test';
import { expect, host, test } from './app.ts';
import { undo } from './run-steps.ts';
import { lane, openDemo, operations } from './steps.ts';

/** The board's moves of several operations at once, by keys alone and by pointer. */

const SHEAR = 'Shear';
const bars = (page: Page): Locator => lane(page, SHEAR).getByRole('option');
const chosen = (page: Page): Promise<string[]> => operations(page.getByRole('option', { selected: true }));
const panel = (page: Page, count: number): Locator =>
  page.getByRole('heading', { name: `${count} operations`, exact: true });

test(
  'every move of the board is made by keys alone, each one step that undo takes back',
  { tag: host },
  async ({ app }) => {
    const { page } = app;
    const press = (keys: string) => page.keyboard.press(keys);
    await openDemo(page);
    await expect(bars(page).first()).toBeVisible();
    const before = await operations(bars(page));
    const [first = '', second = '', third = '', fourth = ''] = before;
    const undone = async () => {
      await expect(undo(page)).toBeEnabled();
      await press('Control+z');
      await expect.poll(() => operations(bars(page))).toEqual(before);
    };

    // Two by Shift, the fourth by Ctrl: told in the panel and to who listens.
    await press('ArrowRight');
    await press('Shift+ArrowRight');
    await press('Control+ArrowRight');
    await press('Control+ArrowRight');
    await press('Control+Space');
    await expect.poll(() => chosen(page)).toEqual([first, second, fourth]);
    await expect(panel(page, 3)).toBeVisible();
    await expect(
      page.locator('[aria-live=polite]', { hasText: '3 operations selected on Shear' }),
    ).toHaveCount(1);

    await press('Alt+ArrowRight');
    await expect.poll(async () => (await operations(bars(page))).slice(0, 3)).toEqual([third, first, second]);
    await undone();
    await press('Alt+End');
    await expect.poll(async () => (await operations(bars(page)))[0]).toBe(third);
    await undone();
    await press('Alt+PageDown');
    await expect.poll(async () => (await operations(bars(page)))[0]).toBe(third);
    await undone();

    await press('Space');
    await expect.poll(() => page.getByRole('option', { name: /, pinned$/ }).count()).toBe(3);
    await press('Space');
    await expect.poll(() => page.getByRole('option', { name: /, pinned$/ }).count()).toBe(0);

    await press('Escape');
    await expect(panel(page, 3)).toBeHidden();
    await expect.poll(() => chosen(page)).toEqual([]);
  },
);

test('a run goes past the next one, and is split, by keys', { tag: host }, async ({ app }) => {
  const { page } = app;
  const press = (keys: string) => page.keyboard.press(keys);
  await openDemo(page);
  await expect(bars(page).first()).toBeVisible();
  const before = await operations(bars(page));
  await press('ArrowRight');
  await press('g');
  const run = await chosen(page);
  expect(run).toEqual(before.slice(0, run.length));
  await press('Alt+Shift+ArrowRight');
  await expect.poll(async () => (await operations(bars(page)))[0]).toBe(before[run.length]);
  await expect(undo(page)).toBeEnabled();
  await press('Control+z');
  await expect.poll(() => operations(bars(page))).toEqual(before);
  // The keys stand on the run's first operation: split there, all of it goes behind the next run.
  await press('s');
  await expect.poll(async () => (await operations(bars(page)))[0]).toBe(before[run.length]);
});

test(
  'a run is dragged by its bracket, and several are framed; Escape lets them be',
  { tag: host },
  async ({ app }) => {
    const { page } = app;
    await openDemo(page);
    const board = page.getByRole('application', { name: /Queues of the machines/ });
    const brake = lane(page, 'Long brake').getByRole('option');
    await expect(brake.first()).toBeVisible();
    const before = await operations(brake);
    const [first, third] = [await brake.nth(0).boundingBox(), await brake.nth(2).boundingBox()];
    const ground = await board.boundingBox();
    if (!first || !third || !ground) throw new Error('the bars are not on screen');

    // From under the bars, where the rail is, over two of them.
    await page.mouse.move(first.x + 2, first.y + first.height + 8);
    await page.mouse.down();
    await page.mouse.move(third.x - 4, first.y + 10, { steps: 6 });
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await expect.poll(() => chosen(page)).toEqual([]);
    await page.mouse.move(first.x + 2, first.y + first.height + 8);
    await page.mouse.down();
    await page.mouse.move(third.x - 4, first.y + 10, { steps: 6 });
    await page.mouse.up();
    await expect.poll(() => chosen(page)).toEqual(before.slice(0, 2));

    // The bracket lies over the bars; the whole run goes to the end of the lane's sight.
    await page.mouse.move(first.x + 3, first.y - 6);
    await page.mouse.down();
    await page.mouse.move(third.x + 60, first.y + 10, { steps: 8 });
    await expect(page.getByRole('status').filter({ hasText: /to position \d+ on Long brake/ })).toBeVisible();
    await page.mouse.move(third.x + third.width, first.y + 10, { steps: 4 });
    await page.mouse.up();
    await expect.poll(async () => (await operations(brake))[0]).not.toBe(before[0]);
    await expect(undo(page)).toBeEnabled();
    await page.keyboard.press('Control+z');
    await expect.poll(() => operations(brake)).toEqual(before);
  },
);
