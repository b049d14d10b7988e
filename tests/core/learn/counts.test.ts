import { describe, expect, it } from 'vitest';
import { estimateBrake } from '../../../core/estimate/brake.ts';
import { secondsOf, standardCounts } from '../../../core/learn/counts.ts';
import { estimateShear } from '../../../core/estimate/shear.ts';
import { operationsOf } from '../../../core/planning/operations.ts';
import { err, ok, issue } from '../../../core/result.ts';
import { demoShop } from '../demo-data/demo-shop.ts';

const shop = demoShop();

describe('the counts of an operation', () => {
  it('times the standards and the allowance are its estimate, for every operation of the demo shop', () => {
    let compared = 0;
    for (const { id, stage, part, blank, sheet, line, machines } of operationsOf(shop).operations)
      for (const able of machines) {
        const machine = shop.machine.find((m) => m.id === able.id)!;
        const work = { part, blank, sheet, quantity: line.quantity };
        const counts = standardCounts(machine, (as) =>
          stage === 'shear'
            ? estimateShear({ ...work, machine: as, units: 'in' })
            : ok(estimateBrake({ ...work, machine: as })),
        );
        if (!counts.ok) throw new Error(id);
        // Each element of the estimate and its allowance is rounded to a second.
        expect(Math.abs(secondsOf(machine, counts.value) - able.seconds), id).toBeLessThan(5);
        compared += 1;
      }
    expect(compared).toBeGreaterThan(300);
  });

  it('pass on why there is no estimate', () => {
    const none = err(issue('blank', 'girth', 'It does not fit.', 'Choose a wider sheet.'));
    expect(standardCounts(shop.machine[0]!, () => none)).toEqual(none);
  });
});
