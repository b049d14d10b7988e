import type { Shop } from '../../../../core/shop/state.ts';
import { Swatch } from '../../../ui/choice.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import styles from '../../../form/form.module.css';
import { Fields } from '../../../form/form-frame.tsx';
import { CodeField, RowFrame } from '../../../form/row-frame.tsx';
import { Section } from '../../../form/section.tsx';
import { useRowForm, type RowFormProps } from '../../../form/use-row-form.ts';

export const Colours = ({ shop }: { shop: Shop }) => (
  <Section
    kind="colour"
    path="colours"
    noun="colour"
    rows={shop.colour}
    entry={({ name, id, hex }) => ({ title: name, detail: id, swatch: hex })}
    fresh={() => ({ id: '', name: '', hex: '#808080', revision: 0 })}
    purpose="A work order names the colour of its sheet; the board paints its bars with it."
    form={(row, isNew, onSaved) => <ColourForm shop={shop} row={row} isNew={isNew} onSaved={onSaved} />}
  />
);

function ColourForm(props: RowFormProps<'colour'>) {
  const form = useRowForm('colour', props);
  const { name, hex } = form.entries;
  const readable = /^#[0-9a-f]{6}$/.test(hex);
  return (
    <RowFrame kind="colour" noun="colour" form={form} {...props}>
      <Fields>
        <CodeField form={form} isNew={props.isNew} />
        <TextField
          label="Name"
          value={name}
          onChange={(text) => form.set({ name: text })}
          error={form.errors.name}
        />
        <TextField
          label="Colour value"
          value={hex}
          onChange={(text) => form.set({ hex: text.trim().toLowerCase() })}
          help="six hexadecimal digits after #, as #2f5d3a"
          error={form.errors.hex}
        />
        <label className={styles.group}>
          <span className={styles.note}>Or pick it</span>
          <input
            type="color"
            value={readable ? hex : '#808080'}
            onChange={(event) => form.set({ hex: event.target.value })}
          />
        </label>
      </Fields>
      <p className={styles.note}>
        {readable && <Swatch hex={hex} />} A screen shows a painted sheet only roughly: match colours by the
        supplier’s card.
      </p>
    </RowFrame>
  );
}
