import { applyCommand } from '../../core/edit/apply.ts';
import type { Command } from '../../core/edit/command.ts';
import { seenQueues } from '../../core/edit/stale.ts';
import type { Issue } from '../../core/result.ts';
import { withChanges, type Edit } from '../../core/shop/row-change.ts';
import type { Shop } from '../../core/shop/state.ts';

type CommandOf<K extends Command['do']> = Extract<Command, { readonly do: K }>;
/** Commands that name what was read of the shop, short of that. */
type Short =
  | Omit<CommandOf<'operation.move'>, 'seen'>
  | Omit<CommandOf<'operation.pin'>, 'seen'>
  | Omit<CommandOf<'operation.unpin'>, 'seen'>
  | Omit<CommandOf<'plan.goBack'>, 'seen'>
  | Omit<CommandOf<'plan.replace'>, 'seen'>
  | Omit<CommandOf<'plan.publish'>, 'seen'>
  | Omit<CommandOf<'order.remove'>, 'revision' | 'lines'>
  | Omit<CommandOf<'line.remove'>, 'revision'>
  | Omit<CommandOf<'row.remove'>, 'revision'>;
type Asked = Command | Short;

/** One operation to a place of a queue. */
export const aMove = (operation: string, machineId: string, position: number) =>
  ({ do: 'operation.move', blocks: [{ operations: [operation], machineId, position }] }) as const;

const revisionIn = (rows: readonly { readonly id: string; readonly revision: number }[], id: string) =>
  rows.find((row) => row.id === id)?.revision ?? 0;

/** A command made from this very shop: what it says of what was read is filled in where it is left out. */
export function madeFrom(shop: Shop, asked: Asked): Command {
  switch (asked.do) {
    case 'operation.move':
    case 'operation.pin':
    case 'operation.unpin':
    case 'plan.goBack':
    case 'plan.replace':
    case 'plan.publish':
      return { seen: seenQueues(shop), ...asked };
    case 'order.remove': {
      const lines = shop.line.filter(({ orderId }) => orderId === asked.orderId);
      return {
        revision: revisionIn(shop.order, asked.orderId),
        lines: lines.map(({ id, revision }) => ({ id, revision })),
        ...asked,
      };
    }
    case 'line.remove':
      return { revision: revisionIn(shop.line, asked.lineId), ...asked };
    case 'row.remove':
      return { revision: revisionIn(shop[asked.kind], asked.id), ...asked };
    default:
      return asked;
  }
}

/** What a command does; throws its refusal. */
export function editOf(before: Shop, command: Asked): Edit {
  const edit = applyCommand(before, madeFrom(before, command));
  if (!edit.ok) throw new Error(edit.issues.map((p) => p.message).join(' '));
  return edit.value;
}

/** The shop after commands, each accepted. */
export const after = (before: Shop, ...commands: readonly Asked[]): Shop =>
  commands.reduce((shop, command) => withChanges(shop, editOf(shop, command).changes), before);

/** Why a command is refused. */
export function issuesOf(before: Shop, command: Asked): readonly Issue[] {
  const edit = applyCommand(before, madeFrom(before, command));
  if (edit.ok) throw new Error(`not refused: ${edit.value.label}`);
  return edit.issues;
}

/** The same as one text. */
export const refusalOf = (before: Shop, command: Asked): string =>
  issuesOf(before, command)
    .map((p) => `${p.message} ${p.advice}`)
    .join(' ');
