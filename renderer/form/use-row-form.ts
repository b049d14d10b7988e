import type { z } from 'zod';
import type { Command, FormKind } from '../../core/edit/command.ts';
import type { Issue } from '../../core/result.ts';
import { rowKinds, type RowOf, type Shop } from '../../core/shop/state.ts';
import type { FieldErrors } from './field-errors.ts';
import { useForm, type Form } from './use-form.ts';

/** The field of a form that shows what a shop rule calls by name; rules name other fields as the schema does. */
const FIELD_OF: Readonly<Record<string, string>> = {
  calendar: 'calendarId',
  machine: 'machineId',
  material: 'materialId',
  colour: 'colourId',
  'back gauge travel': 'backGaugeMm',
  'minimum strip': 'minStripMm',
  'force in tonnes': 'tonnes',
  'die opening': 'dieOpeningMm',
  revision: '',
};
const fieldOf = ({ field }: Issue): string => FIELD_OF[field] ?? field;

export interface RowFormProps<K extends FormKind> {
  readonly shop: Shop;
  readonly row: RowOf<K>;
  /** Not in the shop yet: its code can be chosen. */
  readonly isNew: boolean;
  /** After saving, with the row's code. */
  readonly onSaved: (id: string) => void;
}

/** The form of one row. A new row must not take the code of another. */
export function useRowForm<K extends FormKind>(
  kind: K,
  { shop, row, isNew }: RowFormProps<K>,
): Form<RowOf<K>> {
  return useForm<RowOf<K>>({
    name: draftName(kind, isNew ? null : row.id),
    shop,
    current: row,
    schema: rowKinds[kind] as unknown as z.ZodType<RowOf<K>>,
    command: (entries) => ({ do: 'row.save', kind, row: entries }) as Command,
    fieldOf,
    rebase: (entries, [conflict]) => ({
      ...entries,
      revision: (conflict?.theirs as RowOf<K> | null)?.revision ?? 0,
    }),
    held: (entries) => entries,
    refuses: ({ id }): FieldErrors =>
      isNew && shop[kind].some((other) => other.id === id)
        ? { id: `The code ${id} already exists. Choose another.` }
        : {},
  });
}

/** No code begins with a plus, so it can stand in an address for the row that is being added. */
export const NEW_ROW = '+';

/** The name of a row's draft; null for the one of a new row. */
export const draftName = (kind: FormKind, id: string | null): string => `${kind} ${id ?? NEW_ROW}`;
