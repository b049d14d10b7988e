import { expect, type Locator, type Page } from '@playwright/test';
import { mmToInches, parseLength } from '../../core/units/length.ts';

/** Steps that several stories share. */

export async function openDemo(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open the demo shop' }).click();
  await expect(lane(page, 'Shear')).toBeVisible();
}

export const lane = (page: Page, machine: string): Locator =>
  page.getByRole('listbox', { name: `${machine} queue` });

/** Inches that a figure such as "9 1/2 in" or "6.927 in" says; NaN for none. */
export async function inchesIn(figure: Locator): Promise<number> {
  const length = parseLength((await figure.textContent()) ?? '', { units: 'in', decimals: 'point' });
  return length.ok ? mmToInches(length.value) : NaN;
}

/** "4101/1 bending" of each bar, in queue order. */
export const operations = (bars: Locator): Promise<string[]> =>
  bars.evaluateAll((all) => all.map((bar) => bar.getAttribute('aria-label')?.split(',')[0] ?? ''));

/** The figure above the board with this heading. */
export const figure = (page: Page, term: string): Locator =>
  page.locator('dl div').filter({ has: page.getByText(term, { exact: true }) });

/** Find a line among the orders, show its first step on the board, and read its place in the queue, from 1. */
export async function placeInQueue(page: Page, lineId: string): Promise<number> {
  await goTo(page, '#/orders');
  await page.getByLabel('Find lines').fill(lineId);
  await page.getByRole('gridcell', { name: lineId, exact: true }).click();
  await page.getByRole('button', { name: 'Show on the board' }).click();
  const bar = page.getByRole('option', { selected: true });
  await expect(bar).toHaveAttribute('aria-label', new RegExp(`^${lineId} `));
  return Number(await bar.getAttribute('aria-posinset'));
}

/** Plan the week, stop after some seconds, and wait until the plan is stored. */
export async function planFor(page: Page, seconds: number): Promise<void> {
  await page.getByRole('button', { name: 'Plan the week', exact: true }).click();
  await expect(page.getByText(/Planning: \d+ of/)).toBeVisible();
  await page.waitForTimeout(seconds * 1000);
  // On a busy machine the dispatch rules, which better the demo, may not be through yet.
  await expect(page.getByText(/Planning: .*, so far /)).toBeVisible({ timeout: 20_000 });
  await page.getByRole('button', { name: /Stop, keep the best so far/ }).click();
  await expect(page.getByRole('button', { name: 'Plan the week', exact: true })).toBeVisible();
}

/** Type a rush order of one line, 9001/1, due on Tuesday, and save it. */
export async function typeRush(page: Page, part: string, pieces: string): Promise<void> {
  await goTo(page, '#/orders/+');
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Number').fill('9001');
  await dialog.getByLabel('Customer').fill('Invented Gutters');
  await dialog.getByLabel('Due').fill('2026-12-01');
  await dialog.getByText('Rush', { exact: true }).click();
  await dialog.getByRole('combobox', { name: 'Part' }).fill(part);
  await page.getByRole('option').first().click();
  await dialog.getByLabel('Pieces', { exact: true }).fill(pieces);
  await dialog.getByLabel('Pieces', { exact: true }).blur();
  await dialog.getByRole('button', { name: 'Save' }).click();
}

/** Type into a field of a form and leave it. */
export async function type(page: Page, label: string, text: string): Promise<void> {
  const field = page.getByRole('textbox', { name: label, exact: true });
  await field.fill(text);
  await field.blur();
}

/** Go to a screen by its address, "#/import/orders". */
export const goTo = (page: Page, address: string): Promise<void> =>
  page.evaluate((hash) => {
    window.location.hash = hash;
  }, address);

/** What the window says in its message line. */
export const said = (page: Page) => page.getByRole('alertdialog');

/** Take back what was reported last. */
export const takeBack = (page: Page): Promise<void> =>
  said(page).getByRole('button', { name: 'Take back' }).click();
