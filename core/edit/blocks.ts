import type { Queues } from '../schedule/problem.ts';

/** Operations that go to one place of a queue together, in the order in which they are to stand there. */
export interface Block {
  readonly operations: readonly string[];
  readonly machineId: string;
  /** Count of the operations before it there that belong to no block of the same move. */
  readonly position: number;
}

/**
 * The queues after some blocks were moved: their operations leave the queues that they stand in, all others keep their
 * order. Blocks at one place stand there in the order in which they are named.
 * @param queues per machine; not changed
 * @param blocks no operation in two of them; a position beyond the end is the end
 * @returns the same object where nothing changes
 */
export function withBlocks(queues: Queues, blocks: readonly Block[]): Queues {
  const moved = new Set(blocks.flatMap(({ operations }) => operations));
  const machines = new Set([...Object.keys(queues), ...blocks.map(({ machineId }) => machineId)]);
  let isSame = true;
  const next = Object.fromEntries(
    [...machines].map((machineId) => {
      const before = queues[machineId] ?? [];
      const after = filled(
        before.filter((operation) => !moved.has(operation)),
        blocks.filter((block) => block.machineId === machineId),
      );
      const stays = after.length === before.length && after.every((o, i) => o === before[i]);
      isSame &&= stays;
      return [machineId, stays ? before : after];
    }),
  );
  return isSame ? queues : next;
}

function filled(rest: readonly string[], blocks: readonly Block[]): string[] {
  const all: string[] = [];
  let taken = 0;
  for (const { operations, position } of blocks.toSorted((a, b) => a.position - b.position)) {
    all.push(...rest.slice(taken, Math.max(taken, position)), ...operations);
    taken = Math.max(taken, position);
  }
  return [...all, ...rest.slice(taken)];
}
