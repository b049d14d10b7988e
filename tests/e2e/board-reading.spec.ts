import type { Page } from '@playwright/test';
import { expect, host, test } from './app.ts';
import { goTo, lane, openDemo } from './steps.ts';

/** Reading the board: what narrows it, what tells of a bar, closed hours folded away, the published plan beside the draft. */

const tools = (page: Page) => page.getByRole('search', { name: 'Find on the board' });
const bars = (page: Page, machine: string) => lane(page, machine).getByRole('option');

test('the board is narrowed by words, and one goes from one line that fits to the next by keys alone', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/board');
  await expect(bars(page, 'Shear').first()).toBeVisible();
  await page.keyboard.press('/');
  await page.keyboard.type('4104');
  await expect(tools(page).getByRole('status')).toHaveText(/^[1-9] of \d+ lines$/);
  await page.keyboard.press('Enter');
  const panel = page.getByRole('complementary', { name: 'Details' });
  await expect(panel.getByRole('heading', { level: 2 })).toContainText('4104/');
  const first = await panel.getByRole('heading', { level: 2 }).textContent();
  await page.keyboard.press('Enter');
  await expect(panel.getByRole('heading', { level: 2 })).not.toHaveText(first ?? '');
  await page.keyboard.press('Escape');
  await expect(tools(page).getByRole('status')).toHaveCount(0);
});

test('a line is found on the board from another screen', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/load');
  await page.keyboard.press('Control+k');
  await page
    .getByRole('searchbox', { name: 'Find' })
    .or(page.getByRole('textbox', { name: 'Find' }))
    .fill('4104/1');
  await page.getByRole('menuitem', { name: '4104/1 on the board' }).click();
  await expect(page.getByRole('option', { name: /^4104\/1 / }).first()).toBeVisible();
  await expect(
    page.getByRole('complementary', { name: 'Details' }).getByRole('heading', { level: 2 }),
  ).toContainText('4104/1');
});

test('a bar is told of beside the pointer, and its menu opens by right button and by key', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/board');
  const bar = bars(page, 'Long brake').nth(1);
  const lineId = ((await bar.getAttribute('aria-label')) ?? '').split(' ')[0]!;
  await bar.hover();
  await expect(page.getByRole('tooltip')).toContainText(`${lineId} bending`);
  await expect(page.getByRole('tooltip')).toContainText('Due');
  await bar.click({ button: 'right' });
  await page.getByRole('menuitem', { name: 'Pin in its position' }).click();
  await expect(bars(page, 'Long brake').nth(1)).toHaveAccessibleName(/pinned/);
  await page.keyboard.press('Shift+F10');
  await page.keyboard.press('Enter');
  await expect(bars(page, 'Long brake').nth(1)).not.toHaveAccessibleName(/pinned/);
});

test(
  'closed hours stay folded and the look as near as it was after a restart',
  { tag: host },
  async ({ app }) => {
    await openDemo(app.page);
    await goTo(app.page, '#/board');
    const fold = () => app.page.getByRole('button', { name: /^Fold closed hours/ });
    const width = async () => (await bars(app.page, 'Shear').first().boundingBox())?.width ?? 0;
    await app.page.keyboard.press('c');
    await expect(fold()).toHaveAttribute('aria-pressed', 'true');
    await app.page.keyboard.press('+');
    await app.page.keyboard.press('t');
    const before = await width();
    const page = await app.restart();
    await goTo(page, '#/board');
    await expect(fold()).toHaveAttribute('aria-pressed', 'true');
    expect(Math.abs((await width()) - before)).toBeLessThan(2);
  },
);
