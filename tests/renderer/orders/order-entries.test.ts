import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import {
  entriesOf,
  freshLine,
  freshOrder,
  nextOrderId,
  orderEntries,
  orderField,
  saveCommand,
  withMaterial,
  withPart,
} from '../../../renderer/screens/orders/order-entries.ts';
import { fieldErrors } from '../../../renderer/form/field-errors.ts';
import { aMaterial, aRecord, aShop, at, NOW } from '../../support/builders.ts';

const shop = aShop();

describe('the form of a work order', () => {
  it('saves an order that nobody touched without changing anything', () => {
    const command = saveCommand(entriesOf(shop, '1042')!, NOW);
    expect(command).toEqual({ do: 'order.save', order: shop.order[0], lines: [], removed: [], at: NOW });
    const edit = applyCommand(shop, command);
    expect(edit.ok && edit.value.changes).toEqual([]);
  });

  it('sends the lines that were changed on it, as they were read, and names those that go', () => {
    const read = entriesOf(shop, '1042')!;
    const changed = { ...read, lines: [{ ...read.lines[0]!, quantity: 21 }] };
    expect(saveCommand(changed, NOW)).toMatchObject({
      lines: [{ ...shop.line[0], quantity: 21 }],
      removed: [{ id: '1042/2', revision: 0 }],
    });
  });

  it('never gives a new line the number of one that goes, or of work on record', () => {
    const { order, lines } = entriesOf(shop, '1042')!;
    expect(freshLine(shop, order.id, lines.slice(0, 1)).number).toBe(3);
    const worked = { ...shop, record: [aRecord({ id: '1042/7:shear' })] };
    expect(freshLine(worked, order.id, lines).number).toBe(8);
  });

  it('numbers a new order after the greatest one', () => {
    expect(nextOrderId(shop)).toBe('1044');
  });

  it('says at each field what a new order still needs', () => {
    const errors = fieldErrors(orderEntries, freshOrder(shop));
    expect(Object.keys(errors).sort()).toEqual([
      'lines.0.partId',
      'lines.0.quantity',
      'order.customer',
      'order.due',
    ]);
  });

  it('stores a filled-in new order with its lines named after it', () => {
    const entries = freshOrder(shop);
    const filled = {
      ...entries,
      order: { ...entries.order, customer: 'Copper Kettle Eaves', due: at('2026-12-11') },
      lines: [{ ...withPart(shop, entries.lines[0]!, 'corner'), quantity: 12 }],
    };
    const edit = applyCommand(shop, saveCommand(filled, NOW));
    expect(edit.ok && edit.value.changes.map(({ kind, id }) => `${kind} ${id}`)).toEqual([
      'order 1044',
      'line 1044/1',
    ]);
  });

  it('takes a part’s usual length with the part, and keeps a gauge only where the metal has it', () => {
    const line = freshLine(shop, '1050', []);
    expect(withPart(shop, line, 'corner').lengthMm).toBe(2540);
    const two = aShop({
      material: [
        aMaterial(),
        aMaterial({ id: 'alum', gauges: [{ label: '.032', thicknessMm: 0.81, kgPerM2: 2.2 }] }),
      ],
    });
    expect(withMaterial(two, { ...line, gauge: '26' }, 'galv').gauge).toBe('26');
    expect(withMaterial(two, { ...line, gauge: '26' }, 'alum').gauge).toBe('.032');
  });

  it('shows what the shop’s rules refuse at the line and field they name', () => {
    const entries = entriesOf(shop, '1042')!;
    const wrong = {
      ...entries,
      lines: entries.lines.map((line, i) => (i === 1 ? { ...line, gauge: '18' } : line)),
    };
    const edit = applyCommand(shop, saveCommand(wrong, NOW));
    if (edit.ok) throw new Error('gauge 18 was taken');
    expect(edit.issues.map((problem) => orderField(problem, wrong))).toEqual(['lines.1.gauge']);
  });
});
