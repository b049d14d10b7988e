import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import { runInput } from '../../../core/planning/cut-run.ts';
import { latenessOf } from '../../../core/planning/lateness.ts';
import { viewPlan, type PlanView } from '../../../core/planning/plan-view.ts';
import { shearRuns } from '../../../core/planning/runs.ts';
import { toProblem } from '../../../core/planning/to-problem.ts';
import { promisesOf } from '../../../core/report/promises.ts';
import { dispatchLists } from '../../../core/report/dispatch.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { instant } from '../../../core/units/brand.ts';
import { aLine, anOrder, aShop, at, NOW, type With } from '../../support/builders.ts';
import { after, issuesOf, refusalOf } from '../../support/edits.ts';

/** An order due on the Friday with two lines; the second has terms of its own. */
const FRIDAY = at('2026-12-04');
const TUESDAY = at('2026-12-01');
const order = anOrder({ due: FRIDAY, release: null, importance: 1, note: 'Deliver to the yard' });
const shopWith = (own: With<'line'>): Shop =>
  aShop({ order: [order], line: [aLine(), aLine({ number: 2, ...own })] });

const planned = (shop: Shop): PlanView => {
  const plan = viewPlan(shop, NOW);
  if (!plan.ok) throw new Error(plan.issues[0]?.message);
  return plan.value;
};
const jobs = (shop: Shop) => {
  const problem = toProblem(shop, NOW);
  if (!problem.ok) throw new Error(problem.issues[0]?.message);
  return problem.value.problem.input.jobs;
};

describe('a line with terms of its own is planned by them, its order’s other lines by the order’s', () => {
  it('release, due date and importance go to the engine', () => {
    const release = at('2026-11-30', '12:00');
    const [first, second] = jobs(shopWith({ release, due: TUESDAY, importance: 3 }));
    expect(first).toMatchObject({ release: NOW, due: FRIDAY, weight: 1 });
    expect(second).toMatchObject({ release, due: TUESDAY, weight: 3 });
  });

  it('it starts no sooner than its own “not before”', () => {
    const release = at('2026-12-02', '07:00');
    const { schedule } = planned(shopWith({ release }));
    const starts = schedule.operations.filter((o) => o.job === '1042/2').map((o) => o.start);
    expect(Math.min(...starts)).toBeGreaterThanOrEqual(release);
  });

  it('it is late against its own due date', () => {
    const due = at('2026-11-30', '07:30');
    const shop = shopWith({ due, importance: 4 });
    const plan = planned(shop);
    const rows = latenessOf(shop, plan.schedule);
    expect(rows.find((row) => row.lineId === '1042/2')).toMatchObject({
      due,
      importance: 4,
      lateness: plan.schedule.ends['1042/2']! - due,
    });
    expect(rows.find((row) => row.lineId === '1042/1')).toMatchObject({ due: FRIDAY, importance: 1 });
    expect(plan.figures.lateLines).toBe(1);
  });

  it('what no queue names yet waits by its own due date', () => {
    const { problem, queues } = toProblemOf(shopWith({ due: TUESDAY }));
    expect(problem).toBeDefined();
    expect(queues.S1).toEqual(['1042/2:shear', '1042/1:shear']);
  });

  it('its blanks are cut in the order of its own due date', () => {
    const shop = shopWith({ due: TUESDAY, gauge: '24' });
    const plan = planned(shop);
    const [run] = shearRuns(shop, plan);
    const { lines } = runInput(shop, run!, new Map(), true);
    expect(Object.fromEntries(lines.map(({ id, due }) => [id, due]))).toEqual({
      '1042/1': FRIDAY,
      '1042/2': TUESDAY,
    });
  });

  it('the dispatch list prints its due date and both notes', () => {
    const shop = shopWith({ due: TUESDAY, note: 'Film side out' });
    const lists = dispatchLists(shop, planned(shop), NOW, instant(NOW + 14 * 86_400));
    const rows = lists.flatMap(({ runs }) => runs.flatMap((run) => run.rows));
    const own = rows.filter(({ line }) => line.id === '1042/2');
    expect(own.length).toBe(2);
    for (const row of own)
      expect(row).toMatchObject({ due: TUESDAY, notes: ['Deliver to the yard', 'Film side out'] });
    for (const row of rows.filter(({ line }) => line.id === '1042/1'))
      expect(row).toMatchObject({ due: FRIDAY, notes: ['Deliver to the yard'] });
  });

  it('a date to promise begins at its own “not before”', () => {
    const shop = aShop({ order: [], line: [] });
    const release = at('2026-12-02', '07:00');
    const asked = promisesOf(shop, order, [aLine({ release })], NOW);
    if (!asked.ok) throw new Error(asked.issues[0]?.message);
    const [promised] = [...asked.value];
    expect(promised!.safe!.end).toBeGreaterThan(release);
  });
});

