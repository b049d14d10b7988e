import type { RowOf, Shop } from '../../../../core/shop/state.ts';
import { MM_PER_FOOT } from '../../../../core/units/length.ts';
import { TextField } from '../../../ui/text-field.tsx';
import { Fields, Group } from '../form/form-frame.tsx';
import { Length } from '../form/parsed-field.tsx';
import { CodeField, RowFrame } from '../form/row-frame.tsx';
import { Section } from '../form/section.tsx';
import { useRowForm, type RowFormProps } from '../form/use-row-form.ts';
import { PartView } from './part-view.tsx';
import styles from './parts.module.css';
import { ProfileFields } from './profile-fields.tsx';

/** Sheet comes in lengths of about ten feet, and so does most trim (common practice, no source). */
const usualLengthMm = (units: 'in' | 'mm'): number => (units === 'in' ? 10 * MM_PER_FOOT : 3000);

const freshPart = ({ settings }: Shop): RowOf<'part'> => ({
  id: '',
  name: '',
  profile: {
    flangesMm: [NaN, NaN],
    bends: [{ angle: 90, direction: 'up', radiusMm: null }],
    startHem: null,
    endHem: null,
    measured: 'outside',
    paintedSide: 'up',
  },
  lengthMm: usualLengthMm(settings.units),
  bendOrder: null,
  family: null,
  note: '',
  revision: 0,
});

const shape = ({ profile: { bends, startHem, endHem } }: RowOf<'part'>): string => {
  const hems = (startHem ? 1 : 0) + (endHem ? 1 : 0);
  if (bends.length === 0 && hems === 0) return 'flat';
  return `${bends.length} ${bends.length === 1 ? 'bend' : 'bends'}${hems ? `, ${hems} ${hems === 1 ? 'hem' : 'hems'}` : ''}`;
};

export const Parts = ({ shop }: { shop: Shop }) => (
  <Section
    kind="part"
    path="parts"
    noun="part"
    rows={shop.part}
    entry={(part) => ({ title: part.name, detail: `${part.id}, ${shape(part)}` })}
    fresh={() => freshPart(shop)}
    purpose="A piece you make, with its cross-section: blanks, times and machine limits are reckoned from it."
    form={(row, isNew, onSaved) => <PartForm shop={shop} row={row} isNew={isNew} onSaved={onSaved} />}
  />
);

function PartForm(props: RowFormProps<'part'>) {
  const { shop, isNew } = props;
  const form = useRowForm('part', props);
  const { entries, errors, set } = form;
  const { units } = shop.settings;
  return (
    <RowFrame kind="part" noun="part" form={form} {...props}>
      <div className={styles.split}>
        <div className={styles.entries}>
          <Fields>
            <CodeField form={form} isNew={isNew} />
            <TextField
              label="Name"
              value={entries.name}
              onChange={(name) => set({ name })}
              error={errors.name}
            />
            <Length
              label="Usual length"
              units={units}
              value={entries.lengthMm}
              onChange={(lengthMm) => set({ lengthMm })}
              error={errors.lengthMm}
            />
          </Fields>
          <ProfileFields
            profile={entries.profile}
            units={units}
            errors={errors}
            onChange={(profile) => set({ profile })}
          />
          <Group title="Note">
            <TextField
              label="For the people who make it"
              long
              value={entries.note}
              onChange={(note) => set({ note })}
              error={errors.note}
            />
          </Group>
        </div>
        <PartView shop={shop} part={entries} />
      </div>
    </RowFrame>
  );
}
