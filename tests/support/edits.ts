import { applyCommand } from '../../core/edit/apply.ts';
import type { Command } from '../../core/edit/command.ts';
import type { Issue } from '../../core/result.ts';
import { withChanges, type Edit } from '../../core/shop/row-change.ts';
import type { Shop } from '../../core/shop/state.ts';

/** What a command does; throws its refusal. */
export function editOf(before: Shop, command: Command): Edit {
  const edit = applyCommand(before, command);
  if (!edit.ok) throw new Error(edit.issues.map((p) => p.message).join(' '));
  return edit.value;
}

/** The shop after commands, each accepted. */
export const after = (before: Shop, ...commands: readonly Command[]): Shop =>
  commands.reduce((shop, command) => withChanges(shop, editOf(shop, command).changes), before);

/** Why a command is refused. */
export function issuesOf(before: Shop, command: Command): readonly Issue[] {
  const edit = applyCommand(before, command);
  if (edit.ok) throw new Error(`not refused: ${edit.value.label}`);
  return edit.issues;
}

/** The same as one text. */
export const refusalOf = (before: Shop, command: Command): string =>
  issuesOf(before, command)
    .map((p) => `${p.message} ${p.advice}`)
    .join(' ');
