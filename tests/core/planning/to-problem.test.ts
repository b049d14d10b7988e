import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import { withChanges } from '../../../core/shop/row-change.ts';
import { viewDueDateOrder, viewPlan } from '../../../core/planning/plan-view.ts';
import { hits } from '../../../core/part/girth.ts';
import { check } from '../../../core/schedule/check.ts';
import { completeQueues } from '../../../core/planning/complete-queues.ts';
import { operationsOf } from '../../../core/planning/operations.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { toProblem, toSearchProblem } from '../../../core/planning/to-problem.ts';
import { instant } from '../../../core/units/brand.ts';
import { loadDemo } from '../../../demo-data/load.ts';
import { madeFrom } from '../../support/edits.ts';

const MONDAY = instant(Date.parse('2026-11-30T12:10:00Z') / 1000);
const shop = loadDemo(join(import.meta.dirname, '../../../demo-data/shop'), MONDAY);
const must = <T>(value: T | null | undefined): T => {
  if (value === undefined || value === null) throw new Error('missing in the demo shop');
  return value;
};
const planned = (s: Shop) => {
  const result = toProblem(s, MONDAY);
  if (!result.ok) throw new Error(result.issues[0]?.message);
  return result.value;
};

describe('the operations of the open orders', () => {
  it('are shear then brake for a bent part, shear alone for a flat one', () => {
    const flat = must(shop.part.find((p) => hits(p.profile) === 0));
    const untouched = shop.line.filter(
      (l) => l.status === 'open' && !shop.record.some((r) => r.id.startsWith(`${l.id}:`)),
    );
    const [bent, other] = [must(untouched[0]), must(untouched[1])];
    const line = shop.line.map((l) => (l.id === other.id ? { ...l, partId: flat.id } : l));
    const { operations } = operationsOf({ ...shop, line });
    const stages = (id: string): string[] => operations.filter((o) => o.line.id === id).map((o) => o.stage);
    expect(stages(bent.id)).toEqual(['shear', 'brake']);
    expect(stages(other.id)).toEqual(['shear']);
  });

  it('leave out held orders and finished operations', () => {
    const { operations } = operationsOf(shop);
    const first = must(operations[0]);
    const held: Shop = {
      ...shop,
      order: shop.order.map((o) => (o.id === first.order.id ? { ...o, status: 'held' } : o)),
    };
    expect(operationsOf(held).operations.some((o) => o.order.id === first.order.id)).toBe(false);
    const finished = shop.record.filter((r) => r.end !== null).map((r) => r.id);
    expect(operations.some((o) => finished.includes(o.id))).toBe(false);
  });

  it('name the line, the length and the machines when nothing is long enough', () => {
    const line = must(shop.line.find((l) => l.status === 'open'));
    const long: Shop = {
      ...shop,
      line: shop.line.map((l) => (l.id === line.id ? { ...l, lengthMm: 6000 } : l)),
    };
    const { unplannable, operations } = operationsOf(long);
    expect(operations.some((o) => o.line.id === line.id)).toBe(false);
    expect(unplannable.map((p) => p.message).join(' ')).toContain(line.id);
  });

  it('keep a line off the brakes that a stop of the shop speaks against, and let a warning pass', () => {
    const judgedSo = (verdict: 'stop' | 'warning' | 'off'): Shop => ({
      ...shop,
      settings: { ...shop.settings, partRules: { 'bend order, collision': verdict } },
    });
    const stopped = operationsOf(judgedSo('stop')).unplannable;
    expect(stopped.length).toBeGreaterThan(0);
    for (const { message } of stopped)
      expect(message).toMatch(/fits no brake\..*runs into usual tools on Long brake/);
    const warned = operationsOf(judgedSo('warning'));
    expect(warned.unplannable).toEqual([]);
    const rules = warned.operations.flatMap((o) => o.machines.flatMap((m) => m.warnings.map((f) => f.rule)));
    expect(rules).toContain('bend order, collision');
    const silent = operationsOf(judgedSo('off')).operations;
    expect(silent.flatMap((o) => o.machines.flatMap((m) => m.warnings.map((f) => f.rule)))).not.toContain(
      'bend order, collision',
    );
  });

  it('name the sheet that is missing from stock', () => {
    const line = must(operationsOf(shop).operations[0]).line;
    const empty: Shop = { ...shop, sheet: shop.sheet.filter((s) => s.colourId !== line.colourId) };
    expect(operationsOf(empty).unplannable[0]?.message).toContain('no sheet size of');
  });
});

describe('the plan as it stands', () => {
  it('holds every open operation exactly once', () => {
    const { operations } = operationsOf(shop);
    const ids = Object.values(completeQueues(shop, operations)).flat();
    expect([...ids].sort()).toEqual(operations.map((o) => o.id).sort());
  });

  it('keeps the stored order and puts new operations behind it, by due date', () => {
    const { operations } = operationsOf(shop);
    const free = operations.filter((o) => o.stage === 'shear' && !o.started);
    const stored = free
      .slice(0, 12)
      .map((o) => o.id)
      .reverse();
    const queues = completeQueues(
      { ...shop, queue: [{ id: 'S1', operations: [...stored, '0000/1:shear'], revision: 3 }] },
      operations,
    );
    const started = operations.filter((o) => o.started?.machineId === 'S1').length;
    expect(must(queues.S1).slice(started, started + 12)).toEqual(stored);
    const dues = must(queues.S1)
      .slice(started + 12)
      .map((id) => must(operations.find((o) => o.id === id)).order.due);
    expect(dues).toEqual([...dues].sort((a, b) => a - b));
  });

  it('decodes to a schedule that breaks no rule', () => {
    const view = viewPlan(shop, MONDAY);
    if (!view.ok) throw new Error(view.issues[0]?.message);
    expect(check(view.value.problem, view.value.schedule)).toEqual([]);
    const yardstick = viewDueDateOrder(shop, view.value);
    expect(yardstick.ok && check(view.value.problem, yardstick.value.schedule)).toEqual([]);
  });
});

