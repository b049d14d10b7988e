import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from '@playwright/test';
import { counted } from '../../core/units/count.ts';
import { formatCutLength, MM_PER_INCH } from '../../core/units/length.ts';
import { expect, host, test, type App } from './app.ts';
import { pdfPages } from './pdf.ts';
import { openRun, OTHER, RUN, settings, steps, undo } from './run-steps.ts';
import { goTo, openDemo, takeBack } from './steps.ts';
import { inches } from '../support/writing.ts';

/** A run on the shear from the list to the paper, and the stock that it is cut from. */
test.describe.configure({ timeout: 180_000 });

const fact = (page: Page, term: string): Locator =>
  page
    .locator('dl div')
    .filter({ has: page.getByText(term, { exact: true }) })
    .locator('dd');
const plain = (text: string | null): string => (text ?? '').replaceAll(/\s+/g, ' ').trim();

test('a run opens to its sheets, its steps move by key, and undo brings them back', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/cutting');
  await page
    .getByRole('row')
    .filter({ hasText: `${RUN}, ` })
    .click();
  await expect(page.getByRole('heading', { name: `Run ${RUN}`, exact: true })).toBeVisible();
  const sheets = page.getByRole('img', { name: /^Sheet [A-Z]+: \d+ blanks$/ });
  await expect.poll(() => sheets.count()).toBeGreaterThan(1);
  await expect(page.getByRole('heading', { name: 'Before the first cut' })).toBeVisible();
  const before = await settings(page);
  const other = before.findIndex((setting) => setting !== before[0]);
  expect(other).toBeGreaterThan(0);

  await steps(page).nth(other).focus();
  await page.keyboard.press('Alt+ArrowUp');
  const swapped = [...before];
  swapped.splice(other - 1, 2, before[other] ?? '', before[other - 1] ?? '');
  await expect.poll(() => settings(page)).toEqual(swapped);
  await expect(page.getByRole('heading', { name: 'Steps, changed by hand' })).toBeVisible();
  await undo(page).click();
  await expect.poll(() => settings(page)).toEqual(before);
  await expect(page.getByRole('heading', { name: 'Steps', exact: true })).toBeVisible();
});

test('a step is removed, added and copied to another run; the lists say what is missing or too many', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  await openRun(page, RUN);
  const before = await settings(page);
  await page.getByRole('button', { name: 'Remove step 1' }).click();
  await expect(steps(page)).toHaveCount(before.length - 1);
  const faults = page.getByRole('alert').filter({ hasText: 'Cut as it is' });
  await expect(faults).toContainText(/missing|left on stack|finds nothing/);
  await undo(page).click();
  await expect.poll(() => settings(page)).toEqual(before);

  await page.getByRole('button', { name: 'Add a step' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Size cut off').fill('2 1/2 in');
  await dialog.getByRole('button', { name: 'Add', exact: true }).click();
  await expect(steps(page)).toHaveCount(before.length + 1);
  await expect(steps(page).last()).toContainText('2 1/2 in');
  await undo(page).click();
  await expect.poll(() => settings(page)).toEqual(before);

  await openRun(page, OTHER);
  const theirs = await steps(page).count();
  await openRun(page, RUN);
  await page.getByRole('button', { name: 'Copy step 1 to another run' }).click();
  await dialog.getByRole('combobox', { name: 'Run' }).fill(OTHER);
  await page.getByRole('option', { name: new RegExp(`^${OTHER}`) }).click();
  await dialog.getByRole('button', { name: 'Copy', exact: true }).click();
  await expect(page.getByRole('heading', { name: `Run ${OTHER}`, exact: true })).toBeVisible();
  await expect(steps(page)).toHaveCount(theirs + 1);
  await undo(page).click();
  await expect(steps(page)).toHaveCount(theirs);
});

test('stock is received, and the run and the purchase list are short no more; the history tells it', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  const sheet = 'galv-26-moss-48x120';
  await openRun(page, '4128/1');
  // An opened run is worked on for some seconds, and what is found may need a sheet fewer.
  const searching = page.getByText(/^Searching for better sheets/);
  await searching.waitFor({ timeout: 5_000 }).catch(() => undefined);
  await expect(searching).toHaveCount(0, { timeout: 30_000 });
  await expect(fact(page, 'Stock')).toHaveText(/of galv-26-moss-48x120, \d+ short$/);
  const short = Number(/(\d+) short/.exec((await fact(page, 'Stock').textContent()) ?? '')?.[1]);
  await goTo(page, `#/stock/${sheet}`);
  const dialog = page.getByRole('dialog');
  // Stock is told when every run is planned.
  await expect(dialog).toContainText(`${short} short`, { timeout: 45_000 });
  await dialog.getByLabel('Pieces', { exact: true }).fill(String(short));
  await dialog.getByLabel('Note').fill('truck on Monday');
  await dialog.getByRole('button', { name: 'Receive' }).click();
  await expect(dialog).toContainText('0 left');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('row').filter({ hasText: sheet })).toContainText('enough');
  await page.getByRole('tab', { name: 'History' }).click();
  const entry = page.getByRole('row').filter({ hasText: 'truck on Monday' });
  await expect(entry).toContainText(`+${short}`);
  await openRun(page, '4128/1');
  await expect(page.getByText('on hand', { exact: true })).toBeVisible();
  await takeBack(page);
  await expect(page.getByText(`${short} short`, { exact: true })).toBeVisible();
});

