import type { Locator, Page } from '@playwright/test';
import { demoShop } from '../core/demo-data/demo-shop.ts';
import { expect, test } from './app.ts';
import { card, standAt } from './floor-steps.ts';
import { goTo, openDemo, said, type } from './steps.ts';

/** Tools of the brakes, from their forms and from pasted rows to paper and floor. */

/** Removes a tool by its form. */
async function remove(page: Page, code: string): Promise<void> {
  await goTo(page, `#/shop/tools/${code}`);
  await page.getByRole('button', { name: 'Remove', exact: true }).click();
  const ask = page.getByRole('dialog', { name: `Remove tool ${code}?` });
  await ask.getByRole('button', { name: 'Remove', exact: true }).click();
  await expect(page.getByRole('form', { name: 'Hemming tools, long' })).toBeHidden();
}

/** Hemming tools typed into the form of a new tool, for the long brake. */
async function enterHemming(page: Page, code: string): Promise<void> {
  await goTo(page, '#/shop/tools/+');
  const form = page.getByRole('form', { name: 'Add tool' });
  await type(page, 'Code', code);
  await type(page, 'Name', `Hemming tools ${code}`);
  await form.getByRole('button', { name: /Kind/ }).click();
  await page.getByRole('option', { name: 'hemming tools', exact: true }).click();
  await type(page, 'Length', '3200 mm');
  await form.getByText(/\(B1\)/).click();
  await form.getByRole('button', { name: 'Save', exact: true }).click();
  await expect(page.getByRole('form', { name: `Hemming tools ${code}` })).toBeVisible();
}

/** Of the long ridge cap, what the long brake is said to lack. */
const lacking = (page: Page) => page.getByText(/Long brake has no hemming tools/).filter({ visible: true });

test('a brake without hemming tools refuses hemmed parts and says so; with them it takes those again; paper and floor name what is set up', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/shop/parts/ridge-cap');
  await expect(page.getByRole('form', { name: 'Ridge cap', exact: true })).toBeVisible();
  await expect(lacking(page)).toHaveCount(0);

  await remove(page, 'LH');
  await goTo(page, '#/shop/parts/coping-8');
  await expect(lacking(page).first()).toBeVisible();
  const short = page.getByText(/Short brake has no hemming tools for/).filter({ visible: true });
  await expect(short).toHaveCount(0);

  await standAt(page, 'B1 Long brake');
  await expect(card(page).getByText(/^V .*\(LV8\), (gooseneck )?punch 84° \(LP\d\)$/)).toBeVisible();
  await goTo(page, '#/print');
  await expect(
    page.getByText(/Set up: V .*\(SV8\), punch 84° \(SP1\), hemming tools \(SH\)/).first(),
  ).toBeVisible();
  await expect(page.getByText(/hemming tools \(LH\)/)).toHaveCount(0);

  await enterHemming(page, 'NEW');
  await goTo(page, '#/shop/parts/coping-8');
  await expect(page.getByRole('form', { name: /^Coping, 8 in/ })).toBeVisible();
  await expect(lacking(page)).toHaveCount(0);
  await goTo(page, '#/print');
  await expect(page.getByText(/Set up: .*hemming tools \(NEW\)/).first()).toBeVisible();
});

test('rows of tools pasted on their list are read, looked at and taken', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/shop/tools');
  await expect(page.getByRole('button', { name: 'From a file' })).toBeVisible();
  const rows = [
    'Code\tName\tKind\tV\tAngle\tLength\tFits',
    'V10\tDie V 10\tdie\t10 mm\t84\t3100 mm\tLong brake',
  ];
  await page.evaluate((text) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', text);
    document.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true }));
  }, rows.join('\n'));
  await expect(page.getByText('Die V 10').first()).toBeVisible();
  await page.getByRole('button', { name: 'Import 1 tool', exact: true }).click();
  await expect(said(page).getByText(/1 tool/)).toBeVisible();
  await goTo(page, '#/shop/tools/V10');
  await expect(page.getByRole('textbox', { name: 'V opening', exact: true })).toHaveValue(/0\.394|10 mm/);
});

/** "close start hem, down to a gap of 1/8 in" of each row of a bend list's table: what these columns say, the angle last. */
const bendsOf = (rows: Locator, columns: readonly number[]): Promise<string[]> =>
  rows.evaluateAll(
    (all, of) =>
      all.map((row) => {
        const cells = of.map((column) => row.children[column]?.textContent?.trim() ?? '');
        const step = cells.slice(0, -1).join(', ').split(', then ').at(-1);
        return `${step} ${cells.at(-1)}`;
      }),
    columns,
  );

test('editor, traveller and floor tell one bend list, with the gap of an open hem and which way it folds', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  const line = await standAt(page, 'B2 Short brake');
  const part = demoShop().line.find(({ id }) => id === line)?.partId;

  await goTo(page, `#/shop/parts/${part}`);
  const hem = page.getByRole('group', { name: 'Hem on the first edge' });
  await hem.getByRole('button', { name: /Hem on the first edge/ }).click();
  await page.getByRole('option', { name: 'open', exact: true }).click();
  await hem.getByRole('textbox', { name: 'Length of the lip' }).fill('1/2');
  await hem.getByRole('textbox', { name: 'Gap' }).fill('1/8');
  await hem.getByRole('textbox', { name: 'Gap' }).blur();
  await hem.getByRole('button', { name: /Folds/ }).click();
  await page.getByRole('option', { name: 'down', exact: true }).click();
  await expect(page.getByText(/fold of the start hem, open, gap 1\/8 in/)).toHaveCount(1);
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await expect(page.getByRole('button', { name: 'Print the drawing' })).toBeVisible();
  const steps = page.getByRole('table', { name: 'Bend list' }).getByRole('row');
  const inEditor = await bendsOf(steps.filter({ has: page.locator('td') }), [1, 2]);
  expect(inEditor.length).toBeGreaterThan(2);
  expect(inEditor).toContain('close start hem, down to a gap of 1/8 in');

  await goTo(page, `#/print/traveller?line=${encodeURIComponent(line)}`);
  const traveller = page.getByRole('region', { name: `Traveller of line ${line}` });
  await expect(traveller.getByText('gap 1/8 in, down')).toBeVisible();
  await expect(traveller.getByText('blank and bends, never turned')).toBeVisible();
  const onPaper = traveller.getByRole('table', { name: 'Bend list' }).getByRole('row');
  expect(await bendsOf(onPaper.filter({ has: page.locator('td') }), [2, 3, 4])).toEqual(inEditor);

  await standAt(page, 'B2 Short brake');
  const onFloor = await card(page)
    .getByRole('list', { name: 'Bend list' })
    .getByRole('listitem')
    .allTextContents();
  expect(onFloor.map((text) => text.split(', then ').at(-1))).toEqual(inEditor);
});
