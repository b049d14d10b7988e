import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import type { Command } from '../../../core/edit/command.ts';
import { withChanges } from '../../../core/shop/row-change.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, anOrder, aShop, at } from '../../support/builders.ts';
import { after, editOf, refusalOf } from '../../support/edits.ts';

const monday = (clock: string) => at('2026-11-30', clock);
const operation = '1042/1:shear';
const started = after(aShop({ order: [anOrder()], line: [aLine()] }), {
  do: 'floor.start',
  operation,
  machineId: 'S1',
  at: monday('07:00'),
  changeoverSeconds: null,
});
const count = (good: number, scrapped = 0): Command => ({ do: 'floor.count', operation, good, scrapped });
const countsOf = ({ record }: Shop) => [record[0]!.good, record[0]!.scrapped];

describe('counts of several screens', () => {
  it('add up: one counts 2, another 3 from the same picture', () => {
    expect(countsOf(after(started, count(2), count(3)))).toEqual([5, 0]);
    expect(editOf(started, count(2, 1)).label).toBe('Count +2 good, +1 scrapped of 1042/1 shearing');
  });

  it('add up in any order, as far as each is taken', () => {
    const by = fc.record({
      good: fc.integer({ min: -4, max: 8 }),
      scrapped: fc.integer({ min: -2, max: 3 }),
    });
    fc.assert(
      fc.property(fc.array(by, { maxLength: 15 }), (all) => {
        let now = started;
        const sum = [0, 0];
        for (const { good, scrapped } of all) {
          const edit = applyCommand(now, count(good, scrapped));
          const fits = sum[0]! + good >= 0 && sum[0]! + good <= 20 && sum[1]! + scrapped >= 0;
          expect(edit.ok).toBe(fits);
          if (!edit.ok) continue;
          now = withChanges(now, edit.value.changes);
          sum[0]! += good;
          sum[1]! += scrapped;
        }
        expect(countsOf(now)).toEqual(sum);
      }),
    );
  });

  it('never come below none', () => {
    expect(refusalOf(after(started, count(2)), count(-3))).toMatch(
      /2 good and 0 scrapped pieces of 1042\/1 shearing are counted; fewer than none cannot be/,
    );
  });

  it('count for the report that the work is done, which brings only the rest', () => {
    const done: Command = { do: 'floor.done', operation, at: monday('07:40'), good: 15, scrapped: 0 };
    expect(countsOf(after(started, count(2), count(3), done))).toEqual([20, 0]);
    expect(refusalOf(after(started, count(2), count(4)), done)).toMatch(/makes 20 pieces, so 21 cannot/);
  });
});

describe('a changeover', () => {
  const ready = aShop({
    order: [anOrder(), anOrder({ id: '1043' })],
    line: [aLine(), aLine({ orderId: '1043' })],
  });
  const changing: Command = { do: 'floor.changeover', operation, machineId: 'S1', at: monday('07:00') };
  const start = (of: string, clock: string): Command => ({
    do: 'floor.start',
    operation: of,
    machineId: 'S1',
    at: monday(clock),
    changeoverSeconds: null,
  });

  it('stands with its machine as soon as it begins, and its time goes with the work that starts', () => {
    const begun = after(ready, changing);
    expect(begun.changeover).toMatchObject([{ id: 'S1', operation, since: monday('07:00') }]);
    const running = after(begun, start(operation, '07:09'));
    expect(running.changeover).toEqual([]);
    expect(running.record[0]?.changeoverSeconds).toBe(540);
  });

  it('is not the changeover of other work that starts there, and is over with it', () => {
    const other = after(ready, changing, start('1043/1:shear', '07:09'));
    expect(other.record[0]?.changeoverSeconds).toBeNull();
    expect(other.changeover).toEqual([]);
  });

  it('takes the place of one for other work, but none begins while the machine works', () => {
    const anew = after(ready, changing, {
      ...changing,
      operation: '1043/1:shear',
      at: monday('07:05'),
    } as Command);
    expect(anew.changeover).toMatchObject([{ operation: '1043/1:shear', since: monday('07:05') }]);
    const busy = after(ready, start('1043/1:shear', '07:00'));
    expect(refusalOf(busy, changing)).toMatch(/1043\/1 shearing is still under way on S1/);
    expect(refusalOf(busy, { ...changing, operation: '1043/1:shear' } as Command)).toMatch(/already started/);
    expect(refusalOf(ready, { ...changing, machineId: 'B1' } as Command)).toMatch(/cannot go to B1/);
    expect(refusalOf(ready, { ...changing, operation: '9/1:shear' } as Command)).toMatch(/not open/);
  });

  it('at the brake may begin before the blanks are there', () => {
    const early = after(ready, { ...changing, operation: '1042/1:brake', machineId: 'B1' } as Command);
    expect(early.changeover).toMatchObject([{ id: 'B1', operation: '1042/1:brake' }]);
  });
});
