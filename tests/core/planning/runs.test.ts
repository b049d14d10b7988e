import { describe, expect, it } from 'vitest';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import { queueRuns, shearRuns } from '../../../core/planning/runs.ts';
import { dispatchLists } from '../../../core/report/dispatch.ts';
import { lanesOf } from '../../../renderer/gantt/lanes.ts';
import { aBrake, aLine, aQueue, aShear, aShop, anOrder, NOW } from '../../support/builders.ts';

/** Three lines of one gauge in two colours, where changing the colour costs nothing on either machine. */
const free = { combine: 'sum' as const, attributes: { gauge: 600 }, exceptions: [] };
const shop = aShop({
  machine: [aShear({ changeover: free }), aBrake({ changeover: free })],
  order: [anOrder()],
  line: [
    aLine({ number: 1, colourId: 'moss' }),
    aLine({ number: 2, colourId: 'bone' }),
    aLine({ number: 3, colourId: 'bone' }),
  ],
  queue: [
    aQueue({ id: 'S1', operations: ['1042/1:shear', '1042/2:shear', '1042/3:shear'] }),
    aQueue({ id: 'B1', operations: ['1042/1:brake', '1042/2:brake', '1042/3:brake'] }),
  ],
});
const plan = (() => {
  const read = viewPlan(shop, NOW);
  if (!read.ok) throw new Error(read.issues[0]?.message);
  return read.value;
})();
const machine = (id: string) => shop.machine.find((m) => m.id === id)!;
const counts = (id: string) => queueRuns(plan, machine(id)).map((run) => run.length);

describe('a run, where a colour costs nothing to change', () => {
  it('ends on the shear where the metal does, for a sheet is of one colour', () => {
    expect(counts('S1')).toEqual([1, 2]);
  });

  it('goes on at the brake, where nothing is changed over', () => {
    expect(counts('B1')).toEqual([3]);
  });

  it('is the same on the board, on paper and for cutting', () => {
    const lanes = lanesOf(shop, plan);
    const lists = dispatchLists(shop, plan, NOW, Infinity as typeof NOW);
    for (const { id } of shop.machine) {
      expect(lanes.find((lane) => lane.machine.id === id)!.runs.map((run) => run.count)).toEqual(counts(id));
      const list = lists.find((one) => one.machine.id === id)!;
      expect(list.runs.map((run) => run.rows.length)).toEqual(counts(id));
    }
    expect(shearRuns(shop, plan).map((run) => run.operations.length)).toEqual(counts('S1'));
  });
});
