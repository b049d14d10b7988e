import { Plus, X } from 'lucide-react';
import { gaugeName } from '../../../../core/shop/metal-name.ts';
import type { MeasuredDeduction } from '../../../../core/material/material.ts';
import type { RowOf, Shop } from '../../../../core/shop/state.ts';
import { blankBasisOf } from '../../../../core/part/forming.ts';
import { formatLength, type LengthUnits } from '../../../../core/units/length.ts';
import { Button } from '../../../ui/button.tsx';
import { Select } from '../../../ui/choice.tsx';
import { IconButton } from '../../../ui/icon-button.tsx';
import { NumberField } from '../../../ui/number-field.tsx';
import styles from '../../../form/form.module.css';
import { Group } from '../../../form/form-frame.tsx';
import { without, withEntry } from '../../../form/list.ts';
import { Length } from '../../../form/parsed-field.tsx';
import type { Form } from '../../../form/use-form.ts';

interface Props {
  shop: Shop;
  form: Form<RowOf<'material'>>;
}

/** Which V blanks are cut for, in a sentence. */
function vSentence(shop: Shop): string {
  const { dieOpeningMm, girthRule } = blankBasisOf(shop);
  if (girthRule === 'outsideSum')
    return 'They do not count now: Settings says that outsides are added up, with nothing subtracted.';
  if (dieOpeningMm === null) return 'There is no brake yet, so only rows for any V count.';
  return `Blanks are cut for the V of your first brake, ${formatLength(dieOpeningMm, shop.settings)}.`;
}

/** The shop's own deductions, by gauge, angle and die. */
export function DeductionFields({ shop, form }: Props) {
  const { deductions, gauges } = form.entries;
  const set = (next: MeasuredDeduction[]) => form.set({ deductions: next });
  const fresh = { gauge: gauges[0]?.label ?? '', angle: 90, dieOpeningMm: null, deductionMm: NaN };
  return (
    <Group
      title="Measured deductions"
      note={`From your own test pieces: both flanges measured over the outside, less the blank. They beat the formula for bends whose radius is left to the die; 180° is a closed hem. ${vSentence(shop)}`}
      end={
        <Button
          small
          icon={Plus}
          isDisabled={gauges.length === 0}
          onPress={() => set([...deductions, fresh])}
        >
          Add a measured deduction
        </Button>
      }
    >
      {form.errors.deductions && <p className={styles.warning}>{form.errors.deductions}</p>}
      {deductions.map((deduction, i) => (
        <DeductionLine
          key={i}
          deduction={deduction}
          gauges={gauges.map(({ label }) => ({ id: label, name: gaugeName(label) }))}
          units={shop.settings.units}
          error={(field) => form.errors[`deductions.${i}.${field}`]}
          onChange={(patch) => set(withEntry(deductions, i, patch))}
          onRemove={() => set(without(deductions, i))}
        />
      ))}
    </Group>
  );
}

interface LineProps {
  deduction: MeasuredDeduction;
  gauges: readonly { id: string; name: string }[];
  units: LengthUnits;
  error: (field: keyof MeasuredDeduction) => string | undefined;
  onChange: (patch: Partial<MeasuredDeduction>) => void;
  onRemove: () => void;
}

function DeductionLine({ deduction, gauges, units, error, onChange, onRemove }: LineProps) {
  const { gauge, angle, dieOpeningMm, deductionMm } = deduction;
  return (
    <div className={styles.line} role="group" aria-label={`Measured at ${angle}° in ${gaugeName(gauge)}`}>
      <Select
        label="Gauge"
        options={gauges}
        value={gauge}
        onChange={(next) => onChange({ gauge: next })}
        error={error('gauge')}
      />
      <NumberField
        label="Angle turned"
        unit="°"
        value={angle}
        onChange={(next) => onChange({ angle: next })}
        error={error('angle')}
      />
      <Length
        label="V opening"
        units={units}
        value={dieOpeningMm ?? NaN}
        placeholder="any"
        onChange={(mm, empty) => onChange({ dieOpeningMm: empty ? null : mm })}
        error={error('dieOpeningMm')}
      />
      <Length
        label="Deduction"
        units={units}
        value={deductionMm}
        onChange={(mm) => onChange({ deductionMm: mm })}
        error={error('deductionMm')}
      />
      <div className={styles.end}>
        <IconButton label={`Remove the deduction for ${angle}°`} icon={X} small onPress={onRemove} />
      </div>
    </div>
  );
}
