import { describe, expect, it } from 'vitest';
import { viewDueDateOrder, viewPlan } from '../../../core/planning/plan-view.ts';
import { formatDuration } from '../../../core/units/duration.ts';
import { comparedFigures, gainSentence } from '../../../renderer/screens/load/comparison.ts';
import { isOver, machineLoads } from '../../../renderer/screens/load/load-days.ts';
import { aLine, anOrder, aShop, at, NOW, ZONE } from '../../support/builders.ts';

const planned = (shop: ReturnType<typeof aShop>, now = NOW) => {
  const plan = viewPlan(shop, now);
  if (!plan.ok) throw new Error('the test shop cannot be planned');
  return plan.value;
};

describe('the load of a machine', () => {
  const shop = aShop();
  const plan = planned(shop);

  it('adds up to all the work and changeover of its queue when the range holds it all', () => {
    for (const load of machineLoads(shop, plan, NOW, 28, 'planned')) {
      const queue = plan.schedule.operations.filter((o) => o.machine === load.machine.id);
      const changeover = queue.reduce((sum, o) => sum + o.changeoverSeconds, 0);
      const work = queue.reduce(
        (sum, o) => sum + plan.operations.get(o.operation)!.machines.find((m) => m.id === o.machine)!.seconds,
        0,
      );
      expect(load.changeover).toBe(changeover);
      expect(load.work).toBe(work);
    }
  });

  it('has the open hours of its calendar: eight a day here, four on the Saturday of overtime, none on Sunday', () => {
    const shear = machineLoads(shop, plan, NOW, 7, 'planned').find((load) => load.machine.id === 'S1')!;
    expect(shear.days.map((day) => day.capacity / 3600)).toEqual([8, 8, 8, 8, 8, 4, 0]);
    expect(shear.days[6]?.utilisation).toBeNull();
  });

  it('has only the hours left of a day that has begun', () => {
    const noon = at('2026-11-30', '12:00');
    const shear = machineLoads(shop, planned(shop, noon), noon, 1, 'planned').find(
      (l) => l.machine.id === 'S1',
    )!;
    expect(shear.days.map((day) => day.capacity / 3600)).toEqual([3.5]);
  });

  it('is never more than a day has open when it is counted as planned', () => {
    const days = machineLoads(shop, plan, NOW, 28, 'planned').flatMap((load) => load.days);
    expect(days.filter(isOver)).toEqual([]);
  });

  it('counted when due falls on the due day, overdue work on today, and later work not at all', () => {
    const due = aShop({
      order: [
        anOrder({ due: at('2026-11-20') }),
        anOrder({ id: '1043', due: at('2026-12-03') }),
        anOrder({ id: '1044', due: at('2027-01-15') }),
      ],
      line: [
        aLine(),
        aLine({ orderId: '1043' }),
        aLine({ orderId: '1044' }),
        aLine({ orderId: '1044', number: 2, due: at('2026-12-04') }),
      ],
    });
    const shear = machineLoads(due, planned(due), NOW, 7, 'due').find((load) => load.machine.id === 'S1')!;
    expect(shear.days.map((day) => day.work > 0)).toEqual([true, false, false, true, true, false, false]);
  });

  it('counted when due can be more than a day has open, and says so', () => {
    const much = aShop({ order: [anOrder({ due: at('2026-12-01') })], line: [aLine({ quantity: 4000 })] });
    const brake = machineLoads(much, planned(much), NOW, 7, 'due').find((load) => load.machine.id === 'B1')!;
    expect(brake.days.map(isOver)).toEqual([false, true, false, false, false, false, false]);
  });
});

describe('the plan beside due-date order', () => {
  const shop = aShop();
  const plan = planned(shop);
  const yardstick = viewDueDateOrder(shop, plan);
  const other = yardstick.ok ? yardstick.value.figures : null;

  it('is the same as itself in every figure', () => {
    expect(comparedFigures(plan.figures, plan.figures, ZONE).map(({ gain }) => gain)).toEqual(
      Array(9).fill('the same'),
    );
  });

  it('calls fewer, less and sooner better, and more on time better', () => {
    const better = {
      ...plan.figures,
      lateLines: 0,
      onTimeShare: 1,
      tardiness: 0,
      overdue: 0,
      changeovers: 1,
      changeoverSeconds: 600,
      changeoverShare: 0.01,
      lastEnd: at('2026-12-01'),
    };
    const worse = {
      ...better,
      lateLines: 2,
      onTimeShare: 0.5,
      tardiness: 7200,
      overdue: 1800,
      changeovers: 4,
      changeoverSeconds: 2400,
      changeoverShare: 0.2,
      lastEnd: at('2026-12-02'),
    };
    const rows = comparedFigures(better, worse, ZONE);
    expect(rows.map((row) => row.better)).toEqual(Array(9).fill('plan'));
    expect(rows.map((row) => row.gain)).toEqual([
      '2 fewer',
      '50 points higher',
      '2 h less',
      '30 min less',
      '1 h 30 min less',
      '3 fewer',
      '30 min less',
      '19 points less',
      '24 h sooner',
    ]);
    expect(comparedFigures({ ...better, onTimeShare: 0.99 }, better, ZONE)[1]).toMatchObject({
      plan: '99 %',
      gain: '1 point lower',
    });
    // 121 of 160 lines: never rounded up, so that the load and the board say the same.
    expect(comparedFigures({ ...better, onTimeShare: 121 / 160 }, better, ZONE)[1]?.plan).toBe('75 %');
    expect(comparedFigures(worse, better, ZONE).map((row) => row.better)).toEqual(Array(9).fill('yardstick'));
    expect(gainSentence(better, worse)).toBe(
      'Against orders in due-date order, without batching: 2 fewer late lines and 30 min less changeover.',
    );
  });

  it('shows the plan’s own changeover time', () => {
    const row = comparedFigures(plan.figures, other, ZONE).find(({ label }) => label === 'Changeover time');
    expect(row?.plan).toBe(formatDuration(plan.schedule.terms.changeover));
  });

  it('leaves minutes away from a hundred hours up', () => {
    const rows = comparedFigures({ ...plan.figures, tardiness: 12_340_000 }, null, ZONE);
    expect(rows.find(({ label }) => label === 'Hours late')?.plan).toBe('3428 h');
  });

  it('says when there is nothing to compare', () => {
    expect(gainSentence({ ...plan.figures, lines: 0 }, null)).toBe('Nothing is planned yet.');
    expect(comparedFigures(plan.figures, null, ZONE).every((row) => row.yardstick === null)).toBe(true);
  });
});
