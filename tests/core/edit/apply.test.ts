import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import { change, compareIds, invert, sameContent, withChanges } from '../../../core/shop/row-change.ts';
import { completeQueues } from '../../../core/planning/complete-queues.ts';
import { operationsOf } from '../../../core/planning/operations.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { instant } from '../../../core/units/brand.ts';
import { loadDemo } from '../../../demo-data/load.ts';
import { aMove, madeFrom } from '../../support/edits.ts';

type Asked = Parameters<typeof madeFrom>[1];

const MONDAY = instant(Date.parse('2026-11-30T12:10:00Z') / 1000);
const shop = loadDemo(join(import.meta.dirname, '../../../demo-data/shop'), MONDAY);

function done(before: Shop, command: Asked): Shop {
  const edit = applyCommand(before, madeFrom(before, command));
  if (!edit.ok) throw new Error(edit.issues.map((p) => p.message).join(' '));
  return withChanges(before, edit.value.changes);
}

function refusal(before: Shop, command: Asked): string {
  const edit = applyCommand(before, madeFrom(before, command));
  if (edit.ok) throw new Error(`not refused: ${edit.value.label}`);
  return edit.issues.map((p) => `${p.message} ${p.advice}`).join(' ');
}

const queuesOf = (s: Shop): Record<string, string[]> => completeQueues(s, operationsOf(s).operations);
const must = <T>(value: T | undefined): T => {
  if (value === undefined) throw new Error('missing in the demo shop');
  return value;
};

describe('moving an operation', () => {
  it('puts it at the asked rank and leaves the order of the others alone', () => {
    const before = queuesOf(shop);
    const queue = must(before.S1);
    const id = must(queue[9]);
    const after = queuesOf(done(shop, aMove(id, 'S1', 2)));
    expect(must(after.S1)[2]).toBe(id);
    expect(must(after.S1).filter((o) => o !== id)).toEqual(queue.filter((o) => o !== id));
    expect(after.B1).toEqual(before.B1);
  });

  it('refuses a machine that cannot do it, and names those that can', () => {
    const bending = must(queuesOf(shop).B1?.[0]);
    expect(refusal(shop, aMove(bending, 'S1', 0))).toMatch(/cannot go to S1.*Machines that can do it: B/);
  });

  it('refuses a place beyond the end of the queue, naming the last one', () => {
    const id = must(queuesOf(shop).S1?.[0]);
    const size = must(queuesOf(shop).S1).length;
    expect(refusal(shop, aMove(id, 'S1', size))).toContain(`from 1 to ${size}`);
  });

  it('refuses an operation that is not open any more', () => {
    expect(refusal(shop, aMove('9999/1:shear', 'S1', 0))).toContain('9999/1 shearing is not open');
  });
});

describe('undo', () => {
  const moves = fc.array(
    fc.record({
      pick: fc.nat(400),
      machine: fc.constantFrom('S1', 'B1', 'B2'),
      position: fc.nat(60),
      pin: fc.boolean(),
    }),
    { minLength: 1, maxLength: 6 },
  );

  it('brings back every row, whatever was moved or pinned', () => {
    const { operations } = operationsOf(shop);
    fc.assert(
      fc.property(moves, (steps) => {
        const trail: ReturnType<typeof invert>[] = [];
        let now: Shop = shop;
        for (const { pick, machine, position, pin } of steps) {
          const operation = must(operations[pick % operations.length]).id;
          const edit = applyCommand(
            now,
            madeFrom(
              now,
              pin ? { do: 'operation.pin', operations: [operation] } : aMove(operation, machine, position),
            ),
          );
          if (!edit.ok) continue;
          now = withChanges(now, edit.value.changes);
          trail.push(invert(edit.value.changes));
        }
        for (const back of trail.reverse()) now = withChanges(now, back);
        expect(now.queue).toEqual(shop.queue);
        expect(now.pin).toEqual(shop.pin);
      }),
      { numRuns: 40 },
    );
  });

  it('compares rows by what they say, not by their revision', () => {
    const colour = must(shop.colour[0]);
    expect(sameContent(colour, { ...colour, revision: 9 })).toBe(true);
    expect(sameContent(colour, { ...colour, name: 'Other' })).toBe(false);
    expect(change('colour', colour, colour).after?.revision).toBe(colour.revision + 1);
  });
});

