import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import type { Command } from '../../../core/edit/command.ts';
import { operationsOf } from '../../../core/planning/operations.ts';
import { withChanges } from '../../../core/shop/row-change.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aCutList, aGroup, aStep } from '../../support/stock-builders.ts';
import { aLine, anOrder, aShop, NOW } from '../../support/builders.ts';
import { finish, monday, start } from '../../support/floor-commands.ts';
import { after, editOf, refusalOf } from '../../support/edits.ts';

const lineOf = (shop: Shop, id: string) => shop.line.find((line) => line.id === id);
/** The line as the planner saves it, over what stands. */
const save = (shop: Shop, own: Partial<ReturnType<typeof aLine>>): Command => ({
  do: 'line.save',
  line: { ...lineOf(shop, '1042/1')!, ...own },
});

const shop = aShop({ order: [anOrder()], line: [aLine({ quantity: 16 })] });
const shearing = after(shop, start('1042/1:shear', 'S1', '07:00'));
const sheared = after(shearing, finish('1042/1:shear', '07:30', 16));

describe('more pieces of a line whose shearing is done', () => {
  const more = after(sheared, save(sheared, { quantity: 24 }));

  it('are a line of their own, so that the floor is told to shear 8 more', () => {
    expect(lineOf(more, '1042/1')?.quantity).toBe(16);
    expect(lineOf(more, '1042/2')).toMatchObject({ quantity: 8, status: 'open', makeUpFor: null });
    const asked = operationsOf(more).operations.map(({ id, quantity }) => [id, quantity]);
    expect(asked).toEqual([
      ['1042/1:brake', 16],
      ['1042/2:shear', 8],
      ['1042/2:brake', 8],
    ]);
  });

  it('are said to be one', () => {
    expect(editOf(sheared, save(sheared, { quantity: 24 })).label).toBe(
      'Change line 1042/1; 16 of line 1042/1 were cut already, so its 8 more are line 1042/2',
    );
  });

  it('keep the order open until they are made', () => {
    const bent = after(more, start('1042/1:brake', 'B1', '07:30'), finish('1042/1:brake', '08:30', 16));
    expect([bent.order[0]?.status, lineOf(bent, '1042/1')?.status]).toEqual(['open', 'done']);
  });

  it('are the same from the order dialog, each line with a number of its own', () => {
    const two = aShop({
      order: [anOrder()],
      line: [aLine({ quantity: 16 }), aLine({ number: 2, quantity: 4 })],
    });
    const both = after(
      two,
      start('1042/1:shear', 'S1', '07:00'),
      finish('1042/1:shear', '07:30', 16),
      start('1042/2:shear', 'S1', '07:30'),
      finish('1042/2:shear', '07:40', 4),
    );
    const saved = after(both, {
      do: 'order.save',
      order: both.order[0]!,
      lines: [...both.line.map((line) => ({ ...line, quantity: line.quantity + 3 })), aLine({ number: 3 })],
      removed: [],
      at: NOW,
    });
    expect(saved.line.map(({ number, quantity }) => [number, quantity])).toEqual([
      [1, 16],
      [2, 4],
      [3, 20],
      [4, 3],
      [5, 3],
    ]);
  });

  it('are refused while the order is done: it is opened first', () => {
    const closed = after(sheared, start('1042/1:brake', 'B1', '07:30'), finish('1042/1:brake', '08:30', 16));
    expect(refusalOf(closed, save(closed, { quantity: 24 }))).toMatch(/is done\. Open the work order first/);
  });
});

describe('a changed quantity while the shearing is under way', () => {
  it('is what the shear makes: more is counted to the new figure', () => {
    const more = after(shearing, save(shearing, { quantity: 24 }));
    expect(more.line).toHaveLength(1);
    expect(refusalOf(more, finish('1042/1:shear', '07:30', 16))).toMatch(/8 of 24 pieces/);
    const cut = after(more, finish('1042/1:shear', '07:30', 24));
    expect(cut.record[0]).toMatchObject({ quantity: 24, good: 24 });
  });

  it('and less leaves over what is counted already, which is said', () => {
    const counted = after(shearing, {
      do: 'floor.count',
      operation: '1042/1:shear',
      good: 12,
      scrapped: 0,
    });
    const edit = editOf(counted, save(counted, { quantity: 10 }));
    expect(edit.label).toBe('Change line 1042/1; 12 blanks of line 1042/1 are cut already, 2 are left over');
    const less = withChanges(counted, edit.changes);
    const done = after(less, finish('1042/1:shear', '07:30', 0));
    expect(done.record[0]).toMatchObject({ quantity: 12, good: 12, scrapped: 0 });
    expect(operationsOf(done).operations.map(({ id, quantity }) => [id, quantity])).toEqual([
      ['1042/1:brake', 10],
    ]);
  });
});

