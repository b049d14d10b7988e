import { completeQueues } from '../planning/complete-queues.ts';
import { operationsOf, type ShopOperations } from '../planning/operations.ts';
import { ok, type Result } from '../result.ts';
import { withChanges } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import { counted } from '../units/count.ts';
import type { FormKind } from './command.ts';
import { removeRow } from './row-commands.ts';

/** What hangs on a row, before and after it is removed. */
interface Removal {
  readonly shop: Shop;
  readonly next: Shop;
  readonly before: ShopOperations;
  readonly after: ShopOperations;
  readonly id: string;
}

/**
 * What removing a row does to the plan and the stock, a sentence each, to be read before it is done.
 * @returns no sentence where nothing hangs on it; or why it cannot be removed
 */
export function removalEffects(shop: Shop, kind: FormKind, id: string): Result<string[]> {
  const revision = shop[kind].find((row) => row.id === id)?.revision ?? 0;
  const edit = removeRow(shop, { kind, id, revision });
  if (!edit.ok) return edit;
  const next = withChanges(shop, edit.value.changes);
  const removal: Removal = { shop, next, before: operationsOf(shop), after: operationsOf(next), id };
  if (kind === 'machine') return ok([...moved(removal), ...noLongerPlanned(removal), ...forgotten(removal)]);
  if (kind === 'tool') return ok([...moved(removal), ...noLongerPlanned(removal)]);
  if (kind === 'sheet')
    return ok([
      ...uncountedStock(removal),
      ...cutFromOthers(removal),
      ...noLongerPlanned(removal),
      ...listsNaming(removal),
    ]);
  return ok([]);
}

/** A machine's queue goes to those that can do it. */
function moved({ shop, next, before, after, id }: Removal): string[] {
  const own = new Set(completeQueues(shop, before.operations)[id]);
  const targets = Object.entries(completeQueues(next, after.operations)).flatMap(([machine, ids]) => {
    const count = ids.filter((operation) => own.has(operation)).length;
    return count === 0 ? [] : [{ machine, count }];
  });
  const all = targets.reduce((sum, { count }) => sum + count, 0);
  if (all === 0) return [];
  const where =
    targets.length === 1
      ? targets[0]!.machine
      : targets.map(({ machine, count }) => `${machine} (${count})`).join(', ');
  const move = all === 1 ? 'moves' : 'move';
  return [`${counted(all, 'planned operation')} ${move} to ${where}, behind what waits there, by due date.`];
}

/** Open lines that could be planned and then cannot. */
function noLongerPlanned({ before, after }: Removal): string[] {
  const planned = new Set(before.operations.map(({ line }) => `line ${line.id}`));
  const lost = after.unplannable.filter(({ subject }) => planned.has(subject));
  const [first] = lost;
  if (!first) return [];
  const named = lost.slice(0, 5).map(({ subject }) => subject.slice('line '.length));
  const more = lost.length > named.length ? ` and ${lost.length - named.length} more` : '';
  return [
    `${counted(lost.length, 'line')} can no longer be planned: ${named.join(', ')}${more}.`,
    first.message,
  ];
}

const forgotten = ({ shop, id }: Removal): string[] =>
  shop.changeover.some((c) => c.id === id) ? ['The changeover under way on it is forgotten.'] : [];

function uncountedStock({ shop, id }: Removal): string[] {
  const onHand = shop.sheet.find((s) => s.id === id)?.onHand ?? 0;
  if (onHand === 0) return [];
  return [`${onHand} on hand ${onHand === 1 ? 'is' : 'are'} no longer counted as stock.`];
}

function cutFromOthers({ before, after, id }: Removal): string[] {
  const still = new Set(after.operations.map(({ line }) => line.id));
  const lines = new Set(
    before.operations
      .filter(({ sheet, line }) => sheet.id === id && still.has(line.id))
      .map((o) => o.line.id),
  );
  if (lines.size === 0) return [];
  return [`${counted(lines.size, 'line')} ${lines.size === 1 ? 'is' : 'are'} cut from another size instead.`];
}

/** Lists that people changed and that are cut from it. */
const listsNaming = ({ shop, id }: Removal): string[] =>
  shop.cutList
    .filter(({ taken, groups }) => taken === null && groups.some(({ stockId }) => stockId === id))
    .map((list) => `The changed steps of run ${list.id} name it and must be planned again.`);
