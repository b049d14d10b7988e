import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, host, test } from './app.ts';
import { goTo, lane, openDemo, planFor } from './steps.ts';

/**
 * Every screen at two sizes, light and dark, looked at by the machine for what it can see: nothing wider than the
 * window, nothing said on the console. With FOLDWEEK_PICTURES=1 the README's pictures are taken again.
 */
const screens = [
  'board',
  'orders',
  'orders/import',
  'load',
  'cutting',
  'cutting/4110%2F2',
  'stock',
  'floor/B1',
  'learning',
  'shop',
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
  test.setTimeout(180_000);
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
        const subject = named[screen] ?? screen.replace('/', '-');
        const name = `${subject}-${colorScheme}${size.width === 1440 ? '' : '-small'}.png`;
        if (!again || (size.width === 1440 && inReadme.includes(subject)))
          await page.screenshot({ path: join(folder, name) });
      }
    }
  }
  expect(said).toEqual([]);
});