describe('fewer pieces than are cut', () => {
  it('leave blanks over, and the brake makes the new figure', () => {
    const edit = editOf(sheared, save(sheared, { quantity: 10 }));
    expect(edit.label).toMatch(/16 blanks of line 1042\/1 are cut already, 6 are left over/);
    const less = withChanges(sheared, edit.changes);
    const bent = after(less, start('1042/1:brake', 'B1', '07:30'), finish('1042/1:brake', '08:00', 10));
    expect(lineOf(bent, '1042/1')).toMatchObject({ status: 'done', quantity: 10 });
  });

  it('leave over what lies on issued sheets too', () => {
    const issued = {
      ...shop,
      cutList: [
        aCutList({
          id: '1042/1 1',
          taken: NOW,
          groups: [aGroup()],
          steps: [aStep({ lines: [{ line: '1042/1', pieces: 16 }] })],
        }),
      ],
    };
    expect(editOf(issued, save(issued, { quantity: 10 })).label).toMatch(
      /16 blanks of line 1042\/1 are cut or on issued sheets already, 6 are left over/,
    );
    expect(refusalOf(issued, save(issued, { gauge: '26' }))).toMatch(
      /The gauge of line 1042\/1 cannot change any more\. The sheets for 16 of its blanks were issued/,
    );
  });

  it('leave over bent ones', () => {
    const bending = after(sheared, start('1042/1:brake', 'B1', '07:30'), {
      do: 'floor.count',
      operation: '1042/1:brake',
      good: 12,
      scrapped: 0,
    });
    expect(editOf(bending, save(bending, { quantity: 10 })).label).toMatch(
      /12 of line 1042\/1 are bent already, 2 too many/,
    );
  });
});

it('metal, part and length of a line stay once work on it has started', () => {
  const changes = [{ gauge: '26' }, { colourId: 'bone' }, { lengthMm: 2000 }, { partId: 'flat-strip' }];
  for (const own of changes)
    expect(refusalOf(shearing, save(shearing, own))).toMatch(
      /cannot change any more\. Work on it has started\. Cancel this line.*add a new one/,
    );
  expect(lineOf(after(shop, save(shop, { gauge: '26' })), '1042/1')?.gauge).toBe('26');
});

it('a finished line is not opened again to wait for nothing', () => {
  const two = aShop({ order: [anOrder()], line: [aLine({ quantity: 16 }), aLine({ number: 2 })] });
  const made = after(
    two,
    start('1042/1:shear', 'S1', '07:00'),
    finish('1042/1:shear', '07:30', 16),
    start('1042/1:brake', 'B1', '07:30'),
    finish('1042/1:brake', '08:30', 16),
  );
  expect(refusalOf(made, save(made, { status: 'open' }))).toMatch(/Every step of line 1042\/1 is done/);
});

it('a line is done by the floor only when as many are made as it asks, with those that are made again', () => {
  const step = fc.oneof(
    fc.record({ is: fc.constant('quantity' as const), quantity: fc.integer({ min: 1, max: 30 }) }),
    fc.record({ is: fc.constant('work' as const), share: fc.double({ min: 0, max: 1, noNaN: true }) }),
  );
  fc.assert(
    fc.property(fc.array(step, { maxLength: 14 }), (steps) => {
      let now: Shop = shop;
      let minute = 0;
      let asked = 16;
      const attempt = (command: Command): boolean => {
        const edit = applyCommand(now, command);
        if (edit.ok) now = withChanges(now, edit.value.changes);
        return edit.ok;
      };
      for (const one of steps) {
        if (one.is === 'quantity') {
          const line = lineOf(now, '1042/1')!;
          const more = one.quantity - line.quantity;
          if (attempt({ do: 'line.save', line: { ...line, quantity: one.quantity } })) asked += more;
          continue;
        }
        minute += 10;
        const time = instantOf(minute);
        const running = now.record.find((r) => r.end === null);
        const next = operationsOf(now).operations[0];
        if (running) {
          const pieces = operationsOf(now).operations.find(({ id }) => id === running.id)?.quantity ?? 0;
          const good = Math.round(one.share * pieces);
          attempt({ do: 'floor.done', operation: running.id, at: time, good, scrapped: pieces - good });
        } else if (next)
          attempt({
            do: 'floor.start',
            operation: next.id,
            machineId: next.stage === 'shear' ? 'S1' : 'B1',
            at: time,
            changeoverSeconds: null,
          });
      }
      for (const line of now.line) {
        if (line.status !== 'done') continue;
        const bent = now.record.find((r) => r.id === `${line.id}:brake`)?.good ?? 0;
        const again = now.line.filter((l) => l.makeUpFor === line.id).reduce((sum, l) => sum + l.quantity, 0);
        expect(bent + again).toBeGreaterThanOrEqual(line.quantity);
      }
      const waiting = now.line.reduce((sum, l) => sum + (l.makeUpFor === null ? l.quantity : 0), 0);
      expect(waiting).toBe(asked);
    }),
    { numRuns: 200 },
  );
});

const instantOf = (minutes: number) => (monday('07:00') + minutes * 60) as ReturnType<typeof monday>;
