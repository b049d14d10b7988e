import { completeQueues } from '../planning/complete-queues.ts';
import { operationsOf, type ShopOperation } from '../planning/operations.ts';
import { err, issue, ok, type Issue, type Result } from '../result.ts';
import type { Queues } from '../schedule/problem.ts';
import type { Edit } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import { withBlocks, type Block } from './blocks.ts';
import type { Command } from './command.ts';
import { machineWith, namesOf, operationName, refuseMachine, unknownOperation } from './plan-commands.ts';
import { queueChanges } from './queue-rows.ts';
import { refuseUnseen } from './stale.ts';

type Move = Extract<Command, { readonly do: 'operation.move' }>;

/**
 * Put operations at places of queues, all of them or none.
 * The whole plan as the board shows it becomes the stored plan, so nothing else jumps.
 * @returns the edit, or an issue for each operation that cannot go where it is to go
 */
export function moveOperations(shop: Shop, { blocks, seen }: Move): Result<Edit> {
  const { operations } = operationsOf(shop);
  const byId = new Map(operations.map((operation) => [operation.id, operation]));
  const refused = refusedIn(shop, byId, blocks);
  if (refused.length > 0) return err(...refused);
  const queues = completeQueues(shop, operations);
  const ids = blocks.flatMap((block) => block.operations);
  const between = machinesOf(queues, blocks, ids);
  const unseen = refuseUnseen(shop, seen, between);
  if (unseen) return unseen;
  const wrong = blocks.flatMap((block) => placeIssue(queues, byId, block, new Set(ids)) ?? []);
  if (wrong.length > 0) return err(...wrong);
  return ok({
    label: labelOf(queues, blocks),
    changes: queueChanges(shop, operations, withBlocks(queues, blocks), between),
  });
}

/** Operations that are not open, named twice, or to go to a machine that cannot do them. */
function refusedIn(
  shop: Shop,
  byId: ReadonlyMap<string, ShopOperation>,
  blocks: readonly Block[],
): readonly Issue[] {
  const named = new Set<string>();
  return blocks.flatMap(({ operations, machineId }) =>
    operations.flatMap((id) => {
      const operation = byId.get(id);
      const refusal = !operation
        ? unknownOperation(id)
        : named.has(id)
          ? namedTwice(id)
          : refuseMachine(shop, operation, machineId);
      named.add(id);
      return refusal && !refusal.ok ? refusal.issues : [];
    }),
  );
}

const namedTwice = (id: string): Result<never> =>
  err(issue(operationName(id), 'place', `${operationName(id)} is to go to two places.`, 'Name it once.'));

const machinesOf = (queues: Queues, blocks: readonly Block[], ids: readonly string[]): string[] => [
  ...new Set([...ids.flatMap((id) => machineWith(queues, id) ?? []), ...blocks.map((b) => b.machineId)]),
];

/** What is wrong with the place of a block in its queue; null: nothing. */
function placeIssue(
  queues: Queues,
  byId: ReadonlyMap<string, ShopOperation>,
  { operations, machineId, position }: Block,
  moved: ReadonlySet<string>,
): Issue | null {
  const subject = operationName(operations[0] ?? '');
  const others = (queues[machineId] ?? []).filter((id) => !moved.has(id));
  const started = others.filter((id) => byId.get(id)?.started).length;
  if (position > others.length)
    return issue(
      subject,
      'place',
      `${machineId} has ${others.length} other operations.`,
      `Choose a position from 1 to ${others.length + 1}.`,
    );
  return position < started
    ? issue(
        subject,
        'place',
        `Work has started on ${machineId}; nothing can go before it.`,
        `Choose position ${started + 1} or later.`,
      )
    : null;
}

function labelOf(queues: Queues, blocks: readonly Block[]): string {
  const ids = blocks.flatMap(({ operations }) => operations);
  const what = namesOf(ids);
  const [only] = blocks;
  if (blocks.length !== 1 || !only) return `Move ${what}`;
  const { machineId, position } = only;
  const stays = only.operations.every((one) => machineWith(queues, one) === machineId);
  return stays
    ? `Move ${what} to position ${position + 1} on ${machineId}`
    : `Move ${what} to ${machineId}, position ${position + 1}`;
}
