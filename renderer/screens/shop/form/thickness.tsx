import { MM_PER_INCH, type LengthUnits } from '../../../../core/units/length.ts';
import type { FieldWords } from '../../../ui/field-parts.tsx';
import { NumberField } from '../../../ui/number-field.tsx';

interface Props extends FieldWords {
  /** NaN: empty. */
  valueMm: number;
  units: LengthUnits;
  onChange: (valueMm: number) => void;
}

/** Sheet is spoken of in ten-thousandths of an inch or hundredths of a millimetre: too fine for a length's fractions. */
export function Thickness({ valueMm, units, onChange, ...rest }: Props) {
  const per = units === 'in' ? MM_PER_INCH : 1;
  const digits = units === 'in' ? 4 : 3;
  return (
    <NumberField
      {...rest}
      unit={units}
      formatOptions={{ minimumFractionDigits: digits, maximumFractionDigits: digits }}
      value={valueMm / per}
      onChange={(value) => onChange(Math.round(value * per * 10_000) / 10_000)}
    />
  );
}
