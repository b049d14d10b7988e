import type { StockKnows } from '../../../core/material/lot.ts';
import type { Settings } from '../../../core/shop/settings.ts';
import { Group } from '../../form/form-frame.tsx';
import type { Form } from '../../form/use-form.ts';
import { CheckBox } from '../../ui/check-box.tsx';

const NOTHING: StockKnows = { lot: false, paint: false, film: false };

/** By what this shop tells sheets of one metal apart. */
export function StockKnowsFields({ form: { entries, set } }: { form: Form<Settings> }) {
  const knows = entries.stockKnows ?? NOTHING;
  const change = (part: Partial<StockKnows>) => {
    const next = { ...knows, ...part };
    set({ stockKnows: next.lot || next.paint || next.film ? next : null });
  };
  return (
    <Group
      title="Sheets told apart"
      note="Each line is then cut from sheets of one kind: all of one dye lot, say. Runs end where the lot changes, remnants keep theirs, and where no lot on hand has enough sheets for a line, Cutting says so. Switching it off keeps what was entered."
    >
      <CheckBox label="By dye lot" isSelected={knows.lot} onChange={(lot) => change({ lot })} />
      <CheckBox label="By paint system" isSelected={knows.paint} onChange={(paint) => change({ paint })} />
      <CheckBox label="By protective film" isSelected={knows.film} onChange={(film) => change({ film })} />
    </Group>
  );
}
