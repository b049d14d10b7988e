import { withBlocks, type Block } from '../../../core/edit/blocks.ts';
import { namesOf, operationName } from '../../../core/edit/plan-commands.ts';
import { viewQueues, type PlanView } from '../../../core/planning/plan-view.ts';
import { stepWord } from '../../../core/part/stage.ts';
import { stageOfOperation } from '../../../core/shop/order.ts';
import { sentence } from '../../../core/result.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { counted } from '../../../core/units/count.ts';
import { lanesOf, type Lane } from '../../gantt/lanes.ts';
import { consequenceOf, consequenceWords, moveWords } from './consequence.ts';

/** A change tried out: what the board would show and what it would mean. */
export interface Tried {
  /** The plan it was tried on; on any other it means nothing. */
  readonly on: PlanView;
  readonly lanes: readonly Lane[];
  readonly words: string;
}

/** A move tried out, or why it cannot be, a sentence. */
export function tryOut(
  shop: Shop,
  plan: PlanView,
  lanes: readonly Lane[],
  blocks: readonly Block[],
): Tried | string {
  const after = viewQueues(shop, plan, withBlocks(plan.queues, blocks));
  if (!after.ok) return sentence(after.issues);
  const words = `${moveWords(blocks, nameIn(shop))} ${consequenceWords(consequenceOf(shop, plan, after.value))}`;
  return { on: plan, lanes: lanesOf(shop, after.value, lanes), words };
}

/** Why a machine cannot do them all: the first that it cannot do, and how many more. */
export function whyNot(
  { operations }: PlanView,
  shop: Shop,
  ids: readonly string[],
  machineId: string,
): string {
  const name = nameIn(shop)(machineId);
  const unable = ids.filter((id) => !operations.get(id)?.machines.some(({ id: able }) => able === machineId));
  const [first] = unable;
  if (first === undefined) return '';
  const refused = operations.get(first)?.refused.find((r) => r.machineId === machineId);
  if (!refused) return `No ${stepWord[stageOfOperation(first)]} on ${name}.`;
  if (ids.length === 1) return `${name}: ${refused.reason}`;
  const more = unable.length > 1 ? ` Nor ${counted(unable.length - 1, 'more', 'more')}.` : '';
  return `${name}: not ${operationName(first)}: ${refused.reason}${more}`;
}

export const nameIn =
  ({ machine }: Shop) =>
  (machineId: string): string =>
    machine.find(({ id }) => id === machineId)?.name ?? machineId;

/** Machines that can do each of these operations. */
export function ableFor({ operations }: PlanView, ids: readonly string[]): ReadonlySet<string> {
  const [first, ...others] = ids.map(
    (id) => new Set(operations.get(id)?.machines.map(({ id: able }) => able)),
  );
  return new Set([...(first ?? [])].filter((id) => others.every((able) => able.has(id))));
}

/** "1042/2 bending is pinned: planning keeps it in its position." */
export function pinWords(ids: readonly string[], wasPinned: boolean): string {
  const [are, them] = ids.length === 1 ? ['is', 'it in its position'] : ['are', 'them in their positions'];
  return `${namesOf(ids)} ${are} ${wasPinned ? 'not pinned any more' : `pinned: planning keeps ${them}`}.`;
}
