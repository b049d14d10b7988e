import type { Locator, Page } from '@playwright/test';
import { expect } from './app.ts';
import { goTo } from './steps.ts';

/** A run of the demo shop of three lines, proven at once, and another of its metal. */
export const RUN = '4110/2';
export const OTHER = '4117/2';

export const undo = (page: Page) => page.getByRole('banner').getByRole('button', { name: /^Undo: / });
export const steps = (page: Page): Locator => page.getByRole('grid', { name: 'Steps' }).getByRole('row');
export async function openRun(page: Page, runId: string): Promise<void> {
  await goTo(page, `#/cutting/${encodeURIComponent(runId)}`);
  const heading = page.getByRole('heading', { name: `Run ${runId}`, exact: true });
  await expect(heading).toBeVisible();
}

/** "Step 3, 9 1/2 in, blank …" of each row, less its number: what is set, in the order it is cut. */
export const settings = (page: Page): Promise<string[]> =>
  steps(page).evaluateAll((rows) =>
    rows.map((row) => (row.getAttribute('aria-label') ?? '').replace(/^Step \d+, /, '')),
  );
