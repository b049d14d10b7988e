import { lotOf, lotWords, NO_LOT } from '../../../../core/material/lot.ts';
import { gaugeName, metalWords } from '../../../../core/shop/metal-name.ts';
import type { RowOf, Shop } from '../../../../core/shop/state.ts';
import type { Settings } from '../../../../core/shop/settings.ts';
import { formatCutSize } from '../../../../core/units/length.ts';
import { Select } from '../../../ui/choice.tsx';
import { NumberField } from '../../../ui/number-field.tsx';
import { navigate } from '../../../router.ts';
import { Button } from '../../../ui/button.tsx';
import { Fields } from '../../../form/form-frame.tsx';
import { Length, Money } from '../../../form/parsed-field.tsx';
import { CodeField, RowFrame } from '../../../form/row-frame.tsx';
import { LotFields } from '../../../form/lot-fields.tsx';
import { Section } from '../../../form/section.tsx';
import type { Form } from '../../../form/use-form.ts';
import { ManySheets } from './sheet-grid.tsx';
import { useRowForm, type RowFormProps } from '../../../form/use-row-form.ts';

export function Sheets({ shop }: { shop: Shop }) {
  const { stockKnows: knows } = shop.settings;
  const colour = (id: string) => shop.colour.find((c) => c.id === id);
  const material = (id: string) => shop.material.find((m) => m.id === id)?.name ?? id;
  return (
    <Section
      kind="sheet"
      path="sheets"
      noun="sheet size"
      rows={shop.sheet}
      entry={(sheet) => ({
        title: metalWords({ gauge: sheet.gauge, colour: colour(sheet.colourId)?.name ?? sheet.colourId }),
        detail: [
          formatCutSize(sheet.widthMm, sheet.lengthMm, shop.settings),
          material(sheet.materialId),
          ...(knows ? [lotWords(lotOf(knows, sheet))] : []),
        ]
          .filter(Boolean)
          .join(', '),
        swatch: colour(sheet.colourId)?.hex ?? '#808080',
      })}
      fresh={() => freshSheet(shop)}
      purpose="Blanks are cut from the sheets kept here; a line without one cannot be planned. Add a material and a colour first."
      many={{ label: 'Several at once', view: (onSaved) => <ManySheets shop={shop} onSaved={onSaved} /> }}
      form={(row, isNew, onSaved) => <SheetForm shop={shop} row={row} isNew={isNew} onSaved={onSaved} />}
    />
  );
}

const freshSheet = (shop: Shop): RowOf<'sheet'> => ({
  id: '',
  materialId: shop.material[0]?.id ?? '',
  gauge: shop.material[0]?.gauges[0]?.label ?? '',
  colourId: shop.colour[0]?.id ?? '',
  widthMm: NaN,
  lengthMm: NaN,
  ...NO_LOT,
  form: 'sheet',
  trimMm: 0,
  costCents: NaN,
  onHand: 0,
  revision: 0,
});

function SheetForm(props: RowFormProps<'sheet'>) {
  const { shop, isNew } = props;
  const form = useRowForm('sheet', props);
  return (
    <RowFrame kind="sheet" noun="sheet size" form={form} {...props} notCopied={{ onHand: 0 }}>
      <Fields>
        <CodeField form={form} isNew={isNew} />
        <StockFields shop={shop} form={form} />
        <SizeFields settings={shop.settings} form={form} />
        <LotFields
          knows={shop.settings.stockKnows}
          lot={form.entries}
          empty="not on record"
          onChange={form.set}
          error={(field) => form.errors[field]}
        />
        {isNew && <OpeningCount form={form} />}
      </Fields>
      {!isNew && <OnHand sheet={form.entries} />}
    </RowFrame>
  );
}

type SheetForm = Form<RowOf<'sheet'>>;

function StockFields({ shop, form: { entries, errors, set } }: { shop: Shop; form: SheetForm }) {
  const gauges = shop.material.find((m) => m.id === entries.materialId)?.gauges ?? [];
  return (
    <>
      <Select
        label="Material"
        options={shop.material}
        value={entries.materialId}
        onChange={(materialId) => set({ materialId })}
        error={errors.materialId}
      />
      <Select
        label="Gauge"
        options={gauges.map(({ label }) => ({ id: label, name: gaugeName(label) }))}
        value={entries.gauge}
        onChange={(gauge) => set({ gauge })}
        error={errors.gauge}
      />
      <Select
        label="Colour"
        options={shop.colour.map(({ id, name, hex }) => ({ id, name, swatch: hex }))}
        value={entries.colourId}
        onChange={(colourId) => set({ colourId })}
        error={errors.colourId}
      />
    </>
  );
}

/** What one piece of each form is called: a coil is counted and priced by the coil length. */
const PIECE = { sheet: 'sheet', coil: 'coil length', remnant: 'remnant' } as const;
const PIECES = { sheet: 'Sheets', coil: 'Coil lengths', remnant: 'Remnants' } as const;
const FORMS = [
  { id: 'sheet', name: 'Sheet' },
  { id: 'coil', name: 'Coil, cut to length' },
  { id: 'remnant', name: 'Remnant, used first where it fits' },
] as const;

interface SizeProps {
  settings: Settings;
  form: SheetForm;
}

const SizeFields = ({ settings: { units, currency }, form: { entries, errors, set } }: SizeProps) => (
  <>
    <Select
      label="Form"
      options={FORMS}
      value={entries.form}
      onChange={(form) => set({ form: form as RowOf<'sheet'>['form'] })}
      error={errors.form}
    />
    <Length
      label="Width"
      units={units}
      value={entries.widthMm}
      onChange={(widthMm) => set({ widthMm })}
      error={errors.widthMm}
      help="girths lie across it"
    />
    <Length
      label={entries.form === 'coil' ? 'Coil length' : 'Length'}
      units={units}
      value={entries.lengthMm}
      onChange={(lengthMm) => set({ lengthMm })}
      error={errors.lengthMm}
      help={
        entries.form === 'coil'
          ? 'a coil is counted and priced by it, by the metre or the ten feet, say'
          : 'pieces lie along it'
      }
    />
    <Length
      label="Trim"
      units={units}
      value={entries.trimMm}
      onChange={(trimMm) => set({ trimMm })}
      error={errors.trimMm}
      help="cut off one end and one side for a square edge; 0 where the edges can be trusted"
    />
    <Money
      label={`Cost of a ${PIECE[entries.form]}`}
      currency={currency}
      value={entries.costCents}
      onChange={(costCents) => set({ costCents })}
      error={errors.costCents}
    />
  </>
);

const OpeningCount = ({ form: { entries, errors, set } }: { form: SheetForm }) => (
  <NumberField
    label={`${PIECES[entries.form]} on hand now`}
    whole
    value={entries.onHand}
    onChange={(onHand) => set({ onHand })}
    error={errors.onHand}
  />
);

/** What lies there changes under Stock only, where each change is an entry in its history. */
const OnHand = ({ sheet: { id, onHand, form } }: { sheet: RowOf<'sheet'> }) => (
  <p>
    {`${PIECES[form]} on hand: ${onHand}. `}
    <Button small onPress={() => navigate('stock', id)}>
      Receive, set count, add or subtract
    </Button>
  </p>
);
