import type { Locator, Page } from '@playwright/test';
import { demoShop } from '../core/demo-data/demo-shop.ts';
import { expect, test } from './app.ts';
import { card, standAt } from './floor-steps.ts';
import { goTo, lane, openDemo, placeInQueue, said, type } from './steps.ts';

/** Steps of a routing besides shearing and bending, from the bench that is added to the line that is packed. */

/** A bench or an outside shop, with usual figures. */
async function addPlace(page: Page, kind: string, code: string, name: string): Promise<void> {
  await goTo(page, '#/shop/machines/+');
  const form = page.getByRole('form', { name: 'Add machine' });
  await form.getByRole('button', { name: /Kind/ }).click();
  await page.getByRole('option', { name: kind, exact: true }).click();
  await type(page, 'Code', code);
  await type(page, 'Name', name);
  await form.getByRole('button', { name: 'Save', exact: true }).click();
  await expect(
    page.getByRole('form', { name: `${code} ${name}` }).or(page.getByText(name).first()),
  ).toBeVisible();
}

/** All pieces of what stands on the card are good. */
async function doIt(page: Page, start: 'Start' | 'Sent' = 'Start'): Promise<void> {
  await card(page).getByRole('button', { name: start, exact: true }).click();
  await expect(card(page).getByText(/^(Under way|Away)/)).toBeVisible();
  await page.waitForTimeout(900);
  await page.keyboard.press('d');
  await page.getByRole('button', { name: 'They are good' }).click();
}

/** Whether some of a bar stands between the lanes' heads and the panel beside them. */
async function inSight(bar: Locator): Promise<boolean> {
  const box = await bar.boundingBox();
  const lanes = await bar.locator('xpath=ancestor::*[local-name()="svg"][1]').boundingBox();
  return box !== null && lanes !== null && box.x < lanes.x + lanes.width && box.x + box.width > lanes.x;
}

/** Goes along the line's steps from the panel of the operation that is selected. @returns each bar's name, as it stands in its lane */
async function alongRouting(page: Page): Promise<string[]> {
  const jumps = page.getByRole('group', { name: 'Routing' }).getByRole('button');
  const names: string[] = [];
  for (const k of Array.from({ length: await jumps.count() }).keys()) {
    if (await jumps.nth(k).isEnabled()) await jumps.nth(k).click();
    const bar = page.getByRole('option', { selected: true });
    await expect(bar).toHaveCount(1);
    // By its box: the desktop's older engine does not watch shapes of a drawing come into sight.
    await expect.poll(() => inSight(bar)).toBe(true);
    names.push(((await bar.getAttribute('aria-label')) ?? '').split(',')[0]!);
  }
  return names;
}

/** Moves the step of a line that is next to the front of its queue, place by place. @returns its machine's name */
async function firstInItsQueue(page: Page, line: string): Promise<string> {
  const place = await placeInQueue(page, line);
  // Moved, its bar may stand days away, out of sight; the panel follows it.
  const where = page.getByText(/, position \d+ of \d+$/);
  for (let at = place; at > 1; at--) {
    await page.keyboard.press('Alt+ArrowLeft');
    await expect(where).toHaveText(new RegExp(`, position ${at - 1} of`));
  }
  return (await where.textContent())!.split(', position')[0]!;
}

test('a shop gets a packing bench and an outside shop; a part that needs them goes through both, on the board and on the floor', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  const line = await standAt(page, 'S1 Shear');
  const partId = demoShop().line.find(({ id }) => id === line)?.partId;
  const part = demoShop().part.find(({ id }) => id === partId)!;
  const { name } = part;
  await goTo(page, `#/shop/parts/${part.id}`);
  await expect(page.getByRole('form', { name, exact: true })).toBeVisible();
  await expect(page.getByText('Further steps')).toHaveCount(0);

  await addPlace(page, 'packing bench', 'P1', 'Packing');
  await addPlace(page, 'outside shop', 'O1', 'Coater');
  await goTo(page, `#/shop/parts/${part.id}`);
  const steps = page.getByRole('form', { name, exact: true });
  await steps.getByText('Packing', { exact: true }).click();
  await steps.getByText('Outside work', { exact: true }).click();
  const outside = steps.getByRole('group', { name: 'Outside work' });
  await outside.getByRole('textbox', { name: 'Away' }).fill('2');
  await outside.getByRole('textbox', { name: 'What is to be done' }).fill('Powder coat, white');
  await outside.getByRole('textbox', { name: 'What is to be done' }).blur();
  await steps.getByRole('button', { name: 'Save', exact: true }).click();
  await expect(steps.getByRole('button', { name: 'Print the drawing' })).toBeVisible();

  await goTo(page, '#/board');
  await expect(lane(page, 'Coater')).toBeVisible();
  await lane(page, 'Shear')
    .getByRole('option', { name: new RegExp(`^${line} shearing,`) })
    .click();
  expect(await alongRouting(page)).toEqual(
    ['shearing', 'bending', 'outside work', 'packing'].map((step) => `${line} ${step}`),
  );

  await goTo(page, `#/print/traveller?line=${encodeURIComponent(line)}`);
  await expect(page.getByText(/then Outside work 2 days \(Powder coat, white\), then Packing/)).toBeVisible();

  await standAt(page, 'S1 Shear');
  await doIt(page);
  await expect(said(page)).toContainText(`Finish ${line} shearing`);
  const brake = await firstInItsQueue(page, line);
  await standAt(page, `${brake.startsWith('Long') ? 'B1' : 'B2'} ${brake}`);
  await expect(card(page).getByRole('heading').first()).toHaveText(line);
  await doIt(page);
  await expect(said(page)).toContainText(`Finish ${line} bending`);

  await standAt(page, 'O1 Coater');
  await expect(card(page).getByText('Powder coat, white')).toBeVisible();
  await doIt(page, 'Sent');
  await expect(said(page)).toContainText(`Finish ${line} outside work`);
  expect(await firstInItsQueue(page, line)).toBe('Packing');
  await standAt(page, 'P1 Packing');
  await expect(card(page).getByRole('heading').first()).toHaveText(line);
  await doIt(page);
  await expect(said(page)).toContainText(`Finish ${line} packing`);
  await goTo(page, '#/board');
  await expect(lane(page, 'Packing')).toBeVisible();
  await expect(lane(page, 'Packing').getByRole('option', { name: new RegExp(`^${line} `) })).toHaveCount(0);
});
