import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { type App, expect, host, test } from './app.ts';
import { countWork } from './counting.ts';
import { pdfPages, printTo } from './pdf.ts';

/**
 * From an empty shop to a printed dispatch list of its own orders, by files that nobody wrote for us
 * (tests/support/fixture-files). Everything is pressed and typed as a person would: what it took is counted and printed.
 * With FOLDWEEK_PICTURES=1 the pictures of README's first fifteen minutes are taken again.
 */
const MOST_CLICKS = 60;
const MOST_TYPED = 200;
const lists = join(import.meta.dirname, '../fixtures/import');

/** A picture for README, without the message line. */
async function picture({ page, host: where }: App, of: string): Promise<void> {
  if (process.env.FOLDWEEK_PICTURES !== '1' || where !== 'desktop') return;
  const visibility = (value: string) =>
    page.getByRole('alertdialog', { includeHidden: true }).evaluateAll((all, as) => {
      for (const one of all) if (one instanceof HTMLElement) one.style.visibility = as;
    }, value);
  await visibility('hidden');
  await page.screenshot({ path: join(import.meta.dirname, 'pictures', `first-${of}.png`) });
  await visibility('');
}

/** A file chosen with the button of that name. */
async function choose(page: Page, button: string, file: string): Promise<void> {
  const opened = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: button, exact: true }).click();
  await (await opened).setFiles(join(lists, file));
  await expect(page.getByRole('heading', { name: file })).toBeVisible();
}

/** Say what the shop calls something by another name. */
const say = (page: Page, theirs: string, ours: RegExp): Promise<void> =>
  page
    .getByRole('listitem')
    .filter({ hasText: `“${theirs}”` })
    .getByRole('button', { name: ours })
    .click();

async function take(page: Page, count: number, what: string): Promise<void> {
  await page.getByRole('button', { name: `Import ${count} ${what}`, exact: true }).click();
  await expect(page.getByText(new RegExp(`${count} ${what} imported`)).first()).toBeVisible();
}

test('an empty shop plans three foreign lists in fifteen minutes', { tag: host }, async ({ app }) => {
  test.setTimeout(300_000);
  const { page } = app;
  page.setDefaultTimeout(20_000);
  await page.setViewportSize({ width: 1440, height: 900 });
  const press = (name: string | RegExp) => page.getByRole('button', { name }).first().click();
  await expect(page.getByRole('heading', { name: 'Welcome to Foldweek' })).toBeVisible();
  const work = await countWork(page);

  await page.getByLabel('Name of the shop').click();
  await page.keyboard.type('Three Lists Trim');
  await press('Set up your shop');
  await press('Next: machines');
  await press('Add a shear and a press brake with usual figures');
  await press('Next: metals and colours');
  for (const gauge of [/^24 ga/, /^26 ga/]) await page.getByText(gauge).first().click();
  for (const colour of ['White', 'Dark grey', 'Red', 'Green'])
    await page.getByText(colour, { exact: true }).click();
  await press(/^Keep 2 gauges and 4 colours/);
  await press('Add 48 × 120 in for all 8');
  await press('Next: first orders');

  await press('Parts from a file');
  await choose(page, 'Choose a file', 'parts.csv');
  await take(page, 8, 'parts');

  await page.getByRole('link', { name: 'Orders', exact: true }).click();
  await press('Import from a file');
  await choose(page, 'Choose a file', 'auftraege.csv');
  await picture(app, 'orders');
  await say(page, 'RAL 7016', /^Dark grey/);
  await say(page, 'RAL 9010', /^White/);
  await say(page, 'RAL 3009', /^Red/);
  await expect(page.getByText('11 rows to fix')).toBeVisible();
  await picture(app, 'rows');
  await take(page, 97, 'lines');

  await choose(page, 'Another file', 'work-orders.xlsx');
  await say(page, 'Gutter strap', /P-118/);
  await say(page, 'Coping, wide', /P-119/);
  await expect(page.getByText('10 rows to fix')).toBeVisible();
  await take(page, 94, 'lines');

  await choose(page, 'Another file', 'jobs.txt');
  await say(page, 'CHAR', /^Dark grey/);
  await expect(page.getByText('10 rows to fix')).toBeVisible();
  await take(page, 102, 'lines');

  await page.getByRole('link', { name: 'Board', exact: true }).click();
  await press('Plan the week');
  await expect(page.getByText(/Planning: .*, so far /)).toBeVisible({ timeout: 60_000 });
  await press(/Stop, keep the best so far/);
  await expect(page.getByRole('button', { name: 'Plan the week', exact: true })).toBeVisible();
  await picture(app, 'board');
  await page.keyboard.press('Control+k');
  await page.keyboard.type('print');
  await page.getByRole('menuitem', { name: 'Print dispatch lists' }).click();
  const path = join(app.dataDir, 'dispatch.pdf');
  await expect(page.locator('html')).toHaveAttribute('data-print-ready', 'true');
  await printTo(path, app);
  await expect
    .poll(async () => (await pdfPages(path).catch(() => [])).length, { timeout: 30_000 })
    .toBeGreaterThan(1);
  const paper = (await pdfPages(path)).join(' ');
  expect(paper).toMatch(/guards on, hands clear/i);
  // A week's work out of each list.
  for (const order of [/K-20\d\d/, /701\d\d/, /J55\d\d/]) expect(paper).toMatch(order);
  console.log(`clicks ${work.clicks} of ${MOST_CLICKS}, typed ${work.typed} of ${MOST_TYPED}`);
  expect(work.clicks).toBeLessThanOrEqual(MOST_CLICKS);
  expect(work.typed).toBeLessThanOrEqual(MOST_TYPED);
});
