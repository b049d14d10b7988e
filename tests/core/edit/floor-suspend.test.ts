import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import type { Command } from '../../../core/edit/command.ts';
import { earliestStart } from '../../../core/edit/floor-times.ts';
import { invert, withChanges } from '../../../core/shop/row-change.ts';
import { floorView } from '../../../core/report/floor.ts';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import { check } from '../../../core/schedule/check.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { toSearchProblem } from '../../../core/planning/to-problem.ts';
import { sentence } from '../../../core/result.ts';
import { aLine, anOrder, aShop, at } from '../../support/builders.ts';
import { aMove, madeFrom } from '../../support/edits.ts';

const monday = (clock: string) => at('2026-11-30', clock);
const lines = ['1042', '1043', '1044'].map((orderId) => aLine({ orderId }));
const shop = aShop({
  order: lines.map(({ orderId }) => anOrder({ id: orderId })),
  line: lines,
  queue: [{ id: 'S1', operations: lines.map(({ id }) => `${id}:shear`), revision: 0 }],
});

const begin = (line: string, clock: string): Command => ({
  do: 'floor.start',
  operation: `${line}:shear`,
  machineId: 'S1',
  at: monday(clock),
  changeoverSeconds: null,
});
const pause = (clock: string): Command => ({
  do: 'floor.pause',
  operation: '1042/1:shear',
  at: monday(clock),
  reason: 'Rush work elsewhere',
});
const count = (good: number): Command => ({
  do: 'floor.count',
  operation: '1042/1:shear',
  good,
  scrapped: 0,
});
const suspended: Command = { do: 'floor.suspend', operation: '1042/1:shear', good: 0, scrapped: 0 };
const given = (command: Command) => ({ ...command, given: true }) as Command;
const goOn = (clock: string): Command => ({
  do: 'floor.resume',
  operation: '1042/1:shear',
  at: monday(clock),
});
const finish = (line: string, clock: string, good = 20): Command => ({
  do: 'floor.done',
  operation: `${line}:shear`,
  at: monday(clock),
  good,
  scrapped: 0,
});

const after = (before: Shop, ...commands: Command[]): Shop =>
  commands.reduce((stands, command) => {
    const edit = applyCommand(stands, command);
    if (!edit.ok) throw new Error(sentence(edit.issues));
    return withChanges(stands, edit.value.changes);
  }, before);
const refusal = (stands: Shop, command: Command): string => {
  const edit = applyCommand(stands, command);
  return edit.ok ? 'taken' : sentence(edit.issues);
};

const paused = after(shop, begin('1042/1', '07:00'), count(5), pause('07:10'));
const left = after(paused, suspended);

function planAt(stands: Shop, clock: string) {
  const view = viewPlan(stands, monday(clock));
  if (!view.ok) throw new Error(sentence(view.issues));
  expect(check(view.value.problem, view.value.schedule)).toEqual([]);
  return view.value;
}

