import type { ReactNode } from 'react';
import type { FormKind } from '../../core/edit/command.ts';
import { removalEffects } from '../../core/edit/removal-effects.ts';
import type { RowOf } from '../../core/shop/state.ts';
import { useShop } from '../queries/hooks.ts';
import { navigate, usePlace } from '../router.ts';
import { TextField } from '../ui/text-field.tsx';
import { toast } from '../ui/toast.tsx';
import { useDrafts } from './drafts.ts';
import { FormFrame } from './form-frame.tsx';
import type { Form } from './use-form.ts';
import { draftName, NEW_ROW } from './use-row-form.ts';

interface Props<K extends FormKind> {
  kind: K;
  /** "part", as in "Add part", "Remove part ridge-cap?". */
  noun: string;
  form: Form<RowOf<K>>;
  isNew: boolean;
  onSaved: (id: string) => void;
  /** What a copy does not take over from the row. */
  notCopied?: Partial<RowOf<K>>;
  children: ReactNode;
}

/** The frame of a row's form, which can also remove the row. */
export function RowFrame<K extends FormKind>({
  kind,
  noun,
  form,
  isNew,
  onSaved,
  notCopied,
  children,
}: Props<K>) {
  const duplicate = useDuplicate(kind, noun);
  const { data: shop } = useShop();
  const { id, revision } = form.entries;
  const remove = () => void form.remove({ do: 'row.remove', kind, id, revision });
  const title = isNew ? `Add ${noun}` : nameOf(form.entries, noun);
  return (
    <FormFrame
      title={title}
      form={form}
      onSaved={(entries) => onSaved(entries.id)}
      isNew={isNew}
      onDuplicate={isNew ? undefined : () => duplicate({ ...form.entries, ...notCopied })}
      remove={
        isNew || !shop
          ? undefined
          : { what: `${noun} ${id}`, act: remove, effects: () => removalEffects(shop, kind, id) }
      }
    >
      {children}
    </FormFrame>
  );
}

/** Begin a new row with the figures of another, unless one is being added already. */
function useDuplicate<K extends FormKind>(kind: K, noun: string): (row: RowOf<K>) => void {
  const drafts = useDrafts((state) => state.entries);
  const keep = useDrafts((state) => state.keep);
  const section = usePlace().path[1] ?? '';
  return (row) => {
    const draft = draftName(kind, null);
    const named = 'name' in row ? { name: `${row.name}, copy` } : {};
    if (!(draft in drafts)) keep(draft, { ...row, ...named, id: '', revision: 0 });
    else
      toast({
        text: `A ${noun} is being added and not saved yet. Save or discard it first; nothing was copied.`,
      });
    navigate('shop', section, NEW_ROW);
  };
}

const nameOf = (row: { readonly id: string }, noun: string): string =>
  'name' in row && row.name ? String(row.name) : `${noun} ${row.id}`;

/** The row's code: typed once, never changed, because orders and plans name the row by it. */
export function CodeField<K extends FormKind>({ form, isNew }: { form: Form<RowOf<K>>; isNew: boolean }) {
  return (
    <TextField
      label="Code"
      value={form.entries.id}
      onChange={(id) => form.set({ id } as Partial<RowOf<K>>)}
      isDisabled={!isNew}
      help={isNew ? 'short; it cannot be changed later' : 'cannot be changed'}
      error={form.errors.id}
    />
  );
}
