import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import { cutListOf } from '../../../core/edit/cutting-steps.ts';
import { withChanges } from '../../../core/shop/row-change.ts';
import { cutRuns, isTaken, type RunCut } from '../../../core/planning/cut-run.ts';
import { figuresOfCut } from '../../../core/report/cutting-words.ts';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import { stockRows } from '../../../core/planning/stock-use.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, aQueue, aRecord, aShop, anOrder, NOW } from '../../support/builders.ts';

const cutsOf = (shop: Shop): RunCut[] => {
  const plan = viewPlan(shop, NOW);
  if (!plan.ok) throw new Error(plan.issues[0]?.message);
  return [...cutRuns(shop, plan.value)];
};
const first = (shop: Shop): RunCut => {
  const [cut] = cutsOf(shop);
  if (!cut) throw new Error('no run');
  return cut;
};
const planned = (cut: RunCut) => {
  if (!cut.plan.ok) throw new Error('not planned');
  return cut.plan.value;
};
const faults = (cut: RunCut): string[] => cut.faults.map((p) => p.message);

/** Flat strips, 150 mm wide and 2540 mm long: eight across a sheet of 1219.2 × 3048 mm, 508 mm over along it. */
const flat = (own: Parameters<typeof aLine>[0]) => aLine({ partId: 'flat-strip', ...own });
const shop = aShop({
  order: [anOrder()],
  line: [flat({ number: 1, quantity: 10 }), flat({ number: 2, quantity: 6 })],
  queue: [aQueue({ operations: ['1042/1:shear', '1042/2:shear'] })],
});
/** The shop with the first run's list changed. */
function withListOf(of: Shop, change: (steps: ReturnType<typeof planned>['steps']) => typeof steps): Shop {
  const cut = first(of);
  const { groups, steps } = planned(cut);
  const lines = cut.run.operations.map((o) => o.line.id);
  return { ...of, cutList: [cutListOf(cut.run.id, lines, groups, change(steps), 0)] };
}
const taken = (of: Shop, at: number = NOW): Shop => {
  const cut = first(of);
  const { groups, steps } = planned(cut);
  const list = cutListOf(
    cut.run.id,
    cut.run.operations.map((o) => o.line.id),
    groups,
    steps,
    0,
  );
  const edit = applyCommand(of, { do: 'stock.use', list, machineId: 'S1', at });
  if (!edit.ok) throw new Error(edit.issues[0]?.message);
  return withChanges(of, edit.value.changes);
};

describe('a list that a person changed', () => {
  it('has the figures of the plan as long as it cuts the same', () => {
    const before = planned(first(shop));
    const after = first(withListOf(shop, (steps) => steps));
    expect(after.changed).not.toBeNull();
    expect(after.faults).toEqual([]);
    expect(planned(after)).toMatchObject({
      areas: before.areas,
      counts: before.counts,
      costCents: before.costCents,
      lines: before.lines,
    });
    expect(figuresOfCut(planned(after))).toEqual(figuresOfCut(before));
  });

  it('has figures of its own where it cuts otherwise: a remnant of 619.2 × 2540 mm is scrap now', () => {
    const four = { ...shop, line: [flat({ number: 1, quantity: 4 })] };
    const before = figuresOfCut(planned(first(four)));
    const scrapped = withListOf(four, (steps) =>
      steps.map((step) => ({
        ...step,
        to: step.to.kind === 'remnant' ? ({ kind: 'scrap' } as const) : step.to,
        rest: step.rest?.kind === 'remnant' ? ({ kind: 'scrap' } as const) : step.rest,
      })),
    );
    const after = figuresOfCut(planned(first(scrapped)));
    expect(before.kept).toBe(1);
    expect(after).toMatchObject({ kept: 0, remnants: 0, used: before.used, sheets: before.sheets });
    expect(after.scrap).toBeCloseTo(before.scrap + before.remnants, 9);
  });

  it('says how many blanks are missing when its last step is gone, and what is left uncut', () => {
    const cut = first(withListOf(shop, (steps) => steps.slice(0, -1)));
    expect(faults(cut).join(' ')).toMatch(/missing for line 1042\/1, 1042\/2: 16 asked/);
    const { used, remnants, scrap, left } = figuresOfCut(planned(cut));
    expect(used + remnants + scrap + left).toBeCloseTo(1, 9);
  });

  it('leaves out the sheets that no step cuts any more, from the stock too', () => {
    const cut = first(withListOf(shop, () => []));
    expect(planned(cut).groups).toEqual([]);
    expect(cut.takings).toEqual([]);
    expect(figuresOfCut(planned(cut))).toMatchObject({ sheets: 0, used: 0, left: 0 });
    expect(faults(cut)).toEqual(['16 blanks are missing for line 1042/1, 1042/2: 16 asked, 0 cut.']);
  });
});