describe('the problem for the search', () => {
  it('freezes what starts within the frozen window, and only what was planned before', () => {
    const { queues } = planned(shop);
    const stored: Shop = {
      ...shop,
      settings: { ...shop.settings, frozenHours: 8 },
      queue: Object.entries(queues).map(([id, operations]) => ({
        id,
        operations: [...operations],
        revision: 0,
      })),
    };
    const searched = toSearchProblem(stored, MONDAY);
    if (!searched.ok) throw new Error(searched.issues[0]?.message);
    const frozen = must(searched.value.problem.input.frozen);
    expect(must(frozen.S1).length).toBeGreaterThan(0);
    expect(frozen.S1).toEqual(must(queues.S1).slice(0, must(frozen.S1).length));
    const fresh = toSearchProblem({ ...stored, queue: [] }, MONDAY);
    const started = operationsOf(shop).operations.filter((o) => o.started).length;
    expect(
      fresh.ok && Object.values(must(fresh.value.problem.input.frozen)).flat().length,
    ).toBeLessThanOrEqual(started);
  });

  it('lets no more people work at once than the shop has', () => {
    const short: Shop = { ...shop, settings: { ...shop.settings, crewLimit: 2 } };
    const view = viewPlan(short, MONDAY);
    if (!view.ok) throw new Error(view.issues[0]?.message);
    expect(check(view.value.problem, view.value.schedule)).toEqual([]);
    const free = viewPlan(shop, MONDAY);
    expect(view.value.figures.lastEnd).toBeGreaterThan((free.ok && free.value.figures.lastEnd) || 0);
  });

  it('refuses a calendar without open hours, naming the machine', () => {
    const closed: Shop = {
      ...shop,
      calendar: shop.calendar.map((c) => ({ ...c, shifts: [], overtime: [] })),
    };
    const result = toProblem(closed, MONDAY);
    expect(!result.ok && result.issues[0]?.message).toMatch(/^Machine S1|^Machine B1/);
  });
});

describe('a machine without an open hour ahead', () => {
  const retired = (id: string): Shop => ({
    ...shop,
    downtime: [
      ...shop.downtime,
      {
        id: `${id}-sold`,
        machineId: id,
        from: MONDAY - 86_400,
        to: MONDAY + 900 * 86_400,
        reason: 'sold',
        revision: 0,
      },
    ] as never,
  });
  const jobs = (s: Shop) => planned(s).problem.input.jobs.length;

  it('is left out with its reason, and the others are planned', () => {
    const { problem, queues, shut } = planned(retired('B2'));
    expect([...shut.keys()]).toEqual(['B2']);
    expect(shut.get('B2')?.message).toMatch(/^Machine B2: Downtime covers every open hour/);
    expect(problem.input.machines.map((m) => m.id)).toEqual(['B1', 'S1']);
    expect(Object.keys(queues)).toEqual(['B1', 'S1']);
    expect(jobs(retired('B2'))).toBe(jobs(shop));
    const view = viewPlan(retired('B2'), MONDAY);
    expect(view.ok && check(problem, view.value.schedule)).toEqual([]);
  });

  it('takes the lines that only it can do off the plan, each with a sentence', () => {
    const long = planned(shop).operations;
    const only = [
      ...new Set(
        [...long.values()].filter((o) => o.machines.every((m) => m.id === 'B1')).map((o) => o.line.id),
      ),
    ];
    const { problem, unplannable } = planned(retired('B1'));
    expect(only.length).toBeGreaterThan(0);
    expect(problem.input.jobs.map((job) => job.id).filter((id) => only.includes(id))).toEqual([]);
    const said = unplannable.filter((p) => p.message.includes('no open hours'));
    expect(said.map((p) => p.subject)).toEqual(only.map((id) => `line ${id}`));
    expect(said[0]?.message).toBe(`Line ${only[0]} can only be bent on Long brake: no open hours ahead.`);
  });

  it('keeps what waits for it when a new plan for the others is taken', () => {
    const stored = withQueues(shop);
    const gone = { ...stored, downtime: retired('B1').downtime };
    const { queues } = planned(gone);
    const edit = applyCommand(
      gone,
      madeFrom(gone, { do: 'plan.replace', queues: queues as never, label: 'Plan the week' }),
    );
    if (!edit.ok) throw new Error(edit.issues[0]?.message);
    const after = withChanges(gone, edit.value.changes);
    const waits = must(after.queue.find((q) => q.id === 'B1')).operations;
    expect(waits.length).toBeGreaterThan(0);
    expect(planned(after).queues).toEqual(queues);
    expect(jobs({ ...after, downtime: shop.downtime })).toBe(jobs(shop));
  });

  it('stops planning only when no machine is left', () => {
    const ids = shop.machine.map((m) => m.id);
    const all = { ...shop, downtime: ids.flatMap((id) => retired(id).downtime) };
    const result = toProblem(all, MONDAY);
    expect(result.ok ? [] : result.issues.map((p) => p.subject)).toEqual(ids.map((id) => `machine ${id}`));
  });
});

/** The shop with its plan stored as it is. */
const withQueues = (s: Shop): Shop => ({
  ...s,
  queue: Object.entries(planned(s).queues).map(([id, operations]) => ({
    id,
    operations: [...operations],
    revision: 0,
  })),
});
