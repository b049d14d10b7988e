import { applyCommand } from '../../core/edit/apply.ts';
import { rowName } from '../../core/edit/row-name.ts';
import type { Command } from '../../core/edit/command.ts';
import { invert, sameContent, type RowChange, type Edit } from '../../core/shop/row-change.ts';
import type { RowKind } from '../../core/shop/state.ts';
import type { Store, Work } from '../db/open.ts';
import type { Step } from '../db/steps.ts';
import { Refused, valueOf } from '../refused.ts';
import type { Clock } from './clock.ts';
import type { Pushes } from './pushes.ts';
import { readShop } from './shop.ts';

export type EditService = ReturnType<typeof editService>;

/** The planner's commands and the history: one transaction each. */
export const editService = (store: Store, clock: Clock, pushes: Pushes) => {
  const announce = (changes: readonly RowChange[]): void => {
    if (changes.length > 0) pushes.send({ kind: 'changed', rows: [...new Set(changes.map((c) => c.kind))] });
  };

  return {
    /** Carry out a command as one step of the history; a command that changes nothing leaves none. */
    apply(command: Command): Edit {
      refuseFuture(command, clock.now());
      const edit = store.run(command.do, (work) => {
        const made = valueOf(applyCommand(readShop(work), command));
        if (made.changes.length === 0) return made;
        for (const change of made.changes) write(work, change.kind, change.id, change.after);
        work.steps.add(made.label, clock.now(), made.changes);
        return made;
      });
      announce(edit.changes);
      return edit;
    },

    /** Take back the newest step. @returns its label; null when there is none */
    undo(): string | null {
      const step = store.run('undo', (work) => replay(work, work.steps.newest(), true));
      announce(step?.changes ?? []);
      return step?.label ?? null;
    },

    /** Carry out again the step undone last. @returns its label; null when there is none */
    redo(): string | null {
      const step = store.run('redo', (work) => replay(work, work.steps.oldestUndone(), false));
      announce(step?.changes ?? []);
      return step?.label ?? null;
    },

    history: () =>
      store.run('read the history', ({ steps }) => ({ undo: steps.list(false), redo: steps.list(true) })),

    /** Tells whether anything was edited since: the newest step's id, 0 without one. */
    mark: (): number => store.run('read the history', ({ steps }) => steps.newest()?.id ?? 0),
  };
};

/** What is reported from the floor has happened. */
function refuseFuture(command: Command, now: number): void {
  if (!('at' in command) || command.at <= now) return;
  throw new Refused(
    'refused',
    'The time given is still to come. Nothing was recorded; give the time at which it happened.',
  );
}

/**
 * Write a step backwards (undo) or forwards (redo). Every row must still say what the step left there; revisions only
 * grow, so that a form opened before still notices.
 */
function replay(work: Work, step: Step | null, undo: boolean): Step | null {
  if (!step) return null;
  for (const { kind, id, before, after } of undo ? invert(step.changes) : step.changes) {
    const current = work.rows.get(kind, id);
    if (!sameContent(current, before))
      throw new Refused(
        'conflict',
        `“${step.label}” cannot be ${undo ? 'undone' : 'done again'}: ${rowName(kind, id)} was changed since. Nothing was changed; change it where it was entered.`,
      );
    const revision = Math.max(current?.revision ?? -1, after?.revision ?? -1) + 1;
    write(work, kind, id, after && { ...after, revision });
  }
  work.steps.mark(step.id, undo);
  return step;
}

const write = ({ rows }: Work, kind: RowKind, id: string, row: RowChange['after']): void =>
  row ? rows.put(kind, row as never) : rows.remove(kind, id);