describe('a changed list whose run has changed since', () => {
  const changed = withListOf(shop, (steps) => steps);

  it('says which line has joined, and what is missing for it', () => {
    const third = flat({ number: 3, quantity: 4 });
    const more = { ...changed, line: [...changed.line, third] };
    more.queue = [aQueue({ operations: ['1042/1:shear', '1042/2:shear', '1042/3:shear'] })];
    expect(faults(first(more))).toEqual([
      'Line 1042/3 has joined this run since its list was changed.',
      '4 blanks are missing for line 1042/1, 1042/2, 1042/3: 20 asked, 16 cut.',
    ]);
  });

  it('says which line has left, and what is too many', () => {
    const cut = first({ ...changed, line: changed.line.slice(0, 1) });
    expect(faults(cut)).toEqual([
      'Line 1042/2 has left this run since its list was changed.',
      '6 blanks are too many for line 1042/1: 10 asked, 0 extra accepted, 16 cut.',
    ]);
    expect(planned(cut).steps.flatMap((step) => step.lines.map((lot) => lot.line))).not.toContain('1042/2');
  });

  it('is not forgotten when its first line has left', () => {
    const cut = first({ ...changed, line: changed.line.slice(1) });
    expect(cut.run.id).toBe('1042/2');
    expect(cut.changed?.id).toBe('1042/1');
    expect(faults(cut)[0]).toBe('Line 1042/1 has left this run since its list was changed.');
  });

  it('asks for more when a quantity has grown', () => {
    const line = changed.line.map((l) => (l.number === 1 ? { ...l, quantity: 12 } : l));
    expect(faults(first({ ...changed, line }))).toEqual([
      '2 blanks are missing for line 1042/1, 1042/2: 18 asked, 16 cut.',
    ]);
  });

  it('stands for one run only when the run was torn in two', () => {
    const other = flat({ number: 3, quantity: 4, gauge: '26' });
    const torn = { ...changed, line: [...changed.line, other] };
    torn.queue = [aQueue({ operations: ['1042/1:shear', '1042/3:shear', '1042/2:shear'] })];
    expect(cutsOf(torn).map((cut) => cut.changed?.id ?? null)).toEqual(['1042/1', null, null]);
  });
});

describe('a run whose sheets were taken from stock', () => {
  it('is shown as it was taken, reserves nothing more, and asks for nothing', () => {
    const before = first(shop);
    const after = taken(shop);
    const cut = first(after);
    expect(isTaken(cut)).toBe(true);
    expect(planned(cut).steps).toEqual(planned(before).steps);
    expect(figuresOfCut(planned(cut))).toEqual(figuresOfCut(planned(before)));
    expect(cut).toMatchObject({ takings: [], faults: [], sheetsAlone: before.sheetsAlone });
    const moss = (of: Shop) => stockRows(of, cutsOf(of)).find((row) => row.sheet.id === 'galv-24-moss');
    expect(moss(after)).toMatchObject({ reserved: [], left: moss(shop)?.left });
  });

  it('is planned for the rest when a line joins it', () => {
    const after = taken(shop);
    const more = { ...after, line: [...after.line, flat({ number: 3, quantity: 4 })] };
    more.queue = [aQueue({ operations: ['1042/1:shear', '1042/2:shear', '1042/3:shear'] })];
    const cut = first(more);
    expect(isTaken(cut)).toBe(false);
    expect(cut.input.lines.map((line) => line.quantity)).toEqual([0, 0, 4]);
    expect(planned(cut).steps.at(-1)?.blanksSoFar).toBe(4);
  });

  describe('after some blanks were counted', () => {
    /**
     * By hand: of 20 asked 6 are cut and counted before any sheets are issued. 14 are left, and sheets for 14 are issued.
     * 6 + 14 = 20: nothing is left to plan. As the 14 are cut the count goes from 6 to 20, and nothing is left still.
     */
    const counted = (of: Shop, good: number): Shop => ({
      ...of,
      record: [aRecord({ partId: 'flat-strip', good, scrapped: 0, end: null })],
    });
    const six = counted({ ...shop, line: [flat({ quantity: 20 })] }, 6);
    const issued = taken(six);

    it('asks for the rest only, and for nothing once the sheets for the rest are issued', () => {
      expect(first(six).input.lines.map((l) => l.quantity)).toEqual([14]);
      const cut = first(issued);
      expect(cut.input.lines.map((l) => l.quantity)).toEqual([0]);
      expect(isTaken(cut)).toBe(true);
      expect(planned(cut).steps).toEqual(planned(first(six)).steps);
    });

    it('counts what is cut of the issued sheets once', () => {
      for (const good of [6, 7, 19, 20])
        expect(first(counted(issued, good)).input.lines.map((l) => l.quantity)).toEqual([0]);
    });

    it('adds a second issue to the first, and to what was counted between', () => {
      // 4 more are asked: 24. At 22 counted, 2 beyond the 20 that the sheets gave, 2 are left; sheets for 2 are issued.
      const more = { ...issued, line: [flat({ quantity: 24 })] };
      expect(first(more).input.lines.map((l) => l.quantity)).toEqual([4]);
      const twice = taken(counted(more, 22), NOW + 60);
      expect(first(twice).input.lines.map((l) => l.quantity)).toEqual([0]);
      expect(first({ ...twice, line: [flat({ quantity: 30 })] }).input.lines.map((l) => l.quantity)).toEqual([
        6,
      ]);
    });
  });

  it('is planned for what a line asks more since', () => {
    const after = taken(shop);
    const line = after.line.map((l) => (l.number === 1 ? { ...l, quantity: 13 } : l));
    expect(first({ ...after, line }).input.lines.map((l) => l.quantity)).toEqual([3, 0]);
  });
});
