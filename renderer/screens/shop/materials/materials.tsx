import { Plus, X } from 'lucide-react';
import { METAL_DEFAULTS } from '../../../../core/material/defaults.ts';
import {
  metal as metals,
  temper,
  type Gauge,
  type Metal,
  type Temper,
} from '../../../../core/material/material.ts';
import type { RowOf, Shop } from '../../../../core/shop/state.ts';
import { useDecimals } from '../../../ui/decimals.ts';
import { formatThickness, type LengthUnits } from '../../../../core/units/length.ts';
import { Button } from '../../../ui/button.tsx';
import { Select } from '../../../ui/choice.tsx';
import { IconButton } from '../../../ui/icon-button.tsx';
import { Menu } from '../../../ui/menu.tsx';
import { NumberField } from '../../../ui/number-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import styles from '../../../form/form.module.css';
import { Fields, Group } from '../../../form/form-frame.tsx';
import { without, withEntry } from '../../../form/list.ts';
import { CodeField, RowFrame } from '../../../form/row-frame.tsx';
import { Section } from '../../../form/section.tsx';
import { Length } from '../../../form/parsed-field.tsx';
import { AreaWeight, Strength, Thickness } from '../../../form/stock-fields.tsx';
import type { Form } from '../../../form/use-form.ts';
import { useRowForm, type RowFormProps } from '../../../form/use-row-form.ts';
import { DeductionFields } from './deduction-fields.tsx';
import { fromTable, missingGauges, withHouseV } from './gauge-rows.ts';
import { writeNumber } from '../../../../core/units/number.ts';

export const metalName: Readonly<Record<Metal, string>> = {
  steel: 'Steel, uncoated',
  galvanized: 'Steel, galvanized',
  stainless: 'Stainless steel',
  aluminium: 'Aluminium',
};

const NO_TEMPER = 'none';
const tempers = [
  { id: NO_TEMPER, name: 'not known, as 3003-H14' },
  ...temper.options.map((id) => ({ id, name: id })),
];

const freshMaterial = (): RowOf<'material'> => ({
  id: '',
  name: '',
  metal: 'galvanized',
  tensileMpa: METAL_DEFAULTS.galvanized.tensileMpa,
  temper: null,
  kFactor: METAL_DEFAULTS.galvanized.kFactor,
  gauges: [],
  deductions: [],
  revision: 0,
});

export const Materials = ({ shop }: { shop: Shop }) => (
  <Section
    kind="material"
    path="materials"
    noun="material"
    rows={shop.material}
    entry={({ name, gauges }) => ({ title: name, detail: `gauges ${gauges.map((g) => g.label).join(', ')}` })}
    fresh={freshMaterial}
    purpose="A metal as you buy it, with its gauges: blanks, weights and machine limits are worked out from it."
    form={(row, isNew, onSaved) => <MaterialForm shop={shop} row={row} isNew={isNew} onSaved={onSaved} />}
  />
);

function MaterialForm(props: RowFormProps<'material'>) {
  const form = useRowForm('material', props);
  const { entries, errors, set } = form;
  const usual = METAL_DEFAULTS[entries.metal];
  const chooseMetal = (metal: Metal) =>
    set({
      metal,
      temper: null,
      tensileMpa: METAL_DEFAULTS[metal].tensileMpa,
      kFactor: METAL_DEFAULTS[metal].kFactor,
    });
  return (
    <RowFrame kind="material" noun="material" form={form} {...props}>
      <Fields>
        <CodeField form={form} isNew={props.isNew} />
        <TextField label="Name" value={entries.name} onChange={(name) => set({ name })} error={errors.name} />
        <Select
          label="Metal"
          options={metals.options.map((id) => ({ id, name: metalName[id] }))}
          value={entries.metal}
          onChange={(id) => chooseMetal(id as Metal)}
          help="sets strength and K-factor to the usual"
          error={errors.metal}
        />
        <Strength
          label="Tensile strength"
          units={props.shop.settings.units}
          valueMpa={entries.tensileMpa}
          usualMpa={usual.tensileMpa}
          onChange={(tensileMpa) => set({ tensileMpa })}
          error={errors.tensileMpa}
        />
        {entries.metal === 'aluminium' && (
          <Select
            label="Alloy and temper"
            options={tempers}
            value={entries.temper ?? NO_TEMPER}
            onChange={(id) => set({ temper: id === NO_TEMPER ? null : (id as Temper) })}
            help="for the least bend radius"
            error={errors.temper}
          />
        )}
        <NumberField
          label="K-factor"
          step={0.001}
          value={entries.kFactor}
          onChange={(kFactor) => set({ kFactor })}
          help={`usual ${writeNumber(usual.kFactor, props.shop.settings.decimals)}; a test strip beats it`}
          error={errors.kFactor}
        />
      </Fields>
      <p className={styles.note}>Usual figures: {usual.basis}.</p>
      <Gauges form={form} units={props.shop.settings.units} />
      <DeductionFields shop={props.shop} form={form} />
    </RowFrame>
  );
}

