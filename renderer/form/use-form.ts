import { useState } from 'react';
import type { z } from 'zod';
import { applyCommand } from '../../core/edit/apply.ts';
import type { Command } from '../../core/edit/command.ts';
import type { Conflict, Issue } from '../../core/result.ts';
import type { Shop } from '../../core/shop/state.ts';
import { AppError } from '../queries/invoke.ts';
import { toastError } from '../ui/toast.tsx';
import { useDraft } from './drafts.ts';
import { fieldErrors, refusalErrors, type FieldErrors } from './field-errors.ts';
import { useAct } from './use-act.ts';

interface FormPlan<T extends object> {
  /** The form's name among the drafts, "part ridge-cap". */
  readonly name: string;
  readonly shop: Shop;
  /** The row as it is, or the starting values of a new one. */
  readonly current: T;
  readonly schema: z.ZodType<T>;
  readonly command: (entries: T) => Command;
  /** The form's key for what a rule of the shop refuses; '' shows it over the fields. */
  readonly fieldOf: (problem: Issue, entries: T) => string;
  /** What else speaks against the entries, by field. */
  readonly refuses?: (entries: T) => FieldErrors;
  /** Gives entries that an earlier version kept what they lack within their fields. */
  readonly complete?: (kept: T) => T;
  /** The entries as a change of what stands now; missing: they cannot be. */
  readonly rebase?: (entries: T, conflicts: readonly Conflict[]) => T;
  /** The row of a conflict as the form has it, where the form can remove it. */
  readonly held?: (entries: T, conflict: Conflict) => object | null;
}

export interface Form<T extends object> {
  readonly entries: T;
  readonly changed: boolean;
  readonly errors: FieldErrors;
  /** Rows that someone else changed since the form was opened, each in both versions. */
  readonly conflicts: readonly Conflict[];
  /** Go on with what was typed, over what stands now; null where that cannot be. */
  readonly keepMine: (() => void) | null;
  set(patch: Partial<T>): void;
  /** @returns the saved entries, or null when refused: `errors` say why, and nothing typed is lost */
  save(): Promise<T | null>;
  /** Carry out the command that removes the row. @returns false when refused, and it is said why */
  remove(command: Command): Promise<boolean>;
  /** Back to the row as it is. */
  discard(): void;
}

/** A form's entries, kept until they are saved; saving asks the schema first, then the shop's own rules, then the host. */
export function useForm<T extends object>(plan: FormPlan<T>): Form<T> {
  const { name, shop, current, schema, command, fieldOf, rebase } = plan;
  const draft = useDraft(name, current, plan.complete);
  const [errors, setErrors] = useState<FieldErrors>({});
  const [conflicts, setConflicts] = useState<readonly Conflict[]>([]);
  const act = useAct();
  const held = (one: Conflict) => plan.held?.(draft.entries, one) ?? null;
  const refuse = (found: FieldErrors): null => {
    setErrors(found);
    return null;
  };
  const save = async (): Promise<T | null> => {
    const { entries } = draft;
    const misfits = { ...plan.refuses?.(entries), ...fieldErrors(schema, entries) };
    if (Object.keys(misfits).length > 0) return refuse(misfits);
    const asked = command(schema.parse(entries));
    const edit = applyCommand(shop, asked);
    if (!edit.ok) {
      const found = edit.issues.flatMap(({ conflict }) => conflict ?? []);
      setConflicts(found);
      if (found.length > 0) return refuse({});
      return refuse(refusalErrors(edit.issues, (problem) => fieldOf(problem, entries)));
    }
    try {
      await act(asked);
    } catch (error) {
      const found = conflictsOf(error);
      setConflicts(found);
      return refuse(found.length > 0 ? {} : { '': (error as Error).message });
    }
    discard();
    return entries;
  };
  const set = (patch: Partial<T>) => {
    draft.set(patch);
    setErrors((old) => withoutFields(old, Object.keys(patch)));
  };
  const discard = () => {
    draft.drop();
    setErrors({});
    setConflicts([]);
  };
  const remove = (command: Command) => removed(act(command), discard, setConflicts, held);
  const keepMine = () => {
    draft.set(rebase!(draft.entries, conflicts));
    setConflicts([]);
  };
  const { entries, changed } = draft;
  return {
    entries,
    changed,
    errors,
    conflicts,
    keepMine: rebase ? keepMine : null,
    set,
    save,
    remove,
    discard,
  };
}

/** Waits for a removal. A row that someone else changed first stays, in both versions. */
async function removed(
  acting: Promise<void>,
  onGone: () => void,
  onConflicts: (found: readonly Conflict[]) => void,
  held: (conflict: Conflict) => object | null,
): Promise<boolean> {
  try {
    await acting;
  } catch (error) {
    const found = conflictsOf(error);
    onConflicts(found.map((one) => ({ ...one, mine: held(one) })));
    if (found.length === 0) toastError(error as Error);
    return false;
  }
  onGone();
  return true;
}

const conflictsOf = (error: unknown): readonly Conflict[] =>
  error instanceof AppError ? error.conflicts : [];

/** A field that is being fixed is not scolded for what it held before. */
const withoutFields = (errors: FieldErrors, fields: readonly string[]): FieldErrors =>
  Object.fromEntries(
    Object.entries(errors).filter(
      ([key]) => !fields.some((field) => key === field || key.startsWith(`${field}.`)),
    ),
  );
