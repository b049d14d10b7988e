import type { Page } from '@playwright/test';
import { expect, test } from './app.ts';
import { card, standAt } from './floor-steps.ts';
import { figure, goTo, lane, openDemo, placeInQueue, said, type } from './steps.ts';

/** What the floor has done and what the desk decides, told by one truth on every screen. */

test('a line that was made stays on record; the line in its place has a number of its own, and is planned', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  const line = await standAt(page, 'S1 Shear');
  const [order] = line.split('/') as [string];
  await card(page).getByRole('button', { name: 'Start', exact: true }).click();
  await expect(card(page).getByText(/Under way/)).toBeVisible();

  await goTo(page, `#/orders/${order}`);
  const dialog = page.getByRole('dialog');
  const lines = dialog.getByRole('group', { name: /^Line / });
  const last = Number(((await lines.last().getAttribute('aria-label')) ?? '').split('/')[1]);
  await dialog.getByRole('button', { name: `Remove line ${line}` }).click();
  await dialog.getByRole('button', { name: 'Save' }).click();
  await expect(
    dialog.getByText(/Work on line .* has started\. Set the line to cancelled instead/),
  ).toBeVisible();
  await dialog.getByRole('button', { name: 'Discard changes' }).click();

  const started = dialog.getByRole('group', { name: `Line ${line}` });
  await started
    .getByRole('button', { name: /^Status/ })
    .or(started.getByRole('button', { name: /open/ }))
    .first()
    .click();
  await page.getByRole('option', { name: 'cancelled' }).click();
  await dialog.getByRole('button', { name: 'Add line' }).click();
  const added = `${order}/${last + 1}`;
  const next = dialog.getByRole('group', { name: `Line ${added}` });
  const part = next.getByRole('combobox', { name: 'Part' });
  await part.fill('Ridge');
  await part.press('ArrowDown');
  await part.press('Enter');
  await next.getByLabel('Pieces', { exact: true }).fill('6');
  await next.getByLabel('Pieces', { exact: true }).blur();
  await dialog.getByRole('button', { name: 'Save' }).click();
  await expect(dialog).toBeHidden();

  await goTo(page, '#/board');
  const shearing = lane(page, 'Shear');
  await expect(shearing.getByRole('option', { name: new RegExp(`^${added} shearing`) })).toHaveCount(1);
  await expect(shearing.getByRole('option', { name: new RegExp(`^${line} shearing`) })).toHaveCount(0);
});

/** The bending of a line, selected on the board. */
async function selectBending(page: Page, line: string): Promise<void> {
  await placeInQueue(page, line);
  await page.getByRole('button', { name: /^Bending / }).click();
  const bar = page.getByRole('option', { selected: true });
  await expect(bar).toHaveAttribute('aria-label', new RegExp(`^${line} bending`));
}

/** "Mon 30 Nov, 17:36" as minutes of its month. */
function minuteIn(text: string): number {
  const [, day, hours, minutes] = /(\d+) [A-Z][a-z]+,? (\d\d):(\d\d)/.exec(text) ?? [];
  return Number(day) * 1440 + Number(hours) * 60 + Number(minutes);
}

test('the date to promise in the order is the one that the board shows for the line', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  await selectBending(page, '4106/1');
  const ends = (await figure(page, 'End').locator('dd').textContent()) ?? '';
  await goTo(page, '#/orders/4106');
  const line = page.getByRole('dialog').getByRole('group', { name: 'Line 4106/1' });
  const ready = line.getByText(/^Ready .* without making anything late\.$/);
  // The date to promise is the whole minute after.
  expect([0, 1]).toContain(minuteIn((await ready.textContent()) ?? '') - minuteIn(ends));
});

test('removing a machine says first what becomes of its work; a code that differs in capitals only is refused', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  const add = async (code: string, name: string): Promise<void> => {
    await goTo(page, '#/shop/machines/+');
    await type(page, 'Code', code);
    await type(page, 'Name', name);
    await type(page, 'Longest piece', '10 ft');
    await type(page, 'Thickest sheet', '0.12 in');
    await type(page, 'Force', '150');
    await type(page, 'Die opening', '0.5 in');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
  };
  await add('b2', 'Small brake');
  await expect(page.getByText(/b2 differs from B2, which is there already, only in capitals/)).toBeVisible();
  await add('B3', 'Third brake');
  await expect(page.getByRole('option', { name: /^B3 Third brake/ })).toBeVisible();

  await selectBending(page, '4106/1');
  await page.getByRole('option', { selected: true }).focus();
  await page.keyboard.press('Alt+ArrowDown');
  await page.keyboard.press('Alt+ArrowDown');
  const own = lane(page, 'Third brake').getByRole('option', { name: /^4106\/1 bending/ });
  await expect(own).toHaveCount(1);

  await goTo(page, '#/shop/machines/B3');
  const remove = page.getByRole('button', { name: 'Remove', exact: true });
  await remove.click();
  const ask = page.getByRole('dialog', { name: 'Remove machine B3?' });
  await expect(ask).toContainText(
    /\d+ planned operations? moves? to B\d.*, behind what waits there, by due date\./,
  );
  await ask.getByRole('button', { name: 'Keep' }).click();
  await goTo(page, '#/board');
  await expect(own).toHaveCount(1);

  await goTo(page, '#/shop/machines/B2');
  await remove.click();
  await expect(said(page)).toContainText('The machine B2 has finished work in its history. Keep it');
});

test.describe('in the middle of a minute', () => {
  // Monday at 14:30 and 25 seconds, in Chicago.
  test.use({ now: '2026-11-30T20:30:25Z' });

  test('bending may begin as soon as its blanks are reported done', async ({ app }) => {
    const { page } = app;
    await openDemo(page);
    const line = await standAt(page, 'S1 Shear');
    await standAt(page, 'B2 Short brake');
    const waiting = page
      .getByRole('region', { name: 'What comes next' })
      .getByRole('listitem')
      .filter({ hasText: line });
    await expect(waiting).toContainText(`The blanks of line ${line} are not sheared yet`);
    await goTo(page, '#/floor/S1');
    await card(page).getByRole('button', { name: 'Start', exact: true }).click();
    await expect(card(page).getByText(/Under way/)).toBeVisible();
    await page.keyboard.press('d');
    await page.getByRole('button', { name: 'They are good' }).click();
    await expect(said(page)).toContainText(`Finish ${line} shearing`);

    await goTo(page, '#/floor/B2');
    await waiting.getByRole('button', { name: `Do ${line} instead` }).click();
    await expect(card(page).getByRole('heading')).toHaveText(line);
    await card(page).getByRole('button', { name: 'Start', exact: true }).click();
    await expect(card(page).getByText(/Under way since Mon 14:30/)).toBeVisible();
  });

  test('a night that nobody paused for is no worked time', async ({ app }) => {
    await openDemo(app.page);
    // It is open until 21:00 with half an hour's break, and from 06:30.
    const line = await standAt(app.page, 'S1 Shear');
    await card(app.page).getByRole('button', { name: 'Start', exact: true }).click();
    await expect(card(app.page).getByText(/Under way/)).toBeVisible();
    const page = await app.restart('2026-12-01T14:00:00Z');
    await goTo(page, '#/floor/S1');
    await expect(card(page).getByRole('heading')).toHaveText(line);
    await expect(card(page).getByText(/Under way since Mon 14:30, 7 h 30 min of about/)).toBeVisible();
  });
});
