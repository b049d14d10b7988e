import { describe, expect, it } from 'vitest';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import { dispatchLists } from '../../../core/report/dispatch.ts';
import { check } from '../../../core/schedule/check.ts';
import type { Attributes } from '../../../core/shop/machine.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { instant } from '../../../core/units/brand.ts';
import {
  aBrake,
  aLine,
  anOrder,
  aPart,
  aQueue,
  aShear,
  aShop,
  NOW,
  type With,
} from '../../support/builders.ts';
import { aTool } from '../../support/tool-builders.ts';

const FIRST = 360;
const rules = {
  combine: 'sum',
  attributes: { profile: 300, gauge: 600, material: 180 },
  exceptions: [],
} as const;
const setUp: Attributes = { material: 'galv', gauge: '24', profile: 'corner' };

/** Lines on one brake, in their order, with what it has set up and the edition of the usual times that it follows. */
function plan(lines: readonly With<'line'>[], own: With<'machine'> = {}, shopOwn: Partial<Shop> = {}) {
  const rows = lines.map((line, n) => aLine({ ...line, number: n + 1, id: `1042/${n + 1}` }));
  const brake = aBrake({ timesEdition: 2, changeover: rules, state: setUp, standards: {}, ...own });
  const shop: Shop = aShop({
    machine: [brake, aShear()],
    part: [aPart(), aPart({ id: 'other' })],
    order: [anOrder()],
    line: rows,
    queue: [
      aQueue({ id: 'B1', operations: rows.map(({ id }) => `${id}:brake`) }),
      aQueue({ operations: rows.map(({ id }) => `${id}:shear`) }),
    ],
    ...shopOwn,
  });
  const view = viewPlan(shop, NOW);
  if (!view.ok) throw new Error(view.issues.map(({ message }) => message).join());
  expect(check(view.value.problem, view.value.schedule)).toEqual([]);
  return { shop, view: view.value };
}

const changeovers = (...asked: Parameters<typeof plan>): number[] =>
  plan(...asked)
    .view.schedule.operations.filter(({ machine }) => machine === 'B1')
    .sort((a, b) => a.start - b.start)
    .map(({ changeoverSeconds }) => changeoverSeconds);

describe('a first piece', () => {
  it('is formed once with the changeover that makes it necessary, whatever else that changes', () => {
    expect(changeovers([{}, { partId: 'other' }, { partId: 'other' }])).toEqual([0, 300 + FIRST, 0]);
    expect(changeovers([{ gauge: '26' }, { gauge: '26' }])).toEqual([600 + FIRST, 0]);
    expect(changeovers([{ partId: 'other', gauge: '26' }])).toEqual([900 + FIRST]);
  });

  it('is needed for another gauge also where the change of it costs nothing else', () => {
    const free = { changeover: { ...rules, attributes: { profile: 300 } } };
    expect(changeovers([{ gauge: '26' }], free)).toEqual([FIRST]);
  });

  it('is not needed for another colour, nor by a brake of which nothing is known', () => {
    expect(changeovers([{ colourId: 'bone' }])).toEqual([0]);
    expect(changeovers([{ partId: 'other' }, {}], { state: null })).toEqual([0, 300 + FIRST]);
  });

  it('takes what the shop says, and nothing where that is nothing', () => {
    expect(changeovers([{ partId: 'other' }], { standards: { firstPiece: 600 } })).toEqual([900]);
    expect(changeovers([{ partId: 'other' }], { standards: { firstPiece: 0 } })).toEqual([300]);
  });

  it('of a brake that follows the first edition is in the time of every line', () => {
    const lines = [{}, { partId: 'other' }];
    expect(changeovers(lines, { timesEdition: 1 })).toEqual([0, 300]);
    const worked = (timesEdition: number): number =>
      plan(lines, { timesEdition, standards: { bundle: 0, allowance: 0 } }).view.figures.workSeconds;
    expect(worked(1) - worked(2)).toBe(2 * FIRST);
  });

  it('is not said to be in a changeover to tools from tools that are not known, nor timed there', () => {
    const [die, punch] = [
      aTool({ id: 'V8', kind: 'die', machineIds: ['B1'] }),
      aTool({ id: 'P1', kind: 'punch', openingMm: null, ratingKnPerM: null, machineIds: ['B1'] }),
    ];
    const { shop, view } = plan([{ partId: 'other' }, {}], {}, { tool: [die, punch] });
    const list = dispatchLists(shop, view, instant(0), instant(1e11)).find(
      ({ machine }) => machine.id === 'B1',
    );
    expect(
      list?.runs.map(({ changeover }) => changeover && [changeover.seconds, changeover.firstPiece]),
    ).toEqual([
      [300, false],
      [300 + FIRST, true],
    ]);
  });

  it('is said on the list, with what makes it necessary', () => {
    const { shop, view } = plan([{}, { gauge: '26' }], { changeover: { ...rules, attributes: {} } });
    const list = dispatchLists(shop, view, instant(0), instant(1e11)).find(
      ({ machine }) => machine.id === 'B1',
    );
    expect(
      list?.runs.map(({ changeover }) => changeover && [changeover.seconds, changeover.firstPiece]),
    ).toEqual([null, [FIRST, true]]);
    expect(list?.runs[1]?.changeover?.steps).toEqual([{ attribute: 'gauge', from: '24 ga', to: '26 ga' }]);
  });
});
