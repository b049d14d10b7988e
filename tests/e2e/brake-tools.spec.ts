import type { Page } from '@playwright/test';
import { expect, test } from './app.ts';
import { card, standAt } from './floor-steps.ts';
import { goTo, openDemo, type } from './steps.ts';

/** Tools of a brake, from their form to paper and floor. */

interface Tool {
  readonly code: string;
  readonly kind: 'die' | 'punch';
  readonly brake: RegExp;
}

/** Typed into the form of a new tool and saved; every die is a V of 8 mm. */
async function enter(page: Page, { code, kind, brake }: Tool): Promise<void> {
  await goTo(page, '#/shop/tools/+');
  const form = page.getByRole('form', { name: 'Add tool' });
  await type(page, 'Code', code);
  await type(page, 'Name', `${kind} ${code}`);
  await form.getByRole('button', { name: /Kind/ }).click();
  await page.getByRole('option', { name: kind, exact: true }).click();
  if (kind === 'die') await type(page, 'V opening', '8 mm');
  await type(page, 'Angle', '30');
  if (kind === 'punch') await form.getByText('Gooseneck', { exact: true }).click();
  await type(page, 'Length', '3200 mm');
  await form.getByText(brake).click();
  await form.getByRole('button', { name: 'Save', exact: true }).click();
  await expect(page.getByRole('form', { name: `${kind} ${code}` })).toBeVisible();
}

test('a brake without hemming tools refuses hemmed parts and says so; paper and floor name what is set up', async ({
  app,
}) => {
  const { page } = app;
  await openDemo(page);
  await enter(page, { code: 'V8', kind: 'die', brake: /\(B1\)/ });
  await enter(page, { code: 'P1', kind: 'punch', brake: /\(B1\)/ });

  await goTo(page, '#/shop/parts/ridge-cap');
  await expect(
    page
      .getByText(/Long brake has no hemming tools/)
      .filter({ visible: true })
      .first(),
  ).toBeVisible();
  await expect(page.getByText(/Short brake has no hemming tools/)).toHaveCount(0);

  await standAt(page, 'B1 Long brake');
  await expect(card(page).getByText(/^V .*\(V8\), gooseneck punch 30° \(P1\)$/)).toBeVisible();

  await goTo(page, '#/print');
  await expect(page.getByText(/Set up: V .*\(V8\), gooseneck punch 30° \(P1\)/).first()).toBeVisible();
});
