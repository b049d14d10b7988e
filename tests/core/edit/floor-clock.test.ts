import { describe, expect, it } from 'vitest';
import type { Command } from '../../../core/edit/command.ts';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import { floorView } from '../../../core/report/floor.ts';
import { check } from '../../../core/schedule/check.ts';
import { instant } from '../../../core/units/brand.ts';
import { aLine, anOrder, aShop, at } from '../../support/builders.ts';
import { after, editOf } from '../../support/edits.ts';

const monday = (clock: string) => at('2026-11-30', clock);
const shop = aShop({
  order: [anOrder(), anOrder({ id: '1043' })],
  line: [aLine(), aLine({ orderId: '1043' })],
});
const start = (operation: string, machineId: string, clock: string): Command => ({
  do: 'floor.start',
  operation,
  machineId,
  at: monday(clock),
  changeoverSeconds: null,
});
const finish = (clock: string, operation = '1042/1:shear'): Command => ({
  do: 'floor.done',
  operation,
  at: monday(clock),
  good: 20,
  scrapped: 0,
});
const started = after(shop, start('1042/1:shear', 'S1', '07:00'));

describe('after the clock was set back an hour', () => {
  it('work can start: as of the moment the machine was free, which is said', () => {
    const free = after(started, finish('07:40'));
    const edit = editOf(free, start('1043/1:shear', 'S1', '06:45'));
    expect(edit.label).toBe(
      'Start 1043/1 shearing on S1; the clock said Mon 30 Nov 06:45, before what was recorded last, so Mon 30 Nov 07:40 was kept',
    );
    const going = after(free, start('1043/1:shear', 'S1', '06:45'));
    expect(going.record.find((r) => r.id === '1043/1:shear')?.start).toBe(monday('07:40'));
  });

  it('it can be paused, resumed and finished', () => {
    const all = after(
      started,
      { do: 'floor.pause', operation: '1042/1:shear', at: monday('06:10'), reason: 'Sheets' },
      { do: 'floor.resume', operation: '1042/1:shear', at: monday('06:20') },
      finish('06:30'),
    );
    expect(all.record[0]).toMatchObject({
      start: monday('07:00'),
      end: monday('07:00'),
      pauses: [{ from: monday('07:00'), to: monday('07:00') }],
    });
  });

  it.each(['06:00', '04:00'])('the plan still holds every rule at %s', (clock) => {
    const view = viewPlan(started, monday(clock));
    if (!view.ok) throw new Error(view.issues[0]?.message);
    expect(check(view.value.problem, view.value.schedule)).toEqual([]);
  });

  it('also by years', () => {
    const view = viewPlan(started, instant(monday('07:00') - 3 * 365 * 86_400));
    expect(view.ok).toBe(true);
  });
});

it('a brake may begin as soon as its blanks are reported done, whatever the screen’s minute says', () => {
  const sheared = after(started, finish('07:40'));
  const early = instant(monday('07:40') - 25);
  const plan = viewPlan(sheared, early);
  if (!plan.ok) throw new Error(plan.issues[0]?.message);
  expect(floorView(sheared, plan.value, 'B1', early)?.queue[0]?.notYet).toBeNull();
});
