import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Rng } from '../../core/rng.ts';
import { aBrake, aLine, anOrder, aPart, aQueue, aShear, aSheet, aShop } from '../support/builders.ts';
import { expect, host, test } from './app.ts';
import { pdfPages, printTo } from './pdf.ts';
import { goTo } from './steps.ts';

/** The steps on paper, for a run as large as they come. */
test.describe.configure({ timeout: 240_000 });

const LENGTHS_MM = [610, 914, 1219, 1524, 1829, 2134, 2438, 3048];

/** Two hundred lines of one blank each, in forty girths and eight lengths, all of one metal and in one run. */
function shopOfTwoHundred() {
  const rng = new Rng(1);
  const draw = (low: number, high: number): number => low + Math.floor(rng.next() * (high - low + 1));
  const { profile } = aPart();
  const part = Array.from({ length: 40 }, (_, k) =>
    aPart({
      ...{ id: `strip-${k}`, name: `Strip ${k}` },
      profile: { ...profile, flangesMm: [draw(600, 6100) / 10], bends: [] },
    }),
  );
  const order = Array.from({ length: 20 }, (_, k) => anOrder({ id: String(1042 + k) }));
  const line = Array.from({ length: 200 }, (_, k) =>
    aLine({
      ...{ orderId: String(1042 + Math.floor(k / 10)), number: 1 + (k % 10) },
      ...{ partId: `strip-${k % 40}`, lengthMm: LENGTHS_MM[draw(0, 7)] ?? NaN, quantity: 1 },
    }),
  );
  const shear = aShear({ backGaugeMm: { min: 5, max: 1000 }, minStripMm: 25 });
  const queue = [aQueue({ operations: line.map(({ id }) => `${id}:shear`) })];
  return aShop({ part, order, line, queue, machine: [shear, aBrake()], sheet: [aSheet({ onHand: 400 })] });
}

test('the steps of 200 different blanks are two pages of paper', { tag: host }, async ({ app }) => {
  const { page, dataDir } = app;
  const { settings, ...rows } = shopOfTwoHundred();
  const none = { step: [], fact: [], savedPlan: [], cutAnswer: [], setAside: [] };
  const file = join(dataDir, 'everything.json');
  const tables = { ...rows, settings: [settings], ...none };
  writeFileSync(file, JSON.stringify({ format: 'foldweek-export/1', version: '1.0.0', at: 0, tables }));
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open an export' }).click();
  await (await chooser).setFiles(file);
  await goTo(page, '#/print/cutting?run=1042%2F1');
  await expect(page.locator('html')).toHaveAttribute('data-print-ready', 'true', { timeout: 120_000 });
  await expect(page.getByLabel('With the sheets drawn')).not.toBeChecked();
  const pdf = join(dataDir, 'steps.pdf');
  await printTo(pdf, app);
  await expect
    .poll(async () => (await pdfPages(pdf).catch(() => [])).length, { timeout: 120_000 })
    .toBeGreaterThan(0);
  const pages = await pdfPages(pdf);
  expect(pages).toHaveLength(2);
  for (const text of pages) expect(text).toMatch(/guards on, hands clear/i);
  const { line } = rows;
  const said = pages.join(' ');
  expect(line.filter(({ id }) => !said.includes(id))).toEqual([]);
});
