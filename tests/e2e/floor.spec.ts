import type { Locator, Page } from '@playwright/test';
import { expect, host, test } from './app.ts';
import { card, factsIn, standAt } from './floor-steps.ts';
import { figure, goTo, lane, openDemo, operations, said, takeBack } from './steps.ts';

/** Work reported at the machines, and what it teaches. */

const undo = (page: Page) => page.getByRole('banner').getByRole('button', { name: /^Undo: / });

/** The whole number of pieces that the card asks for. */
const piecesOf = async (page: Page): Promise<string> =>
  /(\d+) pieces?/.exec((await card(page).locator('header').textContent()) ?? '')?.[1] ?? '';

/** Longer than controls that changed stay dead. */
const SETTLED_MS = 900;

async function centreOf(target: Locator): Promise<{ x: number; y: number }> {
  await expect(target).toBeVisible();
  const box = await target.boundingBox();
  if (!box) throw new Error('it is not on the screen');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** A hand that means one tap and makes two. */
async function twice(page: Page, { x, y }: { x: number; y: number }): Promise<void> {
  await page.waitForTimeout(SETTLED_MS);
  await page.mouse.click(x, y);
  await page.waitForTimeout(80);
  await page.mouse.click(x, y);
}

test('an operation is started, counted and done; scrapped pieces come back as a line of their own', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  const line = await standAt(page, 'S1 Shear');
  await card(page).getByRole('button', { name: 'Start', exact: true }).click();
  await expect(card(page).getByText(/Under way/)).toBeVisible();
  await card(page).getByRole('button', { name: 'Increase Scrapped' }).click();
  await page.keyboard.press('x');
  await expect(card(page).getByRole('textbox', { name: /^Scrapped/ })).toHaveValue('2');
  await page.keyboard.press('d');
  await page.getByRole('button', { name: 'They are good' }).click();
  await expect(card(page).getByRole('heading')).not.toHaveText(line);
  await expect(said(page)).toContainText(new RegExp(`Finish ${line} shearing: \\d+ good, 2 scrapped`));

  await goTo(page, '#/orders');
  await page.getByRole('searchbox').fill(`remake of ${line}`);
  const again = page.getByRole('row').filter({ hasText: `remake of ${line}` });
  await expect(again).toHaveCount(1);
  const makeUp = (await again.getByRole('gridcell').first().textContent()) ?? '';
  await goTo(page, '#/board');
  await expect(lane(page, 'Shear')).toBeVisible();
  const shearing = () => operations(lane(page, 'Shear').getByRole('option'));
  await expect.poll(shearing).toContain(`${makeUp} shearing`);
  expect(await shearing()).not.toContain(`${line} shearing`);

  await takeBack(page);
  await expect.poll(shearing).not.toContain(`${makeUp} shearing`);
  expect(await shearing()).toContain(`${line} shearing`);
});

test(
  'work pauses for a reason and goes on; the machine is remembered after a restart',
  { tag: host },
  async ({ app }) => {
    await openDemo(app.page);
    const line = await standAt(app.page, 'S1 Shear');
    await app.page.keyboard.press('s');
    await expect(card(app.page).getByText(/Under way/)).toBeVisible();
    await app.page.keyboard.press('a');
    await app.page.getByRole('button', { name: 'Machine or tooling trouble' }).click();
    await expect(card(app.page).getByText(/Paused since .*: Machine or tooling trouble/)).toBeVisible();
    const page = await app.restart();
    await goTo(page, '#/floor/S1');
    await expect(card(page).getByRole('heading')).toHaveText(line);
    await page.getByRole('button', { name: 'Resume' }).click();
    await expect(card(page).getByText(/Under way/)).toBeVisible();
  },
);

