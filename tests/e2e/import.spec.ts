import type { Page } from '@playwright/test';
import { expect, host, test } from './app.ts';
import { goTo, openDemo, said } from './steps.ts';

/** A file of another system: read, asked about, taken, and taken again when it comes with a change. */

const rows = (quantity: string): string[] => [
  'Auftragsliste Woche 50;;;;;;;;',
  'Auftrags-Nr.;Kunde;Artikel;Menge;Werkstoff;Gauge;Farbe;Länge (mm);Liefertermin',
  `B-701;Dachhandwerk Morgentau;coping-8;${quantity};galv;24;moss;2.500;14.12.2026`,
  'B-701;;coping-8;12;galv;24;Tannengrün;2.400;14.12.2026',
  'B-702;Spenglerei Nebelkranz;coping-8;25;galv;24;Tannengrün;2.500;15.12.2026',
  'Summe;;;77;;;;;',
];

async function choose(page: Page, lines: readonly string[]): Promise<void> {
  await goTo(page, '#/import/orders');
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({
      name: 'auftraege.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(lines.join('\r\n'), 'latin1'),
    });
}

test(
  'a foreign file is asked about once, taken, and changes what changed when it comes again',
  { tag: host },
  async ({ app }) => {
    const { page } = app;
    await openDemo(page);
    await choose(page, rows('40'));
    await expect(page.getByText(/row 1 above is a title/)).toBeVisible();
    await expect(page.getByText(/Row 6 is a sum/)).toBeVisible();
    await expect(page.getByText('3 rows waiting for an answer')).toBeVisible();
    await expect(page.getByRole('button', { name: 'Import 0 lines', exact: true })).toBeDisabled();

    await expect(page.getByText(/In “Länge \(mm\)”, row 3, “2.500” can be/)).toBeVisible();
    await page.getByRole('button', { name: /^2500 mm/ }).click();
    await expect(page.getByText('1 line ready')).toBeVisible();
    await expect(
      page.getByText('The shop has no colour “Tannengrün”. Which of its own is it?'),
    ).toBeVisible();
    await page.getByRole('button', { name: 'Another…' }).click();
    await page.getByRole('combobox', { name: 'The colour that “Tannengrün” is' }).fill('moss');
    await page.getByRole('option', { name: /moss/ }).click();
    await expect(page.getByText('3 lines ready')).toBeVisible();
    await page.getByRole('button', { name: 'Import 3 lines', exact: true }).click();
    await expect(said(page)).toContainText('3 lines imported from auftraege.csv.');
    await expect(page.getByRole('heading', { name: 'All imported' })).toBeVisible();

    await choose(page, rows('44'));
    await expect(page.getByText('1 of them changed')).toBeVisible();
    await expect(page.getByText('2 lines already exist')).toBeVisible();
    await expect(page.getByRole('row', { name: /Changed/ })).toContainText('was 40');
    await page.getByRole('button', { name: 'Import 1 line', exact: true }).click();
    await expect(said(page)).toContainText('1 changed');
    await said(page).getByRole('button', { name: 'Undo' }).click();
    await expect(page.getByText('1 of them changed')).toBeVisible();
  },
);

test('a file of colours is pasted as rows, fixed by keys and taken', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/import/colours');
  await page
    .getByLabel('Or paste rows here, the headings first')
    .fill('code\tname\tswatch\nfir\tFir green\t#2f5d3a\nsand\tSand\tyellowish');
  await page.getByRole('button', { name: 'Read these rows' }).click();
  await expect(page.getByText('1 row to fix')).toBeVisible();
  const grid = page.getByRole('grid', { name: 'Rows of the file' });
  await grid.focus();
  await page.keyboard.press('End');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Control+a');
  await page.keyboard.type('#d8c79a');
  await page.keyboard.press('Enter');
  await expect(page.getByText('2 colours ready')).toBeVisible();
  await expect(grid).toBeFocused();
  await page.getByRole('button', { name: 'Import 2 colours', exact: true }).click();
  await expect(said(page)).toContainText('2 colours imported');
});
