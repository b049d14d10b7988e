import fc from 'fast-check';
import { expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import type { Command } from '../../../core/edit/command.ts';
import { operationsOf } from '../../../core/planning/operations.ts';
import { withChanges } from '../../../core/shop/row-change.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { anEverythingShop } from '../../support/everything-shop.ts';
import { NOW } from '../../support/builders.ts';

/** Commands that change each of the rows that an operation is computed from, on whatever the shop has. */
const changes: readonly ((shop: Shop, by: number) => Command | null)[] = [
  (shop, by) => {
    const part = shop.part[by % shop.part.length];
    return part
      ? { do: 'row.save', kind: 'part', row: { ...part, lengthMm: part.lengthMm + 10 } as never }
      : null;
  },
  (shop, by) => {
    const machine = shop.machine[by % shop.machine.length];
    return machine
      ? { do: 'row.save', kind: 'machine', row: { ...machine, maxLengthMm: 900 + 50 * by } as never }
      : null;
  },
  (shop, by) => {
    const sheet = shop.sheet[by % shop.sheet.length];
    return sheet ? { do: 'row.save', kind: 'sheet', row: { ...sheet, costCents: 100 + by } as never } : null;
  },
  (shop, by) => {
    const material = shop.material[by % shop.material.length];
    return material
      ? { do: 'row.save', kind: 'material', row: { ...material, kFactor: 0.3 + by / 1000 } as never }
      : null;
  },
  (shop, by) => {
    const line = shop.line[by % shop.line.length];
    return line ? { do: 'line.save', line: { ...line, quantity: 1 + by } } : null;
  },
  (shop, by) => {
    const order = shop.order[by % shop.order.length];
    return order
      ? {
          ...{ do: 'order.save', order: { ...order, status: by % 2 ? 'held' : 'open' } },
          ...{ lines: [], removed: [], at: NOW },
        }
      : null;
  },
  (shop, by) => {
    const [operation] = operationsOf(shop).operations.slice(by % 3);
    const machineId = operation?.machines[0]?.id;
    return operation && machineId
      ? { ...{ do: 'floor.start', operation: operation.id, machineId, at: NOW }, changeoverSeconds: null }
      : null;
  },
];

it('operations computed once and kept are those that are computed anew, whatever was changed', () => {
  let carriedOut = 0;
  const step = fc.tuple(fc.nat(changes.length - 1), fc.nat(60));
  fc.assert(
    fc.property(fc.array(step, { minLength: 1, maxLength: 12 }), (steps) => {
      let shop = anEverythingShop();
      for (const [which, by] of steps) {
        operationsOf(shop);
        const command = changes[which]?.(shop, by);
        const edit = command && applyCommand(shop, command);
        if (edit?.ok) {
          shop = withChanges(shop, edit.value.changes);
          carriedOut += 1;
        }
        // A copy shares no rows with it, so nothing is known of its lines.
        expect(operationsOf(shop)).toEqual(operationsOf(structuredClone(shop)));
      }
    }),
    { numRuns: 40 },
  );
  expect(carriedOut).toBeGreaterThan(40);
});