for (const [width, height] of [
  [1440, 900],
  [1024, 768],
] as const)
  test(`a double tap reports one thing, and no piece is booked under the finger, ${width} × ${height}`, async ({
    app,
  }) => {
    const { page } = app;
    await page.setViewportSize({ width, height });
    await openDemo(page);
    const line = await standAt(page, 'S1 Shear');
    const start = card(page).getByRole('button', { name: 'Start', exact: true });
    const tap = await centreOf(start);
    await twice(page, tap);
    await expect(card(page).getByText(/Under way/)).toBeVisible();
    await page.waitForTimeout(SETTLED_MS);
    // The same place pressed again, after a while: what stands there now counts and finishes nothing.
    await page.mouse.click(tap.x, tap.y);
    await page.keyboard.press('Escape');
    const good = card(page).getByRole('textbox', { name: /^Good, of/ });
    await expect(good).toHaveValue('0');
    await expect(card(page).getByRole('textbox', { name: 'Scrapped' })).toHaveValue('0');

    // Done, all pieces counted: the next operation's Start comes up and must not be hit.
    await good.fill(await piecesOf(page));
    await good.blur();
    await twice(page, await centreOf(card(page).getByRole('button', { name: 'Done', exact: true })));
    await expect(card(page).getByRole('heading')).not.toHaveText(line);
    await expect(start).toBeVisible();
    await page.waitForTimeout(SETTLED_MS);
    await app.close();
    expect(factsIn(app.dataDir)).toEqual(['floor.start', 'floor.count', 'floor.done']);
  });

test('a start and an end that nobody pressed in time are given afterwards, one step each', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  const line = await standAt(page, 'S1 Shear');
  const clock = page.getByRole('dialog').getByLabel('Time');
  const give = async (minutesLater: number) => {
    const [hours = 0, minutes = 0] = (await clock.inputValue()).split(':').map(Number);
    const of = (count: number) => String(count).padStart(2, '0');
    const given = hours * 60 + minutes + minutesLater;
    const text = `${of(Math.floor(given / 60))}:${of(given % 60)}`;
    await clock.fill(text);
    return text;
  };
  await page.keyboard.press('t');
  const from = page.getByRole('button', { name: 'Start from then' });
  await give(1);
  await expect(page.getByText(/That is still to come/)).toBeVisible();
  await expect(from).toBeDisabled();
  const began = await give(-41);
  await from.click();
  await expect(card(page).getByText(new RegExp(`since Mon ${began}`))).toBeVisible();

  await card(page).getByRole('button', { name: 'Ended earlier' }).click();
  await give(-41);
  await expect(
    page.getByText(new RegExp(`Something else was recorded until Mon 30 Nov ${began}`)),
  ).toBeVisible();
  const ended = await give(31);
  await page.getByRole('button', { name: 'Done at that time' }).click();
  await page.getByRole('button', { name: 'They are good' }).click();
  await expect(card(page).getByRole('heading')).not.toHaveText(line);
  await page.keyboard.press('t');
  await expect(page.getByText(`Not before Mon 30 Nov ${ended}.`)).toBeVisible();
  await page.keyboard.press('Escape');
  await takeBack(page);
  await expect(card(page).getByText(new RegExp(`since Mon ${began}`))).toBeVisible();
});

test('standards learned from finished work are accepted, move the plan, and are undone', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  const before = await figure(page, 'Hours late').textContent();
  await goTo(page, '#/learning/B1');
  await page
    .getByRole('button', { name: /Accept all \d+ that differ/ })
    .first()
    .click();
  const asked = page.getByRole('dialog', { name: /^Accept what finished work shows/ });
  await expect(asked.getByRole('status')).toHaveText(/Late lines: \d+ → \d+|would be late, as now/);
  await asked.getByRole('button', { name: 'Accept', exact: true }).click();
  await expect(page.getByRole('table', { name: 'Accepted so far' }).getByRole('row')).not.toHaveCount(1);
  await expect(undo(page)).toHaveAccessibleName(/Accept .* of B1 from finished work/);
  await goTo(page, '#/board');
  await expect(figure(page, 'Hours late')).not.toHaveText(before ?? '');
  await undo(page).click();
  await expect(figure(page, 'Hours late')).toHaveText(before ?? '');
});

