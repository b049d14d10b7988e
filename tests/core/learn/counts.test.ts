import { describe, expect, it } from 'vitest';
import { estimateBrake } from '../../../core/estimate/brake.ts';
import { countIn, probe, secondsOf, timeStandards, type Counts } from '../../../core/learn/counts.ts';
import type { Estimate } from '../../../core/estimate/estimate.ts';
import { estimateShear } from '../../../core/estimate/shear.ts';
import { operationsOf } from '../../../core/planning/operations.ts';
import { ok, type Result } from '../../../core/result.ts';
import type { Machine } from '../../../core/shop/machine.ts';
import { demoShop } from '../demo-data/demo-shop.ts';
import { inches } from '../../support/writing.ts';

const shop = demoShop();

/** The count of each time standard, by an estimate on the machine probed for it. */
const countsBy = (machine: Machine, estimateOn: (probed: Machine) => Result<Estimate>): Counts =>
  Object.fromEntries(
    timeStandards(machine).map(({ key }) => {
      const estimate = estimateOn(probe(machine, key));
      if (!estimate.ok) throw new Error(estimate.issues.map((i) => i.message).join());
      return [key, countIn(estimate.value)];
    }),
  );

describe('the counts of an operation', () => {
  it('times the standards and the allowance are its estimate, for every operation of the demo shop', () => {
    let compared = 0;
    for (const { id, stage, part, blank, sheet, line, machines } of operationsOf(shop).operations)
      for (const able of machines) {
        const machine = shop.machine.find((m) => m.id === able.id)!;
        const work = { part, blank, sheet, quantity: line.quantity };
        const counts = countsBy(machine, (as) =>
          stage === 'shear'
            ? estimateShear({ ...work, machine: as, units: inches })
            : ok(estimateBrake({ ...work, machine: as })),
        );
        // Each element of the estimate and its allowance is rounded to a second.
        expect(Math.abs(secondsOf(machine, counts) - able.seconds), id).toBeLessThan(5);
        compared += 1;
      }
    expect(compared).toBeGreaterThan(300);
  });
});
