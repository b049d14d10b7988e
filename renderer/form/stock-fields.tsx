import { MPA_PER_KSI } from '../../core/units/force.ts';
import { MM_PER_INCH, parseLength, type LengthUnits } from '../../core/units/length.ts';
import { writeNumber } from '../../core/units/number.ts';
import { KG_M2_PER_LB_FT2 } from '../../core/units/weight.ts';
import type { FieldWords } from '../ui/field-parts.tsx';
import { useDecimals } from '../ui/decimals.ts';
import { NumberField } from '../ui/number-field.tsx';
import { ParsedField } from '../ui/parsed-field.tsx';
import { keptFigure } from './kept-figure.ts';

interface ThicknessProps extends FieldWords {
  /** NaN: empty. */
  valueMm: number;
  units: LengthUnits;
  onChange: (valueMm: number) => void;
}

/** Sheet is spoken of in ten-thousandths of an inch or hundredths of a millimetre: too fine for a length's fractions. */
export function Thickness({ valueMm, units, onChange, ...rest }: ThicknessProps) {
  const decimals = useDecimals();
  const per = units === 'in' ? MM_PER_INCH : 1;
  return (
    <ParsedField
      {...rest}
      unit={units}
      value={valueMm}
      format={(mm) => writeNumber(mm / per, decimals, units === 'in' ? 4 : 3)}
      parse={(text) => parseLength(text, { units, decimals })}
      onChange={(mm) => onChange(Math.round(mm * 10_000) / 10_000)}
    />
  );
}

interface AreaWeightProps extends FieldWords {
  /** NaN: empty. */
  kgPerM2: number;
  units: LengthUnits;
  onChange: (kgPerM2: number) => void;
}

/** What a sheet weighs by its area, lb/ft² in an inch shop. */
export function AreaWeight({ kgPerM2, units, onChange, ...rest }: AreaWeightProps) {
  const per = units === 'in' ? KG_M2_PER_LB_FT2 : 1;
  return (
    <NumberField
      {...rest}
      unit={units === 'in' ? 'lb/ft²' : 'kg/m²'}
      value={kgPerM2 / per}
      onChange={(value) => onChange(Math.round(value * per * 10_000) / 10_000)}
    />
  );
}

interface StrengthProps extends FieldWords {
  /** NaN: empty. */
  valueMpa: number;
  /** What is usual for the metal, as help. */
  usualMpa: number;
  units: LengthUnits;
  onChange: (valueMpa: number) => void;
}

/** Tensile strength, ksi in an inch shop. */
export function Strength({ valueMpa, usualMpa, units, onChange, ...rest }: StrengthProps) {
  const per = units === 'in' ? MPA_PER_KSI : 1;
  return (
    <NumberField
      {...rest}
      unit={units === 'in' ? 'ksi' : 'MPa'}
      places={1}
      value={valueMpa / per}
      onChange={(typed) => onChange(keptFigure(valueMpa, typed, per, 1))}
      help={`usual ${Math.round(usualMpa / per)}`}
    />
  );
}