test('finished operations come from a file once, a wrong row after it was fixed', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/learning');
  const rows = [
    'operation,machine,part,material,gauge,colour,length,quantity,good,scrapped,start,end',
    '901/1:shear,S1,coping-8,galv,24,walnut,96,18,18,0,2026-11-20 07:00,2026-11-20 07:30',
    '901/2:shear,S1,coping-8,galv,24,walnut,96,eighteen,18,0,2026-11-20 07:30,2026-11-20 08:00',
  ];
  const choose = (lines: readonly string[]) =>
    page.locator('input[type=file]').setInputFiles({
      name: 'older.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(lines.join('\n')),
    });
  await page.getByRole('button', { name: 'Import finished operations' }).click();
  await choose(rows);
  await expect(page.getByText(/“eighteen” is not a number/).first()).toBeVisible();
  await page.getByRole('button', { name: 'Import 1 operation', exact: true }).click();
  await expect(page.getByText('0 operations ready')).toBeVisible();
  await page.getByRole('gridcell', { name: 'eighteen' }).click();
  await page.getByRole('textbox', { name: 'quantity, row 3' }).fill('18');
  await page.keyboard.press('Enter');
  await expect(page.getByText('1 operation ready')).toBeVisible();
  await goTo(page, '#/board');
  await goTo(page, '#/import/finished');
  await page.getByRole('button', { name: 'Import 1 operation', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'All imported' })).toBeVisible();
  await choose(rows.slice(0, 2));
  await expect(page.getByText('1 operation already exists')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Import 0 operations', exact: true })).toBeDisabled();
});

test('who ran it is asked only where Settings say so, remembered at the machine and shown with the work', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  const line = await standAt(page, 'S1 Shear');
  const who = page.getByRole('combobox', { name: 'Who is at the machine' });
  await expect(who).toHaveCount(0);

  await goTo(page, '#/settings');
  await page.getByText('Ask who ran it', { exact: true }).click();
  await page.getByRole('button', { name: 'Save' }).click();
  await standAt(page, 'S1 Shear');
  await page.keyboard.press('n');
  await page.keyboard.type('Ada');
  await page.keyboard.press('Escape');
  await who.blur();
  await card(page).getByRole('button', { name: 'Start', exact: true }).click();
  await expect(card(page).getByText(/Under way .*, by Ada/)).toBeVisible();
  await page.keyboard.press('d');
  await page.getByRole('button', { name: 'They are good' }).click();

  await goTo(page, '#/learning/S1');
  const done = page.getByRole('row', { name: new RegExp(`^${line}:shear`) });
  await expect(done.getByRole('cell', { name: 'Ada' })).toBeVisible();

  const again = await app.restart();
  await goTo(again, '#/floor/S1');
  await expect(again.getByRole('combobox', { name: 'Who is at the machine' })).toHaveValue('Ada');
});

test('paused work is suspended for the next operation, keeps its count, and goes on after it', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  const line = await standAt(page, 'S1 Shear');
  await page.keyboard.press('s');
  await expect(card(page).getByText(/Under way/)).toBeVisible();
  await page.keyboard.press('+');
  await page.keyboard.press('+');
  await expect(card(page).getByRole('textbox', { name: /^Good, of/ })).toHaveValue('2');
  await page.keyboard.press('a');
  await page.getByRole('button', { name: 'Rush work elsewhere' }).click();
  await expect(card(page).getByText(/Paused since/)).toBeVisible();
  await page.keyboard.press('+');
  await card(page).getByRole('button', { name: 'Suspend' }).click();
  await expect(said(page)).toContainText(`Suspend ${line} shearing`);
  await expect(card(page).getByRole('heading')).not.toHaveText(line);
  const next = (await card(page).getByRole('heading').textContent()) ?? '';
  const first = page.getByRole('region', { name: 'What comes next' }).getByRole('listitem').first();
  await expect(first).toContainText(line);

  await page.keyboard.press('s');
  await expect(card(page).getByText(/Under way/)).toBeVisible();
  await page.keyboard.press('d');
  await page.getByRole('button', { name: 'They are good' }).click();
  await expect(said(page)).toContainText(`Finish ${next} shearing`);
  await expect(card(page).getByRole('heading')).toHaveText(line);
  await expect(
    card(page).getByText(/Suspended .* with 3 of \d+ pieces counted: Rush work elsewhere/),
  ).toBeVisible();
  await card(page).getByRole('button', { name: 'Resume' }).click();
  await expect(card(page).getByText(/Under way/)).toBeVisible();
  await expect(card(page).getByRole('textbox', { name: /^Good, of/ })).toHaveValue('3');
});
