import { expect, host, test } from './app.ts';
import { countWork } from './counting.ts';
import { goTo, lane, openDemo, type } from './steps.ts';

test('an empty shop is set up in five steps and plans its first order', { tag: host }, async ({ app }) => {
  const { page } = app;
  await expect(page.getByRole('heading', { name: 'Welcome to Foldweek' })).toBeVisible();
  const work = await countWork(page);
  const button = (name: string | RegExp) => page.getByRole('button', { name });
  const missing = page.getByRole('list', { name: 'Still missing to plan' });
  const tick = (name: RegExp) => page.locator('label').filter({ hasText: name }).first().click();

  await page.getByLabel('Name of the shop').fill('Invented Trim');
  await button('Set up your shop').click();
  await expect(missing.getByText('The shop has no shear.')).toBeVisible();
  await button('Next: machines').click();

  await button('Add a shear and a press brake with usual figures').click();
  await expect(page.getByText('usual figures, correct them')).toHaveCount(2);
  await expect(missing.getByText('The shop has no shear.')).toBeHidden();
  await button('Next: metals and colours').click();

  await tick(/^24 ga/);
  await tick(/^26 ga/);
  await tick(/^White$/);
  await tick(/^Brown$/);
  await button('Keep 2 gauges and 2 colours, and go on').click();
  await expect(missing.getByText('4 metals have no sheet size.')).toBeVisible();
  await button('Add 4 sheet sizes, and go on').click();
  await expect(missing.getByText('No part is there yet.')).toBeVisible();

  await button('Draw a part').click();
  await expect(page.getByLabel('Code', { exact: true })).toBeFocused();
  await page.keyboard.type('angle');
  await type(page, 'Name', 'Angle');
  await type(page, 'Flange 1', '3');
  await type(page, 'Flange 2', '4');
  await page.keyboard.press('Enter');
  await page
    .getByRole('form', { name: 'Add part' })
    .getByRole('button', { name: 'Save', exact: true })
    .click();
  await expect(page.getByRole('form', { name: 'Angle' })).toBeVisible();
  await button('Set-up, step by step').click();

  await button('Type a work order').click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Number').fill('1042');
  await dialog.getByLabel('Customer').fill('Invented Roofing');
  await dialog.getByLabel('Due').first().fill('2026-12-04');
  await dialog.getByRole('combobox', { name: 'Part' }).fill('angle');
  await page.getByRole('option').first().click();
  await dialog.getByLabel('Pieces', { exact: true }).fill('20');
  await dialog.getByLabel('Pieces', { exact: true }).blur();
  await dialog.getByRole('button', { name: 'Save', exact: true }).click();
  await expect(dialog).toBeHidden();

  await page.getByRole('link', { name: 'Board' }).click();
  await expect(lane(page, 'Shear').getByRole('option')).toHaveCount(1);
  await expect(lane(page, 'Press brake').getByRole('option')).toHaveCount(1);
  console.log(
    `From an empty shop to its first planned order: ${work.clicks} clicks, ${work.typed} characters.`,
  );
  expect(work.clicks).toBeGreaterThan(10);
  expect(work.clicks).toBeLessThanOrEqual(30);
  expect(work.typed).toBeLessThanOrEqual(120);
});

test('the set-up goes on where it was left, also after a restart', async ({ app }) => {
  await app.page.getByLabel('Name of the shop').fill('Invented Trim');
  await app.page.getByRole('button', { name: 'Set up your shop' }).click();
  await app.page.getByRole('button', { name: 'Next: machines' }).click();
  await app.page.getByRole('button', { name: 'Next: metals and colours' }).click();
  await app.page
    .locator('label')
    .filter({ hasText: /^22 ga/ })
    .first()
    .click();
  const page = await app.restart();
  await page.getByRole('button', { name: 'Go on with the set-up' }).click();
  await expect(page.getByRole('link', { name: /Metals and colours/ })).toHaveAttribute(
    'aria-current',
    'step',
  );
  await expect(page.getByRole('button', { name: 'Keep 1 gauge, and go on' })).toBeVisible();
});

test('lines that wait for one thing are one entry, and one press plans them all', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  for (const size of ['48x96', '48x120']) {
    await goTo(page, `#/shop/sheets/galv-24-barn-red-${size}`);
    await page
      .getByRole('form', { name: `sheet size galv-24-barn-red-${size}` })
      .getByRole('button', { name: 'Remove' })
      .click();
    await page.getByRole('dialog').getByRole('button', { name: 'Remove' }).click();
    await expect(page.getByRole('dialog')).toBeHidden();
  }
  await goTo(page, '#/board');
  const left = page.locator('dl div').filter({ hasText: 'Cannot be planned' });
  await expect(left).toContainText('9 lines');
  await expect(page.locator('dl div').filter({ hasText: 'Late lines' })).toContainText('of 160');
  await left.getByRole('button', { name: 'See what is missing' }).click();
  await expect(
    page.getByText('24 ga Barn red, Prefinished galvanized has no sheet size. 9 lines wait for it.'),
  ).toBeVisible();
  await page.getByRole('button', { name: 'Add 48 × 120 in' }).click();
  await expect(left).toBeHidden();
  await expect(page.getByText('Every open line is on the board')).toBeVisible();
});

test('Ctrl+K finds a line, a part and a customer, and goes there', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  const find = async (text: string): Promise<void> => {
    await page.keyboard.press('Control+k');
    await page.keyboard.type(text);
    await expect(page.getByRole('menuitem').first()).toContainText(text, { ignoreCase: true });
    await page.keyboard.press('Enter');
  };
  await find('4106/2');
  await expect(page.getByRole('gridcell', { name: '4106/2', exact: true })).toBeVisible();
  await expect(page.getByRole('gridcell', { name: '4101/1', exact: true })).toBeHidden();
  await find('ridge-cap');
  await expect(page.getByRole('form', { name: /^Ridge cap/ })).toBeVisible();
  await find('Applecart Sheds');
  await expect(page.getByLabel('Find lines')).toHaveValue('Applecart Sheds');
});

test('a row is saved and another added without the mouse; a saved one is duplicated', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/shop/colours/+');
  const code = page.getByLabel('Code', { exact: true });
  await expect(code).toBeFocused();
  await page.keyboard.type('pine');
  await page.keyboard.press('Tab');
  await page.keyboard.type('Pine');
  await page.keyboard.press('Control+Enter');
  await expect(page.getByRole('option', { name: /Pine/ })).toBeVisible();
  await expect(code).toBeFocused();
  await expect(code).toHaveValue('');
  await page.getByRole('option', { name: /Pine/ }).click();
  await page.getByRole('button', { name: 'Duplicate' }).click();
  await expect(page.getByLabel('Name', { exact: true })).toHaveValue('Pine, copy');
});
