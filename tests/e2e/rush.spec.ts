import type { Page } from '@playwright/test';
import { expect, host, test } from './app.ts';
import { goTo, openDemo, placeInQueue, planFor, typeRush } from './steps.ts';

/** A rush: typed in or from a file, weighed in three ways, taken in with one press, taken back with one undo. */

const wayIn = (page: Page, title: string) => page.getByRole('region', { name: title });

test(
  'a rush that is typed in opens three ways; one press uses one, undo brings the plan back',
  { tag: host },
  async ({ app }) => {
    const { page } = app;
    await openDemo(page);
    await typeRush(page, 'Ridge', '12');
    await expect(page.getByRole('heading', { name: 'Rush 9001/1: how to fit it in' })).toBeVisible();
    const front = wayIn(page, 'Front of the queue');
    await expect(front.getByText(/^Ready /)).toBeVisible();
    await expect(front.getByText('on time')).toBeVisible();
    await expect(front.getByRole('img', { name: /^Queues with front of the queue\. Ready/ })).toBeVisible();
    await expect(wayIn(page, 'Into the matching run').getByText(/changeover/)).toBeVisible();
    const replan = wayIn(page, 'Plan again around it');
    await expect(replan.getByText(/^Ready /)).toBeVisible();
    await expect(replan.getByText(/this card still improves/)).toBeHidden();
    await expect(page.getByText('costs least')).toHaveCount(1);
    await expect(page.getByText('advised', { exact: true })).toHaveCount(1);
    const whom = front.getByText(/^Who becomes late, with customers/);
    await whom.click();
    await expect(front.getByRole('listitem').first()).toHaveText(/ (late|later) by .*Invented|by /);

    await page.keyboard.press('1');
    await expect(page.getByRole('dialog')).toBeHidden();
    await expect(page.getByText('Rush 9001/1: front of the queue: done.')).toBeVisible();
    const taken = await placeInQueue(page, '9001/1');
    await page.keyboard.press('Control+z');
    await expect(page.getByText('Undone: Rush 9001/1: front of the queue.')).toBeVisible();
    await expect.poll(() => placeInQueue(page, '9001/1')).toBeGreaterThan(taken);
  },
);

test('a rush line on the board opens the ways again, and leaving them changes nothing', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  await typeRush(page, 'Ridge', '12');
  await page.getByRole('button', { name: 'Leave it where it is' }).click();
  const place = await placeInQueue(page, '9001/1');
  await page.getByRole('button', { name: 'Rush…' }).click();
  await expect(page.getByRole('heading', { name: /^Rush 9001\/1/ })).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toBeHidden();
  await page.keyboard.press('r');
  await expect(page.getByRole('heading', { name: /^Rush 9001\/1/ })).toBeVisible();
  await page.keyboard.press('Escape');
  await expect.poll(() => placeInQueue(page, '9001/1')).toBe(place);
});

test('any line that one looks at can be asked about; a date moved forward offers the question', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  const line = '4130/1';
  await placeInQueue(page, line);
  await page.keyboard.press('r');
  await expect(page.getByRole('heading', { name: `Rush ${line}: how to fit it in` })).toBeVisible();
  await page.keyboard.press('Escape');

  await goTo(page, '#/orders/4130');
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Due').first().fill('2026-11-30');
  await dialog.getByLabel('Due').first().blur();
  await dialog.getByRole('button', { name: 'Save' }).click();
  const offer = page.getByRole('region', { name: 'Sooner?' });
  await expect(offer.getByText(/is due earlier now|may want to go sooner/)).toBeVisible();
  await expect(page.getByRole('dialog')).toBeHidden();
  await offer.getByRole('button', { name: 'Can it be sooner?' }).click();
  await expect(page.getByRole('heading', { name: /^Rush .*: how to fit it in$/ })).toBeVisible();
  await expect(offer).toBeHidden();
});

test('the frozen window is named where it holds the rush back, and planned into when that is ticked', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  await planFor(page, 2);
  await typeRush(page, 'Ridge', '12');
  await expect(page.getByText(/^The frozen window of .* holds .* Without it: ready/)).toBeVisible();
  const ready = wayIn(page, 'Front of the queue').getByText(/^Ready /);
  const held = await ready.textContent();
  await page.getByText(/^Plan into the frozen window this time/).click();
  await expect(ready).not.toHaveText(held ?? '');
});

test('rush lines of a file are asked about together', { tag: host }, async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/import/orders');
  const rows = [
    '9101,Invented Gutters,ridge-cap,8',
    '9102,Invented Sheds,ridge-cap,4',
    '9103,Invented Barns,ridge-cap,6',
  ]
    .map((row, i) => `${row},galv,24,slate,2026-12-02,${i === 1 ? '' : 'yes'}`)
    .join('\n');
  const text = `order,customer,part,quantity,material,gauge,colour,due,rush\n${rows}\n`;
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: 'urgent.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
  await page.getByRole('button', { name: 'Import 3 lines', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'Rush of 2 lines: how to fit it in' })).toBeVisible();
  await expect(wayIn(page, 'Front of the queue').getByText(/^Ready /)).toBeVisible();
  await page.getByText(/^9103, Invented Barns: 1 line, due/).click();
  await wayIn(page, 'Into the matching run').getByRole('button', { name: 'Use this option' }).click();
  await expect(page.getByText('Rush 9101/1: into the matching run: done.')).toBeVisible();
});
