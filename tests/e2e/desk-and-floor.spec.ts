import type { Page } from '@playwright/test';
import type { Command } from '../../core/edit/command.ts';
import { viewPlan } from '../../core/planning/plan-view.ts';
import type { Shop } from '../../core/shop/state.ts';
import { instant } from '../../core/units/brand.ts';
import { desktop, expect, host, test } from './app.ts';
import { card, factsIn, standAt } from './floor-steps.ts';
import { NOW } from './open.ts';
import { goTo, openDemo, said } from './steps.ts';

/** Desk and floor work on the same orders at once: nobody's work is reversed, and what is wrong is put right in sight. */

const now = Date.parse(NOW) / 1000;

/** Ask the host as another client does, under a name of its own. */
async function ask<T>(page: Page, name: string, input: unknown): Promise<T> {
  const reply = await page.evaluate(
    async (asked) => {
      const caller = 'floor tablet';
      if (window.bridge) return window.bridge.call(asked.name, asked.input, caller);
      const response = await fetch(`/call/${asked.name}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', 'x-caller': caller },
        body: JSON.stringify(asked.input),
      });
      return response.json() as Promise<unknown>;
    },
    { name, input },
  );
  const { ok, value, error } = reply as { ok: boolean; value: T; error?: { message: string } };
  if (!ok) throw new Error(error?.message);
  return value;
}
const readShop = async (page: Page): Promise<Shop> => (await ask<{ shop: Shop }>(page, 'shop.read', {})).shop;
const report = (page: Page, command: Command) => ask(page, 'edit.apply', { command });

/** A line that can be made at once from first to last, with the machines that it is planned on. */
async function aReadyLine(page: Page) {
  const shop = await readShop(page);
  const plan = viewPlan(shop, instant(now));
  if (!plan.ok) throw new Error('the demo shop has no plan');
  const { queues } = plan.value;
  const machineOf = (operation: string) => Object.keys(queues).find((id) => queues[id]?.includes(operation));
  const busy = new Set(shop.record.filter(({ end }) => end === null).map(({ machineId }) => machineId));
  for (const shear of queues.S1 ?? []) {
    const lineId = shear.split(':')[0]!;
    const line = shop.line.find(({ id }) => id === lineId)!;
    const brake = machineOf(`${lineId}:brake`);
    if (brake && !busy.has(brake) && !shop.record.some(({ id }) => id.startsWith(`${lineId}:`)))
      return { line, machines: { shear: 'S1', brake } };
  }
  throw new Error('no line of the demo shop can be made at once');
}

test(
  'an order that is changed while the floor finishes its line is shown in both versions, and nothing is reversed',
  { tag: host },
  async ({ app }) => {
    const { page } = app;
    await openDemo(page);
    const { line, machines } = await aReadyLine(page);
    await goTo(page, `#/orders/${line.orderId}`);
    const dialog = page.getByRole('dialog', { name: `Work order ${line.orderId}` });
    const pieces = dialog
      .getByRole('group', { name: `Line ${line.id}` })
      .getByLabel('Pieces', { exact: true });
    const more = String(line.quantity + 3);
    await pieces.fill(more);
    await pieces.blur();

    for (const stage of ['shear', 'brake'] as const) {
      const operation = `${line.id}:${stage}`;
      const at = now;
      await report(page, {
        ...{ do: 'floor.start', operation, machineId: machines[stage], at, changeoverSeconds: null },
      });
      await report(page, { do: 'floor.done', operation, at, good: line.quantity, scrapped: 0 });
    }
    await dialog.getByRole('button', { name: 'Save' }).click();
    const note = dialog.getByRole('alert', { name: 'Changed meanwhile' });
    await expect(note).toContainText(`line ${line.id}`);
    await expect(note.getByRole('row', { name: /^pieces/ })).toHaveText(
      new RegExp(`pieces\\s*${more}\\s*${line.quantity}`),
    );
    await expect(note.getByRole('row', { name: /^status/ })).toContainText('done');
    await expect(pieces).toHaveValue(more);
    const floorLine = (await readShop(page)).line.find(({ id }) => id === line.id);
    expect(floorLine).toMatchObject({ status: 'done', quantity: line.quantity });

    await note.getByRole('button', { name: 'Discard mine' }).click();
    await expect(note).toHaveCount(0);
    await expect(pieces).toHaveValue(String(line.quantity));
  },
);

test(
  'work under way is corrected from the board, and a report of another is taken back with the reason',
  { tag: host },
  async ({ app }) => {
    const { page } = app;
    await openDemo(page);
    const line = await standAt(page, 'S1 Shear');
    const operation = `${line}:shear`;
    await report(page, {
      ...{ do: 'floor.start', operation, machineId: 'S1', at: now, changeoverSeconds: null },
    });
    await expect(card(page).getByText(/Under way/)).toBeVisible();
    await report(page, { do: 'floor.count', operation, good: 5, scrapped: 0 });

    await goTo(page, '#/board');
    await page.getByRole('option', { name: new RegExp(`^${line} shearing`) }).click();
    await page.getByRole('button', { name: 'Correct the record…' }).click();
    const correct = page.getByRole('dialog', { name: `Correct ${line} shearing` });
    await correct.getByLabel('Good pieces').fill('2');
    await correct.getByLabel('Reason').fill('Counted twice');
    await correct.getByRole('button', { name: 'Correct the record' }).click();
    await expect(correct).toBeHidden();
    await expect(said(page)).toContainText(/Correct .*2 good.*Counted twice/);
    expect((await readShop(page)).record.find(({ id }) => id === operation)).toMatchObject({
      good: 2,
      end: null,
    });

    await goTo(page, '#/settings');
    const story = page.getByRole('region', { name: 'What was done' });
    const counted = story.getByRole('listitem').filter({ hasText: /^Count / });
    await expect(counted).toContainText(/put right by “Correct /);
    await expect(counted.getByRole('button', { name: /^Take back/ })).toHaveCount(0);
    const corrected = story.getByRole('listitem').filter({ hasText: /^Correct / });
    await corrected.getByRole('button', { name: /^Take back/ }).click();
    const back = page.getByRole('dialog', { name: 'Take back a report' });
    const take = back.getByRole('button', { name: 'Take it back' });
    await expect(take).toBeDisabled();
    await back.getByLabel('Reason').fill('The first count was right');
    await take.click();
    await expect(back).toBeHidden();
    await expect(corrected).toContainText(/put right by “Take back: Correct /);
    await expect(story.getByRole('listitem').first()).toContainText('The first count was right');
    expect((await readShop(page)).record.find(({ id }) => id === operation)).toMatchObject({ good: 5 });
    await app.close();
    expect(factsIn(app.dataDir)).toEqual(['floor.start', 'floor.count', 'floor.correct', 'floor.correct']);
  },
);

test(
  'after the clock was set back work can be paused, finished and started, and it is said what was kept',
  { tag: host },
  async ({ app }) => {
    await openDemo(app.page);
    const line = await standAt(app.page, 'S1 Shear');
    await card(app.page).getByRole('button', { name: 'Start', exact: true }).click();
    await expect(card(app.page).getByText(/Under way/)).toBeVisible();

    const page = await app.restart('2026-11-30T11:10:00Z');
    await goTo(page, '#/floor/S1');
    await expect(card(page).getByRole('heading')).toHaveText(line);
    await page.keyboard.press('a');
    await page.getByRole('dialog').getByRole('button', { name: 'Machine or tooling trouble' }).click();
    await expect(card(page).getByRole('button', { name: /^Resume/ })).toBeVisible();
    await card(page)
      .getByRole('button', { name: /^Resume/ })
      .click();
    await expect(card(page).getByText(/Under way/)).toBeVisible();
    await page.keyboard.press('d');
    await page.getByRole('button', { name: 'They are good' }).click();
    const kept =
      /the clock said Mon 30 Nov 05:10, before what was recorded last, so Mon 30 Nov 06:10 was kept/;
    await expect(page.getByText(kept)).toBeVisible();
    await expect(card(page).getByRole('heading')).not.toHaveText(line);
    await card(page).getByRole('button', { name: 'Start', exact: true }).click();
    await expect(card(page).getByText(/Under way/)).toBeVisible();
    await app.close();
    expect(factsIn(app.dataDir)).toEqual([
      ...['floor.start', 'floor.pause', 'floor.resume', 'floor.done', 'floor.start'],
    ]);
  },
);

test(
  'the desktop menu offers publishing and the plans, as the header does',
  { tag: desktop },
  async ({ app }) => {
    const { page, electron } = app;
    await openDemo(page);
    const choose = (label: string) =>
      electron!.evaluate(({ Menu }, wanted) => {
        const plan = Menu.getApplicationMenu()?.items.find((item) => item.label === '&Plan');
        plan?.submenu?.items.find((item) => item.label === wanted)?.click();
      }, label);
    await choose('Plans: keep, compare, go back…');
    await expect(page.getByRole('button', { name: 'Keep this plan' })).toBeVisible();
    await page.keyboard.press('Escape');
    await choose('Publish the plan…');
    await expect(page.getByRole('dialog', { name: 'Publish the plan' })).toContainText(
      'there is nothing to publish',
    );
  },
);
