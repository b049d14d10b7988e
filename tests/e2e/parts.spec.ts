import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { expect, host, test } from './app.ts';
import { pdfPages, printTo } from './pdf.ts';
import { goTo, inchesIn, openDemo, type } from './steps.ts';

/** A part from a typed profile to a family, and a rule that the shop takes otherwise. */

const form = (page: Page, name: string) => page.getByRole('form', { name });
const figureOf = (page: Page, term: string) =>
  page
    .locator('dl div')
    .filter({ has: page.getByText(term, { exact: true }) })
    .locator('dd');
/** The girth on the screen, in inches. */
const girth = (page: Page): Promise<number> => inchesIn(figureOf(page, 'Girth'));
const undo = (page: Page) => page.getByRole('banner').getByRole('button', { name: /^Undo: / });

/** A Z of 2, 1 1/2 and 2 in, typed into a new form and not saved yet. */
async function typeZee(page: Page): Promise<void> {
  await goTo(page, '#/shop/parts/+');
  await type(page, 'Code', 'zee-2');
  await type(page, 'Name', 'Zee');
  await page.getByRole('button', { name: 'Add flange' }).click();
  await type(page, 'Flange 1', '2');
  await type(page, 'Flange 2', '1 1/2');
  await type(page, 'Flange 3', '2');
  const second = page.getByRole('group', { name: 'Flange 2' });
  await second.getByRole('button', { name: /Direction/ }).click();
  await page.getByRole('option', { name: 'down' }).click();
}

test('a profile is drawn as it is typed; girth, order and turns follow; it is mirrored, saved and duplicated', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/shop/parts/+');
  await expect(page.getByText(/appear when every length and angle is given/)).toBeVisible();
  await typeZee(page);
  await expect(page.getByRole('img', { name: 'Cross-section of Zee' })).toBeVisible();
  await expect.poll(() => girth(page)).toBeGreaterThan(5.35);
  const before = await girth(page);
  expect(before).toBeLessThan(5.5);
  await type(page, 'Flange 1', '3');
  await expect.poll(() => girth(page)).toBeCloseTo(before + 1, 3);
  await expect(page.getByText(/Turned over once\./)).toBeVisible();

  await page.getByRole('button', { name: 'Mirror left and right' }).click();
  await expect(page.getByRole('textbox', { name: 'Flange 3', exact: true })).toHaveValue('3 in');
  await expect.poll(() => girth(page)).toBeCloseTo(before + 1, 3);
  await form(page, 'Add part').getByRole('button', { name: 'Save', exact: true }).click();
  await expect(undo(page)).toHaveAccessibleName(/Add part zee-2/);

  await form(page, 'Zee').getByRole('button', { name: 'Duplicate' }).click();
  await expect(page.getByRole('textbox', { name: 'Name', exact: true })).toHaveValue('Zee, copy');
  await type(page, 'Code', 'zee-3');
  await form(page, 'Add part').getByRole('button', { name: 'Save', exact: true }).click();
  await expect(undo(page)).toHaveAccessibleName(/Add part zee-3/);
  await undo(page).click();
  await expect(page.getByRole('option', { name: /Zee, copy/ })).toBeHidden();
});

test('a family makes a part of each size; one undo takes them back', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/shop/parts/fascia-6');
  await page.getByRole('button', { name: 'Make a family of sizes' }).click();
  await page.getByRole('button', { name: 'Another size' }).click();
  const size = page.getByRole('group', { name: 'Size 2' });
  await size.getByLabel('Code').fill('fascia-7');
  await size.getByLabel('Name').fill('Fascia 7 in');
  await size.getByLabel('A', { exact: true }).fill('7');
  await size.getByLabel('A', { exact: true }).blur();
  await form(page, 'Fascia 6 in').getByRole('button', { name: 'Save' }).click();
  await expect(undo(page)).toHaveAccessibleName(/Change part fascia-6 and 1 size of it/);
  await goTo(page, '#/shop/parts/fascia-7');
  await expect(form(page, 'Fascia 7 in').getByText(/A size of/)).toBeVisible();
  await expect(figureOf(page, 'Girth')).not.toHaveText('');
  await undo(page).click();
  await expect(page.getByRole('option', { name: /Fascia 7 in/ })).toBeHidden();
});

test('a check stops a part, and is turned to a warning by the shop', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  await typeZee(page);
  await type(page, 'Flange 1', '0.15');
  const long = page.getByRole('listitem').filter({ hasText: 'the V of Long brake needs' });
  await expect(long.getByText('cannot', { exact: true })).toBeVisible();
  await expect(long.getByText(/Flange 1 is .* over the outside/)).toBeVisible();

  await goTo(page, '#/settings');
  await page.getByRole('button', { name: /Minimum flange/ }).click();
  await page.getByRole('option', { name: 'warning', exact: true }).click();
  await form(page, 'The shop').getByRole('button', { name: 'Save' }).click();
  await expect(undo(page)).toHaveAccessibleName(/Change settings/);

  await goTo(page, '#/shop/parts/+');
  await expect(long.getByText('check first', { exact: true })).toBeVisible();
  await expect(long.getByText('cannot', { exact: true })).toBeHidden();
  await undo(page).click();
  await expect(long.getByText('cannot', { exact: true })).toBeVisible();
});

