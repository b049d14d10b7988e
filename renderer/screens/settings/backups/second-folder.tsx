import { settings as settingsSchema, type Settings } from '../../../../core/shop/settings.ts';
import type { Shop } from '../../../../core/shop/state.ts';
import { FormFrame } from '../../../form/form-frame.tsx';
import { useForm } from '../../../form/use-form.ts';
import { TextField } from '../../../ui/text-field.tsx';

/** A folder on another disk that gets each backup too. */
export function SecondFolder({ shop }: { shop: Shop }) {
  const form = useForm<Settings>({
    name: 'second folder',
    shop,
    current: shop.settings,
    schema: settingsSchema,
    command: (row) => ({ do: 'settings.save', row }),
    fieldOf: () => '',
  });
  return (
    <FormFrame title="A second folder" form={form} onSaved={() => undefined}>
      <TextField
        label="Folder"
        value={form.entries.backupFolder ?? ''}
        onChange={(folder) => form.set({ backupFolder: folder.trim() === '' ? null : folder })}
        help="on another disk or a network drive; each backup is copied there too. Empty: none. When it is away, that is said, and work goes on."
        error={form.errors.backupFolder}
      />
    </FormFrame>
  );
}