describe('a paused operation that is set aside', () => {
  it('waits behind the next one, with its pieces counted; the plan keeps every rule', () => {
    const plan = planAt(left, '07:10');
    expect(plan.queues.S1).toEqual(['1043/1:shear', '1042/1:shear', '1044/1:shear']);
    const search = toSearchProblem(left, monday('07:10'));
    expect(search.ok).toBe(true);
    expect(left.record[0]).toMatchObject({ good: 5, end: null });
  });

  it('takes a quarter less when a quarter is counted', () => {
    const { schedule, operations } = planAt(left, '07:10');
    const own = schedule.operations.find((o) => o.operation === '1042/1:shear')!;
    const whole = operations.get('1042/1:shear')!.machines[0]!.seconds;
    expect(own.end - own.start).toBe(Math.ceil(whole * 0.75));
  });

  it('leaves its machine free, set up as it was for it', () => {
    const plan = planAt(left, '07:10');
    const view = floorView(left, plan, 'S1', monday('07:10'))!;
    expect(view.running).toBeNull();
    expect(view.queue.map(({ operation }) => operation.id).slice(0, 2)).toEqual([
      '1043/1:shear',
      '1042/1:shear',
    ]);
    expect(left.machine.find((m) => m.id === 'S1')!.state).toMatchObject({ gauge: '24', colour: 'moss' });
    expect(after(left, begin('1043/1', '07:10')).record).toHaveLength(2);
  });

  it('goes on when the machine is free again, and not before', () => {
    const other = after(left, begin('1043/1', '07:12'));
    expect(refusal(other, goOn('07:20'))).toMatch(/1043\/1 shearing is still under way on S1/);
    const free = after(other, finish('1043/1', '07:30'));
    const going = after(free, goOn('07:20'));
    expect(planAt(going, '07:30').queues.S1![0]).toBe('1042/1:shear');
    expect(going.record.find((r) => r.id === '1042/1:shear')!.pauses).toEqual([
      { from: monday('07:10'), to: monday('07:30'), reason: 'Rush work elsewhere', suspended: true },
    ]);
    const done = after(going, finish('1042/1', '07:50', 15));
    expect(done.record.find((r) => r.id === '1042/1:shear')).toMatchObject({
      good: 20,
      end: monday('07:50'),
    });
  });

  it('is undone as one step', () => {
    const edit = applyCommand(paused, suspended);
    if (!edit.ok) throw new Error(sentence(edit.issues));
    const back = withChanges(withChanges(paused, edit.value.changes), invert(edit.value.changes));
    expect(back.record).toMatchObject(paused.record.map(({ revision: _, ...row }) => row));
    expect(back.queue).toMatchObject(paused.queue.map(({ revision: _, ...row }) => row));
  });
});

describe('an operation is not set aside', () => {
  it('with more good pieces than it makes', () => {
    expect(refusal(paused, { ...suspended, good: 16 } as Command)).toMatch(
      /makes 20 pieces, so 21 cannot be good/,
    );
  });

  it('while it is worked on, or when it is aside already', () => {
    expect(refusal(after(shop, begin('1042/1', '07:00')), suspended)).toMatch(
      /is not paused\. Pause it first/,
    );
    expect(refusal(left, suspended)).toMatch(/is already suspended/);
    expect(refusal(shop, suspended)).toMatch(/has not started/);
  });

  it('while its blanks are being bent', () => {
    const lots = { ...shop, settings: { ...shop.settings, transferShare: 0.25 } };
    const bending = after(lots, begin('1042/1', '07:00'), count(5), {
      do: 'floor.start',
      operation: '1042/1:brake',
      machineId: 'B1',
      at: monday('07:10'),
      changeoverSeconds: null,
    });
    expect(refusal(after(bending, pause('07:20')), suspended)).toMatch(
      /1042\/1 bending has started and waits for these blanks\. Shear the rest first/,
    );
  });
});

describe('beside work that was set aside', () => {
  it('nothing begins on its machine before it was, nor its bending before it goes on', () => {
    expect(refusal(left, given(begin('1043/1', '07:05')))).toMatch(
      /S1 was at work on 1042\/1 shearing until .* 07:10/,
    );
    expect(earliestStart(left, '1043/1:shear', 'S1')).toBe(monday('07:10'));
    const lots = { ...left, settings: { ...left.settings, transferShare: 0.25 } };
    const bend = { ...begin('1042/1', '07:20'), operation: '1042/1:brake', machineId: 'B1' } as Command;
    expect(refusal(lots, bend)).toMatch(/The shearing of line 1042\/1 is suspended\. Resume it first/);
  });

  it('it goes to no other machine', () => {
    const shears = [...left.machine, { ...left.machine.find((m) => m.id === 'S1')!, id: 'S2' }];
    const move = aMove('1042/1:shear', 'S2', 0);
    const refused = (from: Shop) => refusal(from, madeFrom(from, move));
    expect(refused({ ...left, machine: shears })).toMatch(/started on S1 and suspended there/);
    expect(refused({ ...paused, machine: shears, record: [] })).toBe('taken');
  });
});
