import { applyCommand } from '../../core/edit/apply.ts';
import { rowName } from '../../core/edit/row-name.ts';
import type { Command } from '../../core/edit/command.ts';
import { isFact } from '../../core/edit/facts.ts';
import { undoIssues } from '../../core/edit/undo-rules.ts';
import { sentence } from '../../core/result.ts';
import type { Shop } from '../../core/shop/state.ts';
import { invert, sameContent, type RowChange } from '../../core/shop/row-change.ts';
import type { Work } from '../db/open.ts';
import type { Step } from '../db/steps.ts';
import { Refused, valueOf } from '../refused.ts';
import type { Clock } from './clock.ts';
import { refuseUsedNumbers, type LivingShop } from './living-shop.ts';
import { planPublished } from './kept-plan.ts';
import { QueueChanges } from './queue-changes.ts';

export type EditService = ReturnType<typeof editService>;

/** A command carried out. */
export interface Applied {
  readonly label: string;
  readonly changes: readonly RowChange[];
  /** The history's step that takes it back; null for what happened on the floor, and where nothing changed. */
  readonly stepId: number | null;
  /** The entry in the floor's log; null for what was planned. */
  readonly factId: number | null;
}

/**
 * Commands, and two histories: what the planner decides is a step that its maker can undo; what the floor reports is a
 * fact, which nobody's undo takes away. One transaction each.
 */
export const editService = (living: LivingShop, clock: Clock, queues = new QueueChanges()) => ({
  /**
   * Carry out a command. One that changes nothing leaves no trace.
   * @param by who asks: the steps of one caller form its own line of undo
   */
  apply(asked: Command, by = ''): Applied {
    refuseFuture(asked, clock.now());
    const applied = living.change(asked.do, (work, shop) => {
      const command = numbered(onHostClock(asked, clock.now()), work);
      const { label, changes } = valueOf(queues.told(applyCommand(shop, command)));
      if (changes.length === 0) return { label, changes, stepId: null, factId: null };
      refuseUsedNumbers(work, changes);
      if (!isFact(command)) {
        const stepId = work.steps.add(label, clock.now(), changes, by);
        const published = planPublished(command, shop, changes, clock.now());
        if (published) work.plans.add({ ...published, by, stepId });
        return { label, changes, stepId, factId: null };
      }
      const factId = work.facts.add({ ...factOf(command, clock.now(), work), label, by, changes });
      return { label, changes, stepId: null, factId };
    });
    return queues.note(applied, ({ label }) => label);
  },

  /** Take back a step of the caller's, the newest where none is named. @returns its label; null when there is none */
  undo: (by = '', stepId: number | null = null): string | null =>
    queues.note(
      living.change('undo', ({ steps, rows }, shop) =>
        replay({ steps, rows, shop }, stepId === null ? steps.newest(by) : steps.get(stepId), true),
      ),
      ({ label }) => `Undo: ${label}`,
    ).label,

  /** Carry out again a step that was undone. @returns its label; null when there is none */
  redo: (by = '', stepId: number | null = null): string | null =>
    queues.note(
      living.change('redo', ({ steps, rows }, shop) =>
        replay({ steps, rows, shop }, stepId === null ? steps.oldestUndone(by) : steps.get(stepId), false),
      ),
      ({ label }) => `Redo: ${label}`,
    ).label,

  /**
   * Take back a fact: it stays in the log, and one more says that it was taken back. For a minute by who reported it;
   * later, or by someone else, with a reason.
   * @throws Refused without a reason, when it was corrected or taken back already, or when something happened on top of it
   */
  takeBack: (factId: number, by: string, reason: string): string =>
    queues.note(
      living.change('take back', (work) => takeBack(work, clock.now(), factId, by, reason.trim())),
      ({ label }) => label,
    ).label,

  /** What the caller can undo and redo. */
  history: (by = '') =>
    living.store.run('read the history', ({ steps }) => ({
      undo: steps.list(false, by),
      redo: steps.list(true, by),
    })),
});

