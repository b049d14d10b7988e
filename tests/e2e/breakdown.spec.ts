import { expect, test } from './app.ts';
import { figure, goTo, lane, openDemo, type } from './steps.ts';

/** A machine goes down: the hours are saved, two plans are weighed, one is taken, and both steps can be undone. */

test('a machine that is down gets a repair that is compared with keeping the order, and undo brings it back', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  const late = await figure(page, 'Late lines').textContent();
  await page.getByRole('button', { name: 'Long brake: more' }).click();
  await page.getByRole('menuitem', { name: /Machine down/ }).click();
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByRole('button', { name: /Long brake/ })).toBeVisible();
  await expect(dialog.getByText('Before anyone works on it: lock out, tag out and try it.')).toBeVisible();
  await dialog.getByLabel('For how long').fill('0');
  await dialog.getByLabel('Reason').fill('ram leaks');
  await dialog.getByRole('button', { name: 'Save and look for a repair' }).click();
  await expect(dialog.getByText('must be above 0')).toBeVisible();
  await expect(dialog.getByLabel('Reason')).toHaveValue('ram leaks');
  await dialog.getByLabel('For how long').fill('30');
  await dialog.getByLabel('Reason').click();
  await dialog.getByRole('button', { name: 'Save and look for a repair' }).click();

  await expect(page.getByRole('heading', { name: 'Machine down: Long brake' })).toBeVisible();
  const kept = page.getByRole('region', { name: 'Keep the order, shift the times' });
  await expect(kept.getByText(/lines? (is|are) late; \d+ (was|were) before/)).toBeVisible();
  await expect(kept.getByText('No operation moves.')).toBeVisible();
  await expect(kept.getByText(/lines end at another time than before, .* in all/)).toBeVisible();
  const few = page.getByRole('region', { name: 'Few moves' });
  await few.getByLabel('Moves at most').fill('3');
  await few.getByLabel('Moves at most').blur();
  await expect(few.getByText(/this card still improves/)).toBeHidden({ timeout: 20_000 });
  await expect(few.getByText(/^[123] operations? moves?\./)).toBeVisible();
  await expect(
    page.getByRole('region', { name: 'Best plan' }).getByText(/operations? moves?\./),
  ).toBeVisible();
  await few.getByRole('button', { name: 'Use few moves' }).click();
  await expect(page.getByRole('dialog')).toBeHidden();
  const step = 'Repair the plan, few moves: Long brake, machine down';
  await expect(page.getByText(`${step}: done.`)).toBeVisible();

  await expect(page.getByRole('img', { name: /^Long brake stopped until .*: ram leaks$/ })).toBeVisible();

  await page.keyboard.press('Control+z');
  await expect(page.getByText(`Undone: ${step}.`)).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(page.getByText(/^Undone: Add downtime B1-/)).toBeVisible();
  await expect(figure(page, 'Late lines')).toHaveText(late ?? '');
});

test('an operator who is out stops the machine that waits; the order can be kept', async ({ app }) => {
  const { page } = app;
  await openDemo(page);
  await page.keyboard.press('o');
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByLabel('Reason')).toHaveValue('Operator out');
  await dialog.getByRole('button', { name: 'Save and look for a repair' }).click();
  await expect(page.getByRole('heading', { name: /^Operator out: / })).toBeVisible();
  await expect(page.getByText('No operation moves.').first()).toBeVisible();
  await page.keyboard.press('1');
  await expect(dialog).toBeHidden();
  await expect(page.getByRole('button', { name: /^Undo: Add downtime/ })).toBeVisible();
});

test('a stopped machine is back early or stands longer: from its label, its menu and its own screen', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  await page.keyboard.press('d');
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Reason').fill('blade');
  await dialog.getByRole('button', { name: 'Save and look for a repair' }).click();
  await expect(page.getByRole('heading', { name: /^Machine down: / })).toBeVisible();
  await page.keyboard.press('1');
  const label = page.getByRole('img', { name: / stopped until .*: blade$/ });
  const until = await label.getAttribute('aria-label');

  await page.getByRole('button', { name: 'Long brake: more' }).click();
  await page.getByRole('menuitem', { name: /longer… blade/ }).click();
  await expect(dialog.getByText(/^Before it runs again: .*guards on/)).toBeVisible();
  await dialog.getByRole('button', { name: '4 h longer' }).click();
  await expect(page.getByRole('heading', { name: /^Machine down: / })).toBeVisible();
  await page.keyboard.press('1');
  await expect(label).not.toHaveAttribute('aria-label', until ?? '');

  await goTo(page, '#/floor/B1');
  await page.getByRole('button', { name: 'Back, or longer' }).click();
  await dialog.getByRole('button', { name: '1 h longer' }).click();
  await expect(dialog).toBeHidden();
  await page.getByRole('button', { name: 'Back, or longer' }).click();
  await dialog.getByRole('button', { name: 'Back now' }).click();
  await expect(page.getByRole('button', { name: 'Back, or longer' })).toBeHidden();
  await goTo(page, '#/board');
  await expect(lane(page, 'Shear')).toBeVisible();
  await expect(label).toBeHidden();
});

test('where people are counted, so many are out: the board shows it, the calendars keep it, undo brings all back', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  await goTo(page, '#/settings');
  await page.getByText('People are short: limit how many work at once').click();
  await type(page, 'People at work at once', '3');
  await page.getByRole('button', { name: 'Save' }).first().click();
  await expect(page.getByText('Change settings: done.')).toBeVisible();
  await goTo(page, '#/board');
  await expect(lane(page, 'Shear')).toBeVisible();
  const late = await figure(page, 'Late lines').textContent();

  await page.keyboard.press('o');
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('How many people').fill('4');
  await dialog.getByLabel('For how long').fill('30');
  await dialog.getByLabel('Reason').fill('two at a course');
  await dialog.getByRole('button', { name: 'Save and look for a repair' }).click();
  await expect(dialog.getByText('4 people cannot be out: 3 work at once.')).toBeVisible();
  await dialog.getByLabel('How many people').fill('2');
  await dialog.getByLabel('Reason').click();
  await dialog.getByRole('button', { name: 'Save and look for a repair' }).click();
  await expect(page.getByRole('heading', { name: 'Operator out: 2 people' })).toBeVisible();
  await expect(dialog.getByText(/of 3 who work at once, 1 is left/)).toBeVisible();
  const few = page.getByRole('region', { name: 'Few moves' });
  await expect(few.getByText(/this card still improves/)).toBeHidden({ timeout: 20_000 });
  await page.keyboard.press('1');
  await expect(dialog).toBeHidden();
  const band = page.getByRole('img', { name: /^2 people out, .*two at a course/ });
  await expect(band).toBeVisible();

  await goTo(page, '#/shop/calendars');
  await expect(page.getByText(/^2 people out, /)).toBeVisible();
  await page.getByRole('button', { name: 'Remove out-1' }).click();
  await expect(page.getByText('All 3 who work at once are there.')).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(page.getByText(/^2 people out, /)).toBeVisible();
  await page.keyboard.press('Control+z');
  await goTo(page, '#/board');
  await expect(band).toBeHidden();
  await expect(figure(page, 'Late lines')).toHaveText(late ?? '');
});
