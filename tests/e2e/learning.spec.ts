import type { Page } from '@playwright/test';
import { expect, test } from './app.ts';
import { figure, goTo, inchesIn, openDemo, placeInQueue, planFor, said, type, typeRush } from './steps.ts';

/** One part's whole way: drawn, ordered, planned, made, and what its times teach. */

const undo = (page: Page) => page.getByRole('banner').getByRole('button', { name: /^Undo: / });
const card = (page: Page) => page.getByRole('article');
const girth = (page: Page) =>
  page
    .locator('dl div')
    .filter({ has: page.getByText('Girth', { exact: true }) })
    .locator('dd');

async function drawPart(page: Page): Promise<void> {
  await goTo(page, '#/shop/parts/+');
  await type(page, 'Code', 'ell-2');
  await type(page, 'Name', 'Ell');
  await type(page, 'Flange 1', '2');
  await type(page, 'Flange 2', '3');
  const inches = () => inchesIn(girth(page));
  const before = await inches();
  await type(page, 'Flange 2', '4');
  await expect.poll(inches).toBeCloseTo(before + 1, 3);
  await page
    .getByRole('form', { name: 'Add part' })
    .getByRole('button', { name: 'Save', exact: true })
    .click();
  await expect(undo(page)).toHaveAccessibleName(/Add part ell-2/);
}

async function orderIt(page: Page): Promise<void> {
  await typeRush(page, 'Ell', '12');
  await expect(page.getByRole('heading', { name: 'Rush 9001/1: how to fit it in' })).toBeVisible();
  await expect(page.getByRole('region', { name: 'Front of the queue' }).getByText(/^Ready /)).toBeVisible();
  await page.keyboard.press('1');
  await expect(page.getByRole('dialog')).toBeHidden();
}

/** The line's next step brought to the front of its queue by the keyboard; the machine it waits at. */
async function bringForward(page: Page): Promise<string> {
  const place = await placeInQueue(page, '9001/1');
  const bar = page.getByRole('option', { selected: true });
  for (let at = place; at > 2; at--) {
    await page.keyboard.press('Alt+ArrowLeft');
    await expect(bar).toHaveAttribute('aria-posinset', String(at - 1));
  }
  const queue = page.getByRole('listbox', { name: / queue$/ }).filter({ has: bar });
  return ((await queue.getAttribute('aria-label')) ?? '').replace(/ queue$/, '');
}

/** The line's next step, put on the card of its machine's floor screen, started and done. */
async function make(page: Page, step: string): Promise<void> {
  const machine = await bringForward(page);
  await goTo(page, '#/floor');
  await page.getByRole('radio', { name: new RegExp(`${machine}$`) }).click();
  const heading = card(page).getByRole('heading');
  await expect(heading).toBeVisible();
  if (
    await card(page)
      .getByText(/Under way/)
      .isVisible()
  )
    await finish(page);
  if ((await heading.textContent()) !== '9001/1')
    await page.getByRole('button', { name: 'Do 9001/1 instead' }).click();
  await expect(heading).toHaveText('9001/1');
  await card(page).getByRole('button', { name: 'Start', exact: true }).click();
  await expect(card(page).getByText(/Under way/)).toBeVisible();
  await finish(page);
  await expect(said(page)).toContainText(`Finish 9001/1 ${step}: 12 good`);
}

async function finish(page: Page): Promise<void> {
  await page.keyboard.press('d');
  await expect(page.getByRole('dialog', { name: /pieces are not counted/ })).toBeVisible();
  await page.getByRole('button', { name: 'They are good' }).click();
}

test('a part is drawn, ordered, planned and made; a standard learned from finished work moves the plan', async ({
  app,
}) => {
  test.slow();
  const { page } = app;
  await openDemo(page);
  await drawPart(page);
  await orderIt(page);
  await goTo(page, '#/board');
  await planFor(page, 2);
  await make(page, 'shearing');
  await make(page, 'bending');

  await goTo(page, '#/board');
  const before = (await figure(page, 'Hours late').textContent()) ?? '';
  await goTo(page, '#/learning/B1');
  await page
    .getByRole('button', { name: /Accept all \d+ that differ/ })
    .first()
    .click();
  const asked = page.getByRole('dialog', { name: /^Accept what finished work shows/ });
  await expect(asked.getByRole('status')).toHaveText(/Late lines: \d+ → \d+|would be late, as now/);
  await asked.getByRole('button', { name: 'Accept', exact: true }).click();
  await expect(undo(page)).toHaveAccessibleName(/Accept .* of B1 from finished work/);
  await goTo(page, '#/board');
  await expect(figure(page, 'Hours late')).not.toHaveText(before);
});