test('the sheets of a run are issued from stock once, remnants kept, and taken back as one', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  await openRun(page, RUN);
  const figures = await page.locator('dl').first().textContent();
  const kept = Number(/^\d+/.exec((await fact(page, 'Remnants kept').textContent()) ?? '')?.[0]);
  const before = await settings(page);
  const take = page.getByRole('button', { name: 'Issue sheets' });
  await take.click();
  await expect(page.getByText('sheets issued', { exact: true })).toBeVisible();
  await expect(take).toBeHidden();
  await expect.poll(() => settings(page)).toEqual(before);
  await expect(page.getByRole('button', { name: 'Add a step' })).toBeHidden();

  await goTo(page, '#/stock');
  await page.getByRole('tab', { name: 'History' }).click();
  const entries = page.getByRole('row').filter({ hasText: `for run ${RUN}` });
  const pieces = await entries
    .filter({ hasText: 'kept' })
    .locator('[role=gridcell]:nth-child(4)')
    .allTextContents();
  expect(pieces.reduce((sum, text) => sum + Number(text), 0)).toBe(kept);
  await takeBack(page);
  await expect(entries).toHaveCount(0);
  await openRun(page, RUN);
  await expect(take).toBeVisible();
  await expect(page.locator('dl').first()).toHaveText(figures ?? '');
});

test('a walk-in cut typed in one line lands in the run of its metal', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/cutting');
  const field = page.getByRole('textbox', { name: 'Walk-in cut' });
  await field.fill('5 pcs, 9 1/2 in × 10 ft, 26 ga, moss');
  await expect(page.getByText('Understood: 5 pcs, 9 1/2 in × 10 ft, 26 ga, Moss')).toBeVisible();
  await field.press('Enter');
  await expect(field).toHaveValue('');
  await goTo(page, `#/cutting/${encodeURIComponent('walk-in-1/1')}`);
  const heading = page.getByRole('heading', { name: 'Run 4128/1', exact: true });
  await expect(heading).toBeVisible();
  await expect(page.getByText(/walk-in-1\/1: 5 of 9 1\/2 in × 120 in/)).toBeVisible();
  const pieces = async () => {
    const cut = await steps(page).allTextContents();
    const each = cut.flatMap((text) =>
      [...text.matchAll(/walk-in-1\/1: ([1-5])/g)].map(([, n]) => Number(n)),
    );
    return each.reduce((sum, n) => sum + n, 0);
  };
  await expect.poll(pieces).toBe(5);
});

/** The desktop saves what its dialogs are told; a browser downloads, and prints the same route. */
async function saveBoth(app: App, csv: string, pdf: string): Promise<void> {
  const { page, electron } = app;
  if (electron)
    await electron.evaluate(
      ({ dialog, session }, paths) => {
        dialog.showSaveDialog = () => Promise.resolve({ canceled: false, filePath: paths.pdf });
        session.defaultSession.on('will-download', (_, item) => item.setSavePath(paths.csv));
      },
      { csv, pdf },
    );
  const download = electron ? null : page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save CSV' }).click();
  await (await download)?.saveAs(csv);
  await expect.poll(() => existsSync(csv)).toBe(true);
  await page.getByRole('button', { name: 'Print' }).click();
  await expect(page.locator('html')).toHaveAttribute('data-print-ready', 'true');
  if (electron) await page.getByRole('button', { name: 'Save PDF' }).click();
  else await page.pdf({ path: pdf });
}

