import type { Page } from '@playwright/test';
import { expect, host, test } from './app.ts';
import { goTo, lane, openDemo, operations } from './steps.ts';

/** The planner drafts, the floor follows what was published. */

const card = (page: Page) => page.getByRole('article');
const publishButton = (page: Page) => page.getByRole('banner').getByRole('button', { name: /^Publish/ });
const shearing = (page: Page) => operations(lane(page, 'Shear').getByRole('option'));

async function publishByHand(page: Page): Promise<void> {
  await goTo(page, '#/settings');
  await page.getByRole('button', { name: /Floor and paper follow/ }).click();
  await page.getByRole('option', { name: 'the plan published last' }).click();
  await page.getByRole('button', { name: 'Save' }).click();
  await expect(publishButton(page)).toHaveAccessibleName('Published: floor and paper follow this plan');
}

/** The line on the shear's card. */
async function onTheFloor(page: Page): Promise<string> {
  await goTo(page, '#/floor/S1');
  return (await card(page).getByRole('heading').textContent()) ?? '';
}

/** So many that lines end at other times. */
const PLACES = 12;

/** Put the first operation of the shear behind the next ones. */
async function moveFirstLater(page: Page): Promise<void> {
  await goTo(page, '#/board');
  const [first] = await shearing(page);
  await lane(page, 'Shear').getByRole('option').first().click();
  for (let place = 1; place <= PLACES; place++) {
    await page.keyboard.press('Alt+ArrowRight');
    await expect.poll(async () => (await shearing(page))[place]).toBe(first);
  }
}

test(
  'what is drafted reaches floor and paper when it is published, says what changed, and is gone back from',
  { tag: host },
  async ({ app }) => {
    const { page } = app;
    await openDemo(page);
    await publishByHand(page);
    const line = await onTheFloor(page);
    await goTo(page, '#/board');
    await page.keyboard.press('k');
    await page.getByRole('textbox', { name: 'Name' }).fill('Calm week');
    await page.getByRole('button', { name: 'Keep this plan' }).click();
    await expect(page.getByRole('row', { name: /Calm week/ })).toContainText(
      /\d+ lines? late, \d+ changeovers/,
    );
    await page.keyboard.press('Escape');

    await moveFirstLater(page);
    const second = (await shearing(page))[0]!.split(' ')[0]!;
    await expect(publishButton(page)).toHaveAccessibleName('Publish the plan: 1 machine would change');
    expect(await onTheFloor(page)).toBe(line);
    await goTo(page, '#/print/dispatch?machine=S1&days=7');
    const paper = page.getByRole('region', { name: 'Dispatch list of Shear' });
    await expect(paper.getByRole('row').filter({ hasText: /^1/ }).first()).toContainText(line);

    await goTo(page, '#/board');
    await page.keyboard.press('u');
    const moved = `${line} later, now No. ${PLACES + 1}`;
    await expect(page.getByRole('region', { name: 'Changes on Shear' })).toContainText(moved);
    await page.getByRole('textbox', { name: 'Note' }).fill('Rush first');
    await page.getByRole('button', { name: 'Publish', exact: true }).click();
    await expect(publishButton(page)).toBeDisabled();

    expect(await onTheFloor(page)).toBe(second);
    const changed = page.getByRole('region', { name: 'Changed in the plan' });
    await expect(changed).toContainText(moved);
    await changed.getByRole('button', { name: 'Seen' }).click();
    await expect(changed).toHaveCount(0);
    await goTo(page, '#/print/dispatch?machine=S1&days=7');
    await expect(paper).toContainText(/Plan published Mon 30 Nov 06:10: Rush first/);
    await expect(paper.getByRole('region', { name: 'Changed on Shear' })).toContainText(moved);

    await goTo(page, '#/board');
    await page.keyboard.press('k');
    await page.getByRole('button', { name: 'Compare Calm week' }).click();
    await expect(page.getByRole('table', { name: 'Lines that end at another time' })).toContainText(line);
    await page.getByRole('tab', { name: /Kept and published/ }).click();
    await page.getByRole('button', { name: 'Go back to Calm week' }).click();
    await expect.poll(async () => (await shearing(page))[0]).toBe(`${line} shearing`);
    expect(await onTheFloor(page)).toBe(second);
    await goTo(page, '#/board');
    await expect(publishButton(page)).toHaveAccessibleName('Publish the plan: 1 machine would change');

    await goTo(page, '#/settings');
    const done = page.getByRole('list').filter({ hasText: 'Rush first' });
    await expect(done.getByRole('listitem').first()).toContainText('Go back to “Calm week”');
    await expect(done).toContainText('Kept as “Calm week”');
    const again = await app.restart();
    expect(await onTheFloor(again)).toBe(second);
  },
);

test('the Cutting screen issues what the floor cuts; the draft’s runs are looked at beside it', async ({
  app,
}) => {
  test.slow();
  const { page } = app;
  await openDemo(page);
  await publishByHand(page);
  const runs = page.getByRole('grid', { name: 'Runs on the shear' }).getByRole('row');
  const shown = async (): Promise<string> => (await runs.nth(1).textContent()) ?? '';
  await goTo(page, '#/cutting');
  const first = await shown();
  await moveFirstLater(page);

  await goTo(page, '#/cutting');
  await expect(page.getByText(/The draft on the board has another queue for the shear/)).toBeVisible();
  await expect.poll(shown).toBe(first);
  await page.getByRole('radio', { name: 'The draft' }).click();
  await expect.poll(shown).not.toBe(first);
  await runs.nth(1).click();
  await expect(page.getByRole('heading', { name: 'Sheets' })).toBeVisible();
  for (const name of ['Issue sheets', 'Save CSV', 'Print', 'Add a step'])
    await expect(page.getByRole('button', { name })).toHaveCount(0);

  await page.getByRole('radio', { name: 'The published plan' }).click();
  await page.getByRole('button', { name: 'All runs' }).click();
  await runs.nth(1).click();
  await page.getByRole('button', { name: 'Issue sheets' }).click();
  await expect(page.getByText('sheets issued', { exact: true })).toBeVisible();
});
