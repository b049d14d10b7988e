import { expect, test } from './app.ts';
import { goTo, openDemo } from './steps.ts';

test('an opened run is worked on beside the screen until its sheets are proven or it says how near they are', async ({
  app,
}, info) => {
  test.setTimeout(120_000);
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/cutting');
  const rows = page.getByRole('grid', { name: 'Runs on the shear' }).getByRole('row');
  await expect(rows.nth(1)).toBeVisible({ timeout: 60_000 });
  const looking = page.getByText(/Searching for better sheets/);
  const proof = page.getByText(/(proven (fewest sheets|least stock cost)|at most .* % above the least)/);
  for (const at of [1, 3]) {
    await rows.nth(at).dblclick();
    await expect(proof.first()).toBeVisible({ timeout: 30_000 });
    await page.screenshot({ path: info.outputPath(`run-${at}.png`) });
    await expect(looking).toBeHidden({ timeout: 20_000 });
    await expect(page.getByText(/stopped working/)).toBeHidden();
    await goTo(page, '#/cutting');
  }
});