test('a measured deduction beats the formula and says so', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/shop/parts/z-bar');
  const before = await girth(page);
  await goTo(page, '#/shop/materials/galv');
  await page.getByRole('button', { name: 'Add a measured deduction' }).click();
  const row = page.getByRole('group', { name: /^Measured at 90°/ });
  await row.getByRole('button', { name: /Gauge/ }).click();
  await page.getByRole('option', { name: '24 ga' }).click();
  await row.getByLabel('Deduction', { exact: true }).fill('0.1');
  await row.getByLabel('Deduction', { exact: true }).blur();
  await form(page, 'Prefinished galvanized').getByRole('button', { name: 'Save' }).click();
  await expect(undo(page)).toHaveAccessibleName(/Change material galv/);
  await goTo(page, '#/shop/parts/z-bar');
  const stock = page
    .getByRole('button', { name: /^Metal/ })
    .or(page.getByRole('button', { name: / Metal$/ }))
    .first();
  await stock.click();
  await page.getByRole('option', { name: /^24 ga/ }).click();
  await page.getByText('How the girth adds up').click();
  await expect(page.getByText(/measured in your shop/).first()).toBeVisible();
  // Two bends, each 0.1 in off 5.5 in.
  await expect.poll(() => girth(page)).toBeCloseTo(5.3, 3);
  expect(before).toBeGreaterThan(5.3 + 1e-3);
});

test('a drawing on paper is as large as its scale says', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/print/part?part=z-bar');
  const drawing = page.getByRole('img', { name: 'Cross-section of Z-bar, to scale' });
  await expect(drawing).toBeVisible();
  await expect(page.getByText('Scale 1 : 1;')).toBeVisible();
  // The Z's web is 1 1/2 in over the outside and its flanges 2 in each way: 2 in high between the neutral lines' ends.
  const pixels = await drawing.locator('path').evaluate((path: SVGGraphicsElement) => {
    const box = path.getBBox();
    const svg = path.ownerSVGElement as SVGSVGElement;
    const perMm = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
    return { width: box.width * perMm, height: box.height * perMm };
  });
  const inch = 96;
  const thickness = 0.0276;
  const sizes = [pixels.width / inch, pixels.height / inch].sort((a, b) => a - b);
  expect(sizes[0]).toBeGreaterThan(1.5 - thickness - 0.02);
  expect(sizes[1]).toBeLessThan(4.01);
  expect(sizes[1]).toBeGreaterThan(3.8);
  await expect(page.getByRole('row', { name: /bend 1/ })).toBeVisible();
  await expect(page.getByText(/come before anything printed/)).toBeVisible();
});

test('a drawing is printed in the metal that it is looked at in', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/shop/parts/z-bar');
  const metal = page.getByRole('button', { name: /Metal$/ }).first();
  await metal.click();
  await page.getByRole('option', { name: /^22 ga/ }).click();
  await page.getByRole('button', { name: 'Print the drawing' }).click();
  const drawing = page.getByRole('region', { name: 'Drawing of Z-bar' });
  await expect(drawing.getByText(/^22 ga/)).toBeVisible();
  await page.getByRole('button', { name: 'Back to the part' }).click();
  await expect(metal).toContainText('22 ga');
});

test(
  'a traveller comes out as a PDF with lengths, bend list and cautions; dispatch lists take drawings along',
  { tag: host },
  async ({ app }) => {
    const { page } = app;
    await openDemo(page);
    await goTo(page, '#/print/traveller?line=4106%2F1');
    await expect(page.getByRole('region', { name: 'Traveller of line 4106/1' })).toBeVisible();
    const path = join(app.dataDir, 'traveller.pdf');
    await printTo(path, app);
    await expect.poll(async () => (await pdfPages(path).catch(() => [])).length, { timeout: 20_000 }).toBe(1);
    const text = (await pdfPages(path)).join(' ').replaceAll(/\s+/g, ' ');
    for (const words of ['Line 4106/1: Valley, plain', '10 1/2 in', '35°', 'fold start hem', 'Scale 1 : 5'])
      expect(text).toContain(words);
    expect(text).toMatch(/Hands clear of punch and die/);

    await goTo(page, '#/print/dispatch?machine=B2&days=7');
    await expect(page.getByRole('region', { name: /^Drawing of/ })).toHaveCount(0);
    await page.getByText('Drawings of the parts to bend').click();
    await expect(page.getByRole('region', { name: /^Drawing of/ }).first()).toBeVisible();
  },
);
