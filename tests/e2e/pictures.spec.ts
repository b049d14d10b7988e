import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { expect, host, test } from './app.ts';
import { beyondPaper, cutWords, underMessage } from './sight.ts';
import { goTo, lane, openDemo, planFor, type } from './steps.ts';

/**
 * Every screen at two sizes, light and dark, looked at by the machine for what it can see: nothing wider than the
 * window, no words cut off, no message over what can be pressed, nothing said on the console. With FOLDWEEK_PICTURES=1
 * the README's pictures are taken again.
 */
const screens = [
  'board',
  'orders',
  'import/orders',
  'load',
  'cutting',
  'cutting/4110%2F2',
  'stock',
  'floor/B1',
  'learning',
  'shop',
  'shop/set-up',
  'settings',
  'print',
];
/** What a picture is called whose screen is one of many. */
const named: Readonly<Record<string, string>> = { 'cutting/4110%2F2': 'cutting-run' };
const inReadme = ['board', 'load', 'print', 'orders', 'cutting-run'];
const sizes = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
];

test('every screen fits its window and says nothing on the console', { tag: host }, async ({ app }, info) => {
  test.setTimeout(300_000);
  const { page } = app;
  const said: string[] = [];
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) said.push(message.text());
  });
  page.on('pageerror', (error) => said.push(error.message));
  await openDemo(page);
  await planFor(page, 3);
  const again = process.env.FOLDWEEK_PICTURES === '1' && app.host === 'desktop';
  const folder = again ? join(import.meta.dirname, 'pictures') : info.outputPath('pictures');
  mkdirSync(folder, { recursive: true });
  for (const screen of screens) {
    await goTo(page, `#/${screen}`);
    await expect(page.getByRole('heading').first()).toBeVisible();
    await expect(page.getByText(/^(Reading|Working out) /)).toBeHidden({ timeout: 30_000 });
    if (screen === 'board') await lane(page, 'Long brake').getByRole('option').first().click();
    for (const size of sizes) {
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.setViewportSize(size);
        await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
        await page.waitForTimeout(300);
        const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
        expect(wide, `${screen} is ${wide} px too wide at ${size.width}`).toBeLessThanOrEqual(0);
        if (colorScheme === 'light') await expectWhole(page, `${screen} at ${size.width}`);
        const subject = named[screen] ?? screen.replace('/', '-');
        const name = `${subject}-${colorScheme}${size.width === 1440 ? '' : '-small'}.png`;
        if (!again || (size.width === 1440 && inReadme.includes(subject)))
          await page.screenshot({ path: join(folder, name) });
      }
    }
  }
  await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' });
  await expectJoinSentenceWhole(page);
  await expectNothingUnderMessages(page);
  await expectBrakesReadable(page);
  await expectMillimetresWhole(page);
  expect(said).toEqual([]);
});

async function expectWhole(page: Page, where: string): Promise<void> {
  expect(await cutWords(page), `${where}: words cut off`).toEqual([]);
  expect(await beyondPaper(page), `${where}: wider than its paper`).toEqual([]);
}

/** These at both sizes, each once it has been worked out. */
async function atBothSizes(page: Page, places: readonly string[], look: (where: string) => Promise<void>) {
  for (const place of places) {
    await goTo(page, `#/${place}`);
    await expect(page.getByText(/^(Reading|Working out) /)).toBeHidden({ timeout: 30_000 });
    for (const size of sizes) {
      await page.setViewportSize(size);
      await page.waitForTimeout(300);
      await look(`${place} at ${size.width}`);
    }
  }
}

/** The longest thing that the strip under the header says stands beside its buttons, in as many lines as it takes. */
async function expectJoinSentenceWhole(page: Page): Promise<void> {
  const strip = page.getByRole('region', { name: 'Search' });
  const words =
    'Planned in 5 min, aiming for 9 of 10 lines on time: 21 fewer late lines, 1343 h less late, 114 h 20 min less ' +
    'changeover. Runs of one metal were joined 12 times: stock costs 12,345.50 less.';
  await atBothSizes(page, ['board'], async (where) => {
    await strip.getByRole('status').evaluate((sentence, text) => {
      sentence.textContent = text;
    }, words);
    const over = await strip.evaluate((element) => [
      element.scrollWidth - element.clientWidth,
      element.scrollHeight - element.clientHeight,
    ]);
    expect(Math.max(...over), `${where}: the strip holds its sentence`).toBeLessThanOrEqual(0);
    await expectWhole(page, where);
  });
}

/** Undo and redo by turns say something on each screen; what stands there stays free to be pressed. */
async function expectNothingUnderMessages(page: Page): Promise<void> {
  let done = true;
  // Paper and floor know no undo.
  const places = screens.filter((screen) => !/^(print|floor)/.test(screen));
  await atBothSizes(page, places, async (where) => {
    await page.keyboard.press(done ? 'Control+z' : 'Control+Shift+z');
    done = !done;
    await expect(page.getByRole('alertdialog')).toContainText(done ? 'Redone' : 'Undone');
    expect(await underMessage(page), `${where}: under the message`).toEqual([]);
    if (!where.startsWith('orders at')) return;
    await goTo(page, '#/orders/+');
    await expect(page.getByRole('dialog').getByLabel('Customer')).toBeVisible();
    expect(await underMessage(page), `${where}, a new order: under the message`).toEqual([]);
    await goTo(page, '#/orders');
    await expect(page.getByRole('dialog')).toBeHidden();
  });
}

/** Two machines whose long names begin alike are told apart wherever one is chosen or read. */
async function expectBrakesReadable(page: Page): Promise<void> {
  const names = { B1: 'Brake 1, ten foot, long back gauge', B2: 'Brake 2, eight foot, at the door' };
  for (const [id, name] of Object.entries(names)) {
    await goTo(page, `#/shop/machines/${id}`);
    await type(page, 'Name', name);
    await page.getByRole('button', { name: 'Save' }).click();
    await expect(page.getByText(`Change machine ${id}: done.`)).toBeVisible();
  }
  await atBothSizes(page, ['board', 'load', 'floor/B1', 'learning', 'print'], async (where) => {
    for (const name of Object.values(names))
      await expect(page.getByText(name).filter({ visible: true }).first()).toBeVisible();
    await expectWhole(page, where);
  });
}

/** Longer figures, and the other paper. */
async function expectMillimetresWhole(page: Page): Promise<void> {
  await goTo(page, '#/settings');
  await page.getByRole('button', { name: /Units/ }).click();
  await page.getByRole('option', { name: 'millimetres' }).click();
  await page.getByRole('button', { name: 'Save' }).first().click();
  const papers = ['print', 'print/part?part=valley-w', 'print/purchases', 'print/cutting?run=4110%2F2'];
  await atBothSizes(page, ['orders', ...papers], (where) => expectWhole(page, where));
}
