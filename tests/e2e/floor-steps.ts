import { join } from 'node:path';
import type { Page } from '@playwright/test';
import Database from 'better-sqlite3';
import { goTo } from './steps.ts';

/** The operation that a floor screen is about. */
export const card = (page: Page) => page.getByRole('article');

/** The floor screen of a machine, and the line on its card. */
export async function standAt(page: Page, machine: string): Promise<string> {
  await goTo(page, '#/floor');
  await page.getByRole('radio', { name: machine }).click();
  return (await card(page).getByRole('heading').textContent()) ?? '';
}

/** What was reported from the floor so far, as the data file of an app that was closed holds it. */
export function factsIn(dataDir: string): string[] {
  const file = new Database(join(dataDir, 'foldweek.db'), { readonly: true });
  try {
    const rows = file.prepare("SELECT json_extract(command, '$.do') AS what FROM fact ORDER BY id").all();
    return (rows as { what: string }[]).map(({ what }) => what);
  } finally {
    file.close();
  }
}
