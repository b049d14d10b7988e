import { describe, expect, it } from 'vitest';
import { check } from '../../../core/schedule/check.ts';
import { improve } from '../../../core/schedule/improve.ts';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { toSearchProblem } from '../../../core/planning/to-problem.ts';
import { aLine, anOrder, aRecord, aShop, at } from '../../support/builders.ts';

/** The plan while something is under way: 1042/1 on the shear since 07:00, twenty pieces. */
const NOON = at('2026-11-30', '11:00');
const underWay = (own: Parameters<typeof aRecord>[0]): Shop =>
  aShop({
    order: [anOrder()],
    line: [aLine()],
    record: [aRecord({ good: 0, scrapped: 0, end: null, ...own })],
  });

function planned(shop: Shop, now = NOON) {
  const view = viewPlan(shop, now);
  if (!view.ok) throw new Error(view.issues.map((p) => p.message).join(' '));
  expect(check(view.value.problem, view.value.schedule)).toEqual([]);
  const of = (id: string) => {
    const found = view.value.schedule.operations.find((o) => o.operation === id);
    if (!found) throw new Error(`${id} is not in the plan`);
    return found;
  };
  const estimate = view.value.operations.get('1042/1:shear')?.machines[0]?.seconds ?? NaN;
  return { shear: of('1042/1:shear'), brake: of('1042/1:brake'), estimate };
}

describe('work under way', () => {
  it('ends as estimated while it is in time', () => {
    const now = at('2026-11-30', '07:02');
    const { shear, estimate } = planned(underWay({ start: at('2026-11-30', '07:00') }), now);
    expect(shear.end).toBe(shear.start + estimate);
  });

  it('that takes longer than estimated still ends after now: its last piece is left', () => {
    const { shear, brake, estimate } = planned(underWay({ start: at('2026-11-30', '07:00') }));
    expect(estimate).toBeLessThan(4 * 3600);
    expect(shear.end).toBe(NOON + Math.ceil(estimate / 20));
    expect(brake.start).toBeGreaterThanOrEqual(shear.end);
  });

  it('is left with the pieces that are not counted yet, from now on', () => {
    const { shear, estimate } = planned(underWay({ start: at('2026-11-30', '07:00'), good: 4, scrapped: 1 }));
    expect(shear.end).toBe(NOON + Math.ceil(estimate * 0.75));
  });

  it('does no work while it is paused', () => {
    const start = at('2026-11-30', '10:50');
    const pauses = [{ from: at('2026-11-30', '10:52'), to: null, reason: 'No sheets' }];
    const { shear, estimate } = planned(underWay({ start, pauses }));
    expect(shear.end).toBe(NOON + estimate - 2 * 60);
  });

  it('stands still over closed hours', () => {
    const evening = at('2026-11-30', '20:00');
    const { shear, estimate } = planned(underWay({ start: at('2026-11-30', '15:25') }), evening);
    expect(shear.end).toBe(at('2026-12-01', '07:00') + estimate - 5 * 60);
  });
});

it('scrapped blanks shorten the bending of their line', () => {
  const bent = (good: number) => {
    const shop = aShop({ line: [aLine()], record: [aRecord({ good, scrapped: 20 - good })] });
    const view = viewPlan(shop, NOON);
    return view.ok ? view.value.operations.get('1042/1:brake') : undefined;
  };
  expect(bent(17)?.quantity).toBe(17);
  expect(bent(17)?.machines[0]?.seconds).toBeLessThan(bent(20)?.machines[0]?.seconds ?? NaN);
  expect(bent(0)).toBeUndefined();
});

it('the week can be planned while work is under way on every machine, one of them overdue, one paused', () => {
  const line = (number: number) => aLine({ number, gauge: number % 2 ? '24' : '26' });
  const shop = aShop({
    order: [anOrder()],
    line: [1, 2, 3, 4, 5, 6].map(line),
    record: [
      aRecord({ good: 20, scrapped: 0 }),
      aRecord({ id: '1042/2:shear', gauge: '26', start: at('2026-11-30', '08:10'), end: null, good: 0 }),
      aRecord({
        id: '1042/1:brake',
        machineId: 'B1',
        start: at('2026-11-30', '10:00'),
        end: null,
        good: 5,
        pauses: [{ from: at('2026-11-30', '10:30'), to: null, reason: 'Tooling' }],
      }),
    ],
  });
  const search = toSearchProblem(shop, NOON);
  if (!search.ok) throw new Error(search.issues.map((p) => p.message).join(' '));
  let plans = 0;
  for (const { queues, schedule } of improve(search.value.problem, { seed: 1 })) {
    expect(check(search.value.problem, schedule)).toEqual([]);
    expect(queues.S1?.[0]).toBe('1042/2:shear');
    expect(queues.B1?.[0]).toBe('1042/1:brake');
    if (++plans === 20) break;
  }
  expect(plans).toBeGreaterThan(0);
});
