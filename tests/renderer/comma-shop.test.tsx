// @vitest-environment jsdom
import { cleanup, render } from '@testing-library/react';
import type { ReactElement } from 'react';
import { afterEach, expect, it } from 'vitest';
import { cutRuns } from '../../core/planning/cut-run.ts';
import { viewPlan } from '../../core/planning/plan-view.ts';
import { purchasesOf, stockRows } from '../../core/planning/stock-use.ts';
import { dispatchLists } from '../../core/report/dispatch.ts';
import { instant } from '../../core/units/brand.ts';
import { CutFacts } from '../../renderer/screens/cutting/cut-facts.tsx';
import { Sheets } from '../../renderer/screens/cutting/sheets.tsx';
import { Paper } from '../../renderer/screens/print/paper.tsx';
import { PartPaper } from '../../renderer/screens/print/part-paper.tsx';
import { PurchasePaper } from '../../renderer/screens/print/purchase-paper.tsx';
import { StepsPaper } from '../../renderer/screens/print/steps-paper.tsx';
import { PartView } from '../../renderer/screens/shop/parts/part-view.tsx';
import { StockList } from '../../renderer/screens/stock/stock-list.tsx';
import { aLine, anOrder, aQueue, aShop, NOW, someSettings } from '../support/builders.ts';
import { foreignToCommas } from '../support/foreign-marks.ts';

afterEach(cleanup);

const order = anOrder();
const line = aLine({ orderId: order.id, number: 1, quantity: 8 });
const shop = aShop({
  settings: someSettings({ decimals: 'comma', currency: 'USD' }),
  order: [order],
  line: [line],
  queue: [
    aQueue({ operations: [`${line.id}:shear`] }),
    aQueue({ id: 'B1', operations: [`${line.id}:brake`] }),
  ],
});
const viewed = viewPlan(shop, NOW);
if (!viewed.ok) throw new Error(viewed.issues[0]?.message);
const plan = viewed.value;
const cuts = [...cutRuns(shop, plan)];
const [cut] = cuts;
if (!cut?.plan.ok) throw new Error('the run of this test can be cut');
const part = shop.part.find(({ id }) => id === line.partId)!;
const material = shop.material.find(({ id }) => id === line.materialId)!;
const gauge = material.gauges.find(({ label }) => label === line.gauge)!;
const stock = stockRows(shop, cuts);
const { settings } = shop;

const shown: Readonly<Record<string, ReactElement>> = {
  ...Object.fromEntries(
    dispatchLists(shop, plan, instant(0), instant(NOW + 60 * 86_400)).map((list) => [
      `the dispatch list of ${list.machine.name}`,
      <Paper key={list.machine.id} list={list} settings={settings} now={NOW} days={60} published={null} />,
    ]),
  ),
  'the steps of a run': <StepsPaper shop={shop} cut={cut} plan={cut.plan.value} now={NOW} drawings />,
  'a traveller': (
    <PartPaper
      {...{ shop, part, material, gauge, line: { line, order } }}
      lengthMm={line.lengthMm}
      now={NOW}
    />
  ),
  'the purchase list': <PurchasePaper shop={shop} purchases={purchasesOf(stock)} now={NOW} />,
  'a run in figures': <CutFacts shop={shop} cut={cut} />,
  'its sheets': <Sheets shop={shop} cut={cut} />,
  'a part’s drawing and blank': <PartView shop={shop} part={part} onOrder={() => undefined} />,
  stock: <StockList shop={shop} rows={stock} />,
};

it.each(Object.entries(shown))('a shop that writes commas finds no point in %s', (_, element) => {
  const { container } = render(element);
  const said = container.textContent ?? '';
  expect(said.match(foreignToCommas)?.[0]).toBeUndefined();
});

it('and finds its commas there: a width of 6.927 in is 6,927 in', () => {
  const { container } = render(shown['the steps of a run']!);
  expect(container.textContent).toMatch(/\d,\d/);
});
