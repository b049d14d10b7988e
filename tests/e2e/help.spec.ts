import { expect, host, test } from './app.ts';
import { openDemo } from './steps.ts';

const title = 'Your first fifteen minutes';

test(
  'the first fifteen minutes are read before there is a shop, and lead to their places in one',
  {
    tag: host,
  },
  async ({ app }) => {
    const { page } = app;
    const help = page.getByRole('dialog', { name: title });
    await page.getByRole('button', { name: title }).click();
    await expect(help.getByRole('listitem')).toHaveCount(8);
    await expect(help.getByRole('link')).toHaveCount(0);
    await page.keyboard.press('Escape');
    await expect(help).toBeHidden();

    await openDemo(page);
    await page.keyboard.press('F1');
    await expect(help.getByRole('heading', { name: 'Print the dispatch lists' })).toBeVisible();
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Help' }).click();
    await page.getByRole('menuitem', { name: 'List of keys' }).click();
    await expect(page.getByRole('dialog', { name: 'Keys' }).getByText(title)).toBeVisible();
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Help' }).click();
    await page.getByRole('menuitem', { name: title }).click();
    await help.getByRole('link', { name: 'Go there: Sheet sizes' }).click();
    await expect(help).toBeHidden();
    await expect(page.getByRole('region', { name: 'Sheet sizes' })).toBeVisible();
  },
);
