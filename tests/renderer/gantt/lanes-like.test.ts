import { expect, it } from 'vitest';
import { withBlocks, type Block } from '../../../core/edit/blocks.ts';
import { viewQueues } from '../../../core/planning/plan-view.ts';
import { lanesOf } from '../../../renderer/gantt/lanes.ts';
import { aBoard } from './a-board.ts';

/** The board after a move, drawn anew and with the lanes from before. */
function moved(block: Block) {
  const { shop, plan, lanes } = aBoard();
  const after = viewQueues(shop, plan, withBlocks(plan.queues, [block]));
  if (!after.ok) throw new Error('the move cannot be decoded');
  return { lanes, anew: lanesOf(shop, after.value), like: lanesOf(shop, after.value, lanes) };
}

it('a would-be plan drawn with the lanes from before is the one drawn anew', () => {
  for (const operation of ['1042/1:shear', '1042/2:shear', '1042/3:shear'])
    for (const position of [0, 1, 2]) {
      const { anew, like } = moved({ operations: [operation], machineId: 'S1', position });
      expect(like).toEqual(anew);
    }
});

it('bars and lanes that a move leaves alone are the very same', () => {
  const { lanes, like } = moved({ operations: ['1042/3:brake'], machineId: 'B1', position: 0 });
  const laneOf = (of: typeof lanes, id: string) => of.find(({ machine }) => machine.id === id);
  expect(laneOf(like, 'S1')).toBe(laneOf(lanes, 'S1'));
  expect(laneOf(like, 'B1')).not.toBe(laneOf(lanes, 'B1'));
});
