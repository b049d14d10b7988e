import type { Page } from '@playwright/test';
import { expect, host, test } from './app.ts';
import { figure, lane, openDemo, planFor } from './steps.ts';

/** Why a line is late, what would help, and the search that goes on when it is told to. */

const beside = (page: Page) => page.getByRole('complementary', { name: 'Details' });
const causes = (page: Page) => beside(page).getByRole('list', { name: 'Causes' });

/** Exact seconds of all figures in the chain that the selector finds. */
const secondsIn = async (page: Page, selector: string): Promise<number> => {
  const values = await causes(page)
    .locator(selector)
    .evaluateAll((all) => all.map((each) => Number((each as HTMLDataElement).value)));
  return values.reduce((sum, value) => sum + value, 0);
};

/** "18 h 4 min" in seconds. */
const seconds = (text: string): number =>
  [...text.matchAll(/(\d+) (h|min|s)\b/g)].reduce(
    (sum, [, count, unit]) => sum + Number(count) * ({ h: 3600, min: 60, s: 1 }[unit ?? ''] ?? 0),
    0,
  );

test('a late line says why; a change is taken, it is less late, and undo brings all back', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  await page.getByRole('tab', { name: /^Late/ }).click();
  const ask = beside(page)
    .getByRole('button', { name: /^Why is .* late\?$/ })
    .last();
  const line = / is (\S+) late/.exec((await ask.getAttribute('aria-label')) ?? '')?.[1] ?? '';
  await ask.click();
  await expect(beside(page).getByRole('heading', { name: 'Why late?' })).toBeVisible();
  const title = beside(page).getByText(new RegExp(`^${line} ends .* due `));
  await expect(title).toBeVisible();
  const lateness = async (): Promise<number> =>
    seconds(/, (.*) late:/.exec((await title.textContent()) ?? '')?.[1] ?? '');
  const late = await lateness();
  expect(late).toBeGreaterThan(0);
  expect(Math.abs((await secondsIn(page, 'span > data:not([class])')) - late)).toBeLessThanOrEqual(30);
  const sum = await beside(page)
    .getByText(/ to its end: /)
    .textContent();
  const total = seconds(sum?.split('end: ')[1] ?? '');
  expect(Math.abs((await secondsIn(page, 'data[class]')) - total)).toBeLessThanOrEqual(30);

  const before = await figure(page, 'Late lines').textContent();
  await beside(page)
    .getByRole('button', { name: /^Make this change: / })
    .first()
    .click();
  await expect.poll(lateness, { timeout: 15_000 }).toBeLessThan(late);
  await page.keyboard.press('Control+z');
  await expect.poll(lateness, { timeout: 15_000 }).toBe(late);
  await expect(figure(page, 'Late lines')).toHaveText(before ?? '');
});

test('W asks of the selected line; a line on time says why not sooner', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  await lane(page, 'Shear').getByRole('option').first().click();
  await page.keyboard.press('w');
  await expect(beside(page).getByRole('heading', { name: /^Why (late|not sooner)\?$/ })).toBeVisible();
  await expect(causes(page).getByRole('listitem').first()).toBeVisible();
});

test(
  'the search stops when told, keeps searching from the best plan by key, and the bound is beside the figures',
  { tag: host },
  async ({ app }) => {
    const { page } = app;
    await openDemo(page);
    await planFor(page, 1);
    const strip = page.getByRole('region', { name: 'Search' });
    await expect(strip.getByText(/^Stopped after/)).toBeVisible();
    await expect(page.getByText(/by more than|is not known|No better plan/).first()).toBeVisible();
    await page.keyboard.press('g');
    await expect(strip.getByText(/Planning: \d+ of/)).toBeVisible();
    await strip.getByRole('button', { name: /^Stop/ }).click();
    await expect(strip.getByRole('button', { name: /^Keep searching/ })).toBeVisible();
    await expect(strip.getByText(/Planning: \d+ of/)).toBeHidden();
  },
);