function Gauges({ form, units }: { form: Form<RowOf<'material'>>; units: LengthUnits }) {
  const { metal, gauges } = form.entries;
  const decimals = useDecimals();
  const set = (next: Gauge[]) => form.set({ gauges: next });
  const missing = missingGauges(metal, gauges).map((gauge) => ({
    id: gauge.label,
    label: `${gauge.label} ga`,
    end: formatThickness(gauge.thicknessMm, { units, decimals }),
    act: () => set([...gauges, gauge]),
  }));
  return (
    <Group
      title="Gauges"
      note="The number alone does not fix the thickness: prefinished stock is ordered to a stated decimal. Put in what your supplier states. The house V is what it is bent in on every brake; left empty, the die nearest to six thicknesses."
      end={
        <span className={styles.ends}>
          <Menu label="Published gauges" entries={missing}>
            <Button small icon={Plus} isDisabled={missing.length === 0}>
              From the published table
            </Button>
          </Menu>
          <Button
            small
            icon={Plus}
            onPress={() => set([...gauges, { label: '', thicknessMm: NaN, kgPerM2: NaN }])}
          >
            Another
          </Button>
        </span>
      }
    >
      {form.errors.gauges && <p className={styles.warning}>{form.errors.gauges}</p>}
      {gauges.map((gauge, i) => (
        <GaugeLine
          key={i}
          gauge={gauge}
          units={units}
          published={fromTable(metal, gauge)}
          error={(field) => form.errors[`gauges.${i}.${field}`]}
          onChange={(patch) => set(withEntry(gauges, i, patch))}
          onHouseV={(vMm) => set(gauges.map((one, k) => (k === i ? withHouseV(one, vMm) : one)))}
          onRemove={() => set(without(gauges, i))}
        />
      ))}
    </Group>
  );
}

interface GaugeProps {
  gauge: Gauge;
  units: LengthUnits;
  /** The gauge with the published figures; itself when no table has it. */
  published: Gauge;
  error: (field: keyof Gauge) => string | undefined;
  onChange: (patch: Partial<Gauge>) => void;
  /** null: by the usual rule. */
  onHouseV: (vMm: number | null) => void;
  onRemove: () => void;
}

function GaugeLine({ gauge, units, published, error, onChange, onHouseV, onRemove }: GaugeProps) {
  return (
    <div className={styles.line} role="group" aria-label={`Gauge ${gauge.label}`}>
      <TextField
        label="Label"
        value={gauge.label}
        onChange={(label) => onChange({ label })}
        error={error('label')}
      />
      <Thickness
        label="Thickness"
        units={units}
        valueMm={gauge.thicknessMm}
        error={error('thicknessMm')}
        onChange={(thicknessMm) => onChange({ thicknessMm })}
      />
      <AreaWeight
        label="Weight"
        units={units}
        kgPerM2={gauge.kgPerM2}
        error={error('kgPerM2')}
        onChange={(kgPerM2) => onChange({ kgPerM2 })}
      />
      <Length
        label="House V"
        units={units}
        value={gauge.vMm ?? NaN}
        placeholder="by rule"
        error={error('vMm')}
        onChange={(mm, empty) => onHouseV(empty ? null : mm)}
      />
      <div className={styles.end}>
        <Button small onPress={() => onChange(published)} isDisabled={published === gauge}>
          Table’s figures
        </Button>
        <IconButton label={`Remove gauge ${gauge.label}`} icon={X} small onPress={onRemove} />
      </div>
    </div>
  );
}
