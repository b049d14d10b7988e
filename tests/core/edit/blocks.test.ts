import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { withBlocks, type Block } from '../../../core/edit/blocks.ts';
import { completeQueues } from '../../../core/planning/complete-queues.ts';
import { operationsOf } from '../../../core/planning/operations.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aBoardShop } from '../../renderer/gantt/a-board.ts';
import { aRecord, at } from '../../support/builders.ts';
import { after, editOf, refusalOf } from '../../support/edits.ts';

const block = (machineId: string, position: number, ...operations: string[]): Block => ({
  ...{ operations, machineId, position },
});

describe('blocks moved in queues', () => {
  const queues = { A: ['a', 'b', 'c', 'd'], B: ['e', 'f'], C: [] };

  it('stand together where they go, and all others keep their order', () => {
    expect(withBlocks(queues, [block('A', 1, 'd', 'b')])).toEqual({ ...queues, A: ['a', 'd', 'b', 'c'] });
    expect(withBlocks(queues, [block('B', 1, 'a', 'c')])).toEqual({
      ...{ A: ['b', 'd'], B: ['e', 'a', 'c', 'f'], C: [] },
    });
  });

  it('count the operations that stay: two blocks of one queue do not push each other on', () => {
    expect(withBlocks(queues, [block('A', 0, 'b'), block('A', 1, 'd')]).A).toEqual(['b', 'a', 'd', 'c']);
    expect(withBlocks(queues, [block('A', 2, 'a'), block('A', 2, 'b')]).A).toEqual(['c', 'd', 'a', 'b']);
  });

  it('leave the very same plan where nothing changes', () => {
    expect(withBlocks(queues, [block('A', 1, 'b', 'c')])).toBe(queues);
  });

  it('lose nothing and double nothing, wherever they go', () => {
    const place = fc.record({ machineId: fc.constantFrom('A', 'B', 'C'), position: fc.nat(6) });
    const split = fc.shuffledSubarray(['a', 'b', 'c', 'd', 'e', 'f'], { minLength: 2 });
    fc.assert(
      fc.property(split, fc.nat(5), place, place, (ids, cut, one, other) => {
        const next = withBlocks(queues, [
          { ...one, operations: ids.slice(0, cut) },
          { ...other, operations: ids.slice(cut) },
        ]);
        expect(Object.values(next).flat().sort()).toEqual(['a', 'b', 'c', 'd', 'e', 'f']);
        const rest = (of: readonly string[]) => of.filter((id) => !ids.includes(id));
        expect(rest(Object.values(next).flat()).toSorted()).toEqual(rest(Object.values(queues).flat()));
      }),
    );
  });
});

describe('several operations at once', () => {
  const shop = aBoardShop();
  const queuesOf = (s: Shop) => completeQueues(s, operationsOf(s).operations);
  const move = (...blocks: Block[]) => ({ do: 'operation.move', blocks }) as const;

  it('move in one step, between machines too', () => {
    const both = move(block('S1', 0, '1042/2:shear', '1042/3:shear'), block('B1', 0, '1042/3:brake'));
    expect(editOf(shop, both).label).toBe('Move 3 operations');
    expect(queuesOf(after(shop, both))).toEqual({
      ...{ S1: ['1042/2:shear', '1042/3:shear', '1042/1:shear'], B1: ['1042/3:brake', '1042/1:brake'] },
      B2: ['1042/2:brake'],
    });
  });

  it('move all or none: the one that cannot go is named', () => {
    const bothToB2 = move(block('B2', 0, '1042/1:brake', '1042/2:shear'));
    expect(refusalOf(shop, bothToB2)).toMatch(/1042\/2 shearing cannot go to B2/);
  });

  it('are refused where one is named twice', () => {
    const twice = move(block('S1', 0, '1042/1:shear'), block('S1', 1, '1042/1:shear'));
    expect(refusalOf(shop, twice)).toMatch(/1042\/1 shearing is to go to two places/);
  });

  it('do not go before what has started', () => {
    const started = aBoardShop({
      record: [aRecord({ id: '1042/1:shear', start: at('2026-11-30', '05:00'), end: null })],
    });
    const first = move(block('S1', 0, '1042/3:shear', '1042/2:shear'));
    expect(refusalOf(started, first)).toMatch(/nothing can go before it.*position 2 or later/);
  });

  it('are pinned and unpinned in one step', () => {
    const operations = ['1042/1:shear', '1042/3:brake'];
    expect(editOf(shop, { do: 'operation.pin', operations }).label).toBe('Pin 2 operations');
    const pinned = after(shop, { do: 'operation.pin', operations });
    expect(pinned.pin.map(({ id }) => id)).toEqual(operations);
    expect(after(pinned, { do: 'operation.unpin', operations }).pin).toEqual([]);
  });
});