function takeBack({ facts, rows }: Work, now: number, factId: number, by: string, reason: string) {
  const fact = facts.get(factId);
  if (!fact || facts.correctionOf(factId))
    throw new Refused('conflict', 'This was corrected or taken back already. Nothing was changed.');
  const own = fact.by === by && now - fact.keptAt <= TAKE_BACK_S;
  if (!own && reason === '')
    throw new Refused(
      'refused',
      `“${fact.label}” was reported more than a minute ago, or by someone else. Nothing was changed; say why it is taken back.`,
    );
  const changes = backwards(rows, fact.label, invert(fact.changes), 'taken back');
  const label = `Take back: ${fact.label}`;
  const { at, operation, machineId, command } = fact;
  facts.add({
    ...{ at, operation, machineId, command, label, by, changes },
    ...{ keptAt: now, corrects: factId, reason },
  });
  return { label, changes };
}

/** What the floor's log keeps of a command. */
const factOf = (command: Command, now: number, { facts }: Work) => ({
  at: 'at' in command ? command.at : now,
  keptAt: now,
  command,
  operation: 'operation' in command ? command.operation : null,
  machineId: 'machineId' in command ? (command.machineId ?? null) : null,
  corrects: command.do === 'floor.correct' ? (facts.ofOperation(command.operation)[0]?.id ?? null) : null,
  reason: 'reason' in command ? command.reason : '',
});

/** So long what was pressed is taken back without a reason. */
const TAKE_BACK_S = 60;

/**
 * A press is now: where the screen's clock goes before the host's, the host's counts. A time that was typed in stays as it
 * was typed.
 */
const onHostClock = (command: Command, now: number): Command =>
  'at' in command && command.at > now ? { ...command, at: now } : command;

/** A walk-in gets the number after all that the file has used. */
const numbered = (command: Command, { rows }: Work): Command =>
  command.do === 'walkin.take' ? { ...command, number: rows.lastWalkIn() + 1 } : command;

/** What was typed in as having happened has happened. */
function refuseFuture(command: Command, now: number): void {
  if (!('given' in command && command.given && command.at > now)) return;
  throw new Refused(
    'refused',
    'The time given is still to come. Nothing was recorded; give the time at which it happened.',
  );
}

/** A step backwards (undo) or forwards (redo). */
function replay(
  { rows, steps, shop }: Pick<Work, 'rows' | 'steps'> & { readonly shop: Shop },
  step: Step | null,
  undo: boolean,
): { label: string | null; changes: readonly RowChange[] } {
  if (!step || step.undone === undo) return { label: null, changes: [] };
  const wanted = undo ? invert(step.changes) : step.changes;
  const changes = backwards(rows, step.label, wanted, undo ? 'undone' : 'done again');
  const against = undoIssues(shop, changes);
  if (against.length > 0)
    throw new Refused(
      'conflict',
      `“${step.label}” cannot be ${undo ? 'undone' : 'done again'}: nothing was changed. ${sentence(against)}`,
    );
  steps.mark(step.id, undo);
  return { label: step.label, changes };
}

/**
 * Changes as they can be made now. Every row must still say what was left there; revisions only grow, so that a form
 * opened before still notices.
 */
const backwards = (
  rows: Work['rows'],
  label: string,
  changes: readonly RowChange[],
  how: string,
): RowChange[] =>
  changes.map(({ kind, id, before, after }): RowChange => {
    const current = rows.get(kind, id);
    if (!sameContent(current, before))
      throw new Refused(
        'conflict',
        `“${label}” cannot be ${how}: ${rowName(kind, id)} was changed since. Nothing was changed; change it where it is shown.`,
      );
    const revision = Math.max(current?.revision ?? -1, after?.revision ?? -1) + 1;
    return { kind, id, before: current, after: after && { ...after, revision } } as RowChange;
  });