const toProblemOf = (shop: Shop) => {
  const problem = toProblem(shop, NOW);
  if (!problem.ok) throw new Error(problem.issues[0]?.message);
  return problem.value;
};

describe('an open line that would start after it is due', () => {
  const shop = shopWith({ release: at('2026-12-03', '07:00') });
  const [line, other] = [shop.line[1]!, shop.line[0]!];

  it('is refused as it is saved, alone or with its order', () => {
    const late = { ...line, due: at('2026-12-02') };
    const says = /Line 1042\/2: the time in “Not before”.* is not before the due date/;
    expect(refusalOf(shop, { do: 'line.save', line: late })).toMatch(says);
    const saved = { do: 'order.save', order, lines: [late], removed: [], at: NOW } as const;
    expect(issuesOf(shop, saved)).toMatchObject([{ subject: 'line 1042/2', field: 'release' }]);
  });

  it('is refused where the order’s date moves before its own “not before”', () => {
    const sooner = { ...order, due: at('2026-12-02') };
    const saved = { do: 'order.save', order: sooner, lines: [], removed: [], at: NOW } as const;
    expect(issuesOf(shop, saved)).toMatchObject([{ subject: 'line 1042/2', field: 'release' }]);
    const gone = { ...saved, removed: [{ id: line.id, revision: line.revision }] };
    expect(applyCommand(shop, gone).ok).toBe(true);
    const closed = { ...saved, lines: [{ ...line, status: 'cancelled' as const }] };
    expect(applyCommand(shop, closed).ok).toBe(true);
  });

  it('is refused when a file brings it', () => {
    const brought = { do: 'orders.import', fileName: 'x.csv', orders: [], lines: [] } as const;
    const added = { ...other, id: '1042/3', number: 3, due: at('2026-12-02'), release: at('2026-12-02') };
    expect(issuesOf(shop, { ...brought, lines: [added] })).toMatchObject([{ subject: 'line 1042/3' }]);
    const sooner = { ...order, due: at('2026-12-02') };
    expect(issuesOf(shop, { ...brought, orders: [sooner] })).toMatchObject([{ subject: 'line 1042/2' }]);
  });

  it('a remake has the terms of the line whose pieces it makes again', () => {
    const due = at('2026-12-03');
    const own = shopWith({ due, importance: 2, note: 'Film side out' });
    const made = after(
      own,
      {
        do: 'floor.start',
        operation: '1042/2:shear',
        machineId: 'S1',
        at: at('2026-11-30', '07:00'),
        changeoverSeconds: null,
      },
      {
        do: 'floor.done',
        operation: '1042/2:shear',
        at: at('2026-11-30', '08:00'),
        good: 18,
        scrapped: 2,
      },
    );
    expect(made.line.find((l) => l.makeUpFor === '1042/2')).toMatchObject({
      due,
      importance: 2,
      note: 'Film side out',
    });
  });
});
