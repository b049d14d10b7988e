// @vitest-environment jsdom
import { cleanup, render, screen } from '@testing-library/react';
import type { ReactElement } from 'react';
import { afterEach, describe, expect, it } from 'vitest';
import { cutRuns } from '../../../core/planning/cut-run.ts';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import { cautionsAlong, cautionsFor, type Cautions } from '../../../core/report/cautions.ts';
import { dispatchLists } from '../../../core/report/dispatch.ts';
import { instant } from '../../../core/units/brand.ts';
import { formatCutSize } from '../../../core/units/length.ts';
import { Paper } from '../../../renderer/screens/print/paper.tsx';
import { PartPaper } from '../../../renderer/screens/print/part-paper.tsx';
import { StepsPaper } from '../../../renderer/screens/print/steps-paper.tsx';
import { aLine, anOrder, aQueue, aShop, at, NOW } from '../../support/builders.ts';

afterEach(cleanup);

const order = anOrder();
const line = aLine({ orderId: order.id, number: 1, quantity: 8 });
const shop = aShop({
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
const lists = dispatchLists(shop, plan, instant(0), instant(NOW + 60 * 86_400));
const listOf = (machine: string) => lists.find((list) => list.machine.id === machine)!;
const [cut] = [...cutRuns(shop, plan)];
if (!cut?.plan.ok) throw new Error('the run of this test can be cut');
const part = shop.part.find(({ id }) => id === line.partId)!;
const material = shop.material.find(({ id }) => id === line.materialId)!;
const gauge = material.gauges.find(({ label }) => label === line.gauge)!;
const { settings } = shop;
const partIn = { shop, part, material, gauge, lengthMm: line.lengthMm, now: NOW };

const papers: Readonly<Record<string, readonly [ReactElement, Cautions]>> = {
  'the dispatch list of a shear': [
    <Paper key="s" list={listOf('S1')} settings={settings} now={NOW} days={60} published={null} />,
    cautionsFor('shear'),
  ],
  'the dispatch list of a brake': [
    <Paper key="b" list={listOf('B1')} settings={settings} now={NOW} days={60} published={null} />,
    cautionsFor('brake'),
  ],
  'the steps of a run': [
    <StepsPaper key="r" shop={shop} cut={cut} plan={cut.plan.value} now={NOW} drawings />,
    cautionsFor('shear'),
  ],
  'a traveller': [
    <PartPaper key="t" {...partIn} line={{ line, order }} />,
    cautionsAlong(['shear', 'brake']),
  ],
  'a drawing': [<PartPaper key="d" {...partIn} line={null} />, cautionsAlong(['shear', 'brake'])],
};

describe.each(Object.entries(papers))('%s', (_, [paper, { governs, points }]) => {
  it('carries its cautions', () => {
    render(paper);
    expect(screen.getAllByText(governs, { exact: false }).length).toBeGreaterThan(0);
    for (const point of points) expect(screen.getByText(point)).toBeTruthy();
  });
});

it('a blank has one figure on list, steps and traveller', () => {
  const operation = plan.operations.get(`${line.id}:shear`)!;
  const size = formatCutSize(operation.blank.girthMm, operation.blank.lengthMm, settings);
  for (const kind of ['the dispatch list of a shear', 'the steps of a run', 'a traveller']) {
    render(papers[kind]![0]);
    expect(screen.getAllByText(size, { exact: false }).length, kind).toBeGreaterThan(0);
    cleanup();
  }
});

it('a list names the plan that it follows, and what that changed', () => {
  const changes = Array.from({ length: 30 }, (_, i) => ({
    operation: `${i}:shear`,
    lineId: `${i}/1`,
    words: `earlier, now No. ${i + 1}`,
  }));
  const published = { title: 'Plan published Mon 30 Nov 05:00: for the night', changes, since: NOW };
  render(<Paper list={listOf('S1')} settings={settings} now={NOW} days={60} published={published} />);
  expect(screen.getByText('Plan published Mon 30 Nov 05:00: for the night')).toBeTruthy();
  const told = screen.getByRole('region', { name: 'Changed on Shear' });
  expect(told.textContent).toMatch(/Changed since the plan of Mon 30 Nov 06:00:0\/1 earlier, now No\. 1/);
  expect(told.textContent).toMatch(/and 6 more$/);
});

it('what was noted on order and line is on both lists and on the traveller, with the line’s own due date', () => {
  const noted = {
    order: { ...order, note: 'Deliver to the yard' },
    line: { ...line, note: 'Film side out.\nRing first', due: at('2026-12-02', '10:00') },
  };
  const own = { ...shop, order: [noted.order], line: [noted.line] };
  const read = viewPlan(own, NOW);
  if (!read.ok) throw new Error(read.issues[0]?.message);
  const ownLists = dispatchLists(own, read.value, instant(0), instant(NOW + 60 * 86_400));
  const sheets = [
    ...ownLists.map((list) => (
      <Paper key={list.machine.id} list={list} settings={settings} now={NOW} days={60} published={null} />
    )),
    <PartPaper key="t" {...partIn} shop={own} line={noted} />,
  ];
  for (const sheet of sheets) {
    const { container, unmount } = render(sheet);
    expect(container.textContent).toContain('Deliver to the yard');
    expect(container.textContent).toContain('Film side out.\nRing first');
    expect(container.textContent?.replaceAll('\u00a0', ' ')).toContain('Wed 2 Dec 10:00');
    unmount();
  }
});

it('an order without a note has no room for one', () => {
  render(papers['a traveller']![0]);
  expect(screen.queryByText('Note')).toBeNull();
});
