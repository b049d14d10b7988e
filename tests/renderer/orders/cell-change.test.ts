import { describe, expect, it } from 'vitest';
import { cellName, cellText, changeCell } from '../../../renderer/screens/orders/cell-change.ts';
import { lineRows } from '../../../renderer/screens/orders/line-rows.ts';
import { aLine, anOrder, aShop, at, NOW, ZONE } from '../../support/builders.ts';

const shop = aShop();
const row = lineRows(shop, null).find(({ id }) => id === '1042/1')!;
const change = (of: typeof shop, ...rest: [typeof row, Parameters<typeof changeCell>[2], string]) =>
  changeCell(of, ...rest, NOW);
const refusal = (result: ReturnType<typeof changeCell>) => (result.ok ? null : result.issues[0]?.message);

describe('a value typed in the table', () => {
  it('becomes a command when it is a good quantity', () => {
    expect(change(shop, row, 'quantity', '44')).toEqual({
      ok: true,
      value: { do: 'line.save', line: { ...row.line, quantity: 44 } },
    });
  });

  it.each([
    ['-4', 'Pieces: At least 1.'],
    ['2.5', 'The quantity must be a whole number, not 2.5.'],
    ['2,5', 'The quantity must be a whole number, not 2,5.'],
    ['ten', '“ten” is not a number.'],
    ['1e3', '“1e3” is not a number.'],
    ['0x10', '“0x10” is not a number.'],
    ['2,000', '“2,000” can be 2000 or 2.'],
    ['', 'A number is needed here.'],
  ])('is refused in a sentence when the quantity is “%s”', (text, sentence) => {
    expect(refusal(change(shop, row, 'quantity', text))).toBe(sentence);
  });

  it('asks for nothing when it is what stood there', () => {
    expect(change(shop, row, 'due', cellText(row, 'due', ZONE))).toEqual({ ok: true, value: null });
  });

  it('is the shop’s wall clock for a due date, and changes it for every line of the order', () => {
    const changed = change(shop, row, 'due', '2026-12-07T09:30');
    const command = changed.ok ? changed.value : null;
    if (command?.do !== 'order.save') throw new Error('not an order.save');
    expect(command.order.due).toBe(at('2026-12-07', '09:30'));
    expect([command.lines, command.removed]).toEqual([[], []]);
  });

  it('is no due date that is past: that is asked about where the whole order is seen', () => {
    expect(refusal(change(shop, row, 'due', '2020-01-06T09:30'))).toBe('Mon 6 Jan 2020 09:30 is past.');
  });

  it('changes a line’s own due date where it has one, and no other line’s', () => {
    const own = aShop({
      order: [anOrder()],
      line: [aLine({ due: at('2026-12-02') }), aLine({ number: 2 })],
    });
    const [first] = lineRows(own, null);
    expect(cellText(first!, 'due', ZONE)).toBe('2026-12-02T17:00');
    expect(cellName(first!, 'due')).toBe('Due date of the line');
    expect(change(own, first!, 'due', '2026-12-03T09:00')).toEqual({
      ok: true,
      value: { do: 'line.save', line: { ...first!.line, due: at('2026-12-03', '09:00') } },
    });
  });

  it('is refused when the due date would come before the release', () => {
    const released = aShop({ order: [anOrder({ release: at('2026-12-02') }), anOrder({ id: '1043' })] });
    const [first] = lineRows(released, null);
    expect(refusal(change(released, first!, 'due', '2026-12-01T12:00'))).toMatch(
      /“Not before” is not before the due/,
    );
  });
});