describe('a whole new plan', () => {
  it('is refused when an operation is missing, stands twice or is unknown', () => {
    const queues = queuesOf(shop);
    const first = must(queues.S1?.[0]);
    const replace = (s1: string[]): string =>
      refusal(shop, { do: 'plan.replace', queues: { ...queues, S1: s1 }, label: 'Plan' });
    expect(replace(must(queues.S1).slice(1))).toContain('is missing from the plan');
    expect(replace([...must(queues.S1), first])).toContain('is in the plan twice');
    expect(replace(['9999/1:shear', ...must(queues.S1)])).toContain('not open any more');
  });

  it('changes nothing when it is the plan that stands already', () => {
    const queues = queuesOf(shop);
    const stored = done(shop, { do: 'plan.replace', queues, label: 'Plan' });
    const again = applyCommand(stored, madeFrom(stored, { do: 'plan.replace', queues, label: 'Plan' }));
    expect(again.ok && again.value.changes).toEqual([]);
  });
});

describe('work orders', () => {
  /** An order whose work has not started. */
  const order = must(shop.order.find((o) => !shop.record.some((r) => r.id.startsWith(`${o.id}/`))));
  const lines = shop.line.filter((l) => l.orderId === order.id);

  const save = { do: 'order.save', order, lines: [], removed: [], at: MONDAY } as const;

  it('lose the lines that are named to go when they are saved', () => {
    const kept = lines.slice(0, 1);
    const after = done(shop, { ...save, removed: lines.slice(1) });
    expect(after.line.filter((l) => l.orderId === order.id).map((l) => l.id)).toEqual(kept.map((l) => l.id));
  });

  it('are refused with every unknown part, colour and gauge named', () => {
    const line = { ...must(lines[0]), partId: 'NOPE', colourId: 'plaid', gauge: '99' };
    const text = refusal(shop, { do: 'line.save', line });
    expect(text).toContain('There is no part NOPE.');
    expect(text).toContain('There is no colour plaid.');
    expect(text).toMatch(/has no gauge 99\. It has /);
  });

  it('are refused when someone changed them since they were read', () => {
    const newer = done(shop, { ...save, order: { ...order, note: 'Call before delivery' } });
    expect(refusal(newer, save)).toContain('changed meanwhile');
  });

  it('leave the board when they are removed, and come back by undo', () => {
    const edit = applyCommand(shop, madeFrom(shop, { do: 'order.remove', orderId: order.id }));
    if (!edit.ok) throw new Error('refused');
    const without = withChanges(shop, edit.value.changes);
    const all = (s: Shop): string[] => Object.values(queuesOf(s)).flat();
    expect(all(without).some((o) => o.startsWith(`${order.id}/`))).toBe(false);
    expect(all(withChanges(without, invert(edit.value.changes))).sort()).toEqual(all(shop).sort());
  });
});

describe('rows of the shop', () => {
  it('a machine with finished work stays, and the planner hears of downtimes instead', () => {
    const { machineId } = must(shop.record[0]);
    expect(refusal(shop, { do: 'row.remove', kind: 'machine', id: machineId })).toMatch(
      /has finished work in its history\. .*add a downtime/,
    );
  });

  it('cannot be removed while others name them', () => {
    const line = must(shop.line[0]);
    expect(refusal(shop, { do: 'row.remove', kind: 'colour', id: line.colourId })).toMatch(
      /is used by line /,
    );
    expect(refusal(shop, { do: 'row.remove', kind: 'calendar', id: must(shop.calendar[0]).id })).toMatch(
      /is used by machine /,
    );
  });

  it('need what their kind asks for: a brake its force and die', () => {
    const brake = must(shop.machine.find((m) => m.stage === 'brake'));
    const text = refusal(shop, {
      do: 'row.save',
      kind: 'machine',
      row: { ...brake, tonnes: null, dieOpeningMm: null },
    });
    expect(text).toContain('force in tonnes');
    expect(text).toContain('die opening');
  });

  it('keep a time zone that exists', () => {
    const row = { ...shop.settings, timeZone: 'Mars/Olympus' };
    expect(refusal(shop, { do: 'settings.save', row })).toContain('is not a time zone');
  });
});

it('counts ids as people do: line 2 before line 10', () => {
  expect(['1042/10', '1042/2', '998/1'].sort(compareIds)).toEqual(['998/1', '1042/2', '1042/10']);
});
