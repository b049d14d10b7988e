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
import { aMaterial, aShop, at } from '../../support/builders.ts';

const shop = aShop();

describe('the form of a work order', () => {
  it('saves an order that nobody touched without changing anything', () => {
    const command = saveCommand(entriesOf(shop, '1042')!);
    if (command.do !== 'order.save') throw new Error('not an order.save');
    expect(command.order).toEqual(shop.order[0]);
    expect(command.lines).toEqual(shop.line.filter((line) => line.orderId === '1042'));
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
    const command = saveCommand({
      order: { ...entries.order, customer: 'Copper Kettle Eaves', due: at('2026-12-11') },
      lines: [{ ...withPart(shop, entries.lines[0]!, 'corner'), quantity: 12 }],
    });
    const edit = applyCommand(shop, command);
    expect(edit.ok && edit.value.changes.map(({ kind, id }) => `${kind} ${id}`)).toEqual([
      'order 1044',
      'line 1044/1',
    ]);
  });

  it('takes a part’s usual length with the part, and keeps a gauge only where the metal has it', () => {
    const line = freshLine(shop, []);
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
    const edit = applyCommand(shop, saveCommand(wrong));
    if (edit.ok) throw new Error('gauge 18 was taken');
    expect(edit.issues.map((problem) => orderField(problem, wrong))).toEqual(['lines.1.gauge']);
  });
});