test(
  'figures and steps are the same on the screen, in the CSV file and in the PDF',
  { tag: host },
  async ({ app }) => {
    const { page } = app;
    await openDemo(page);
    await openRun(page, RUN);
    const facts = await page
      .locator('dl')
      .first()
      .locator('div')
      .evaluateAll((all) =>
        all.map((one) => [
          one.querySelector('dt')?.textContent ?? '',
          one.querySelector('dd')?.textContent ?? '',
        ]),
      );
    const rows = await steps(page).evaluateAll((all) =>
      all.map((row) =>
        [...row.querySelectorAll('[role=gridcell] > span')].map((cell) => cell.textContent ?? ''),
      ),
    );
    const [csvPath, pdfPath] = [join(app.dataDir, 'steps.csv'), join(app.dataDir, 'steps.pdf')];
    await saveBoth(app, csvPath, pdfPath);
    await expect
      .poll(async () => (await pdfPages(pdfPath).catch(() => [])).length, { timeout: 70_000 })
      .toBeGreaterThan(0);
    const pages = await pdfPages(pdfPath);
    // A PDF breaks words between lines: compared without any space.
    const paper = pages.join(' ').replaceAll(/\s+/g, '');

    const [head, ...below] = readFileSync(csvPath, 'utf8').trim().split('\r\n').map(cells);
    expect(head).toHaveLength(17);
    const above = (line: string[]) => ['caution', 'warning', 'note'].includes(line[0] ?? '');
    expect(below.filter(above).join(' ')).toContain('Hands clear of the blade and the hold-downs.');
    const lines = below.filter((row) => !above(row));
    expect(lines).toHaveLength(rows.length);
    expect(rows.length).toBeGreaterThan(3);
    lines.forEach((line, at) => {
      const [number, feed, setting, cut, each, stroke, drop, held, forLines, blanks, soFar] = asShown(line);
      expect(rows[at]?.filter(Boolean).slice(0, 10)).toEqual(
        [
          number,
          feed,
          setting,
          cut,
          `${each} each`,
          stroke,
          drop,
          held,
          ...(forLines ? [forLines] : []),
          `${blanks} (${soFar})`,
        ].slice(0, 10),
      );
      expect(paper).toContain(onPaper(line).replaceAll(/\s+/g, ''));
    });
    expect(facts.length).toBeGreaterThan(6);
    for (const [term, value] of facts) expect(paper).toContain(`${term}${value}`.replaceAll(/\s+/g, ''));
    for (const [index, text] of pages.entries()) {
      expect(text).toMatch(/guards on, hands clear/i);
      expect(plain(text)).toContain(`page ${index + 1} of ${pages.length}`);
    }
  },
);

/** A line of the file in the words of screen and paper, which write a length as a fraction where it is one. */
function asShown([, , , number, stack, fed, size, setBy, cut, each, ...more]: string[]): string[] {
  const length = formatCutLength(Number(size) * MM_PER_INCH, inches);
  const setting = { 'no cut': 'no cut', 'scribed line': `to a line at ${length}`, 'back gauge': length };
  const pieces = counted(Number(fed), 'piece');
  const by = setting[setBy as keyof typeof setting];
  return [number ?? '', `${stack}, ${pieces}`, by, cut ?? '', each ?? '', ...more];
}

/** The begin of the same row on paper: which step, what is fed, what is set; lengths there have no unit. */
function onPaper([, , , number, stack, fed, size, setBy]: string[]): string {
  const length = formatCutLength(Number(size) * MM_PER_INCH, inches).replace(' in', '');
  const setting = { 'no cut': 'no cut', 'scribed line': `line ${length}`, 'back gauge': length };
  return `${number}${stack}${fed === '1' ? '' : `×${fed}`}${setting[setBy as keyof typeof setting]}`;
}

/** The cells of a CSV line (RFC 4180) without line breaks in them. */
const cells = (line: string): string[] =>
  [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^",]*))/g)].map(
    ([, quoted, bare]) => quoted?.replaceAll('""', '"') ?? bare ?? '',
  );
