import { readNumber, readWhole, writeNumber } from '../../core/units/number.ts';
import { useDecimals } from './decimals.ts';
import { ParsedField, type FigureProps } from './parsed-field.tsx';

interface Props extends FigureProps {
  /** Only whole numbers: pieces, people, sheets. */
  whole?: boolean;
  /** What is outside is refused in words; arrow keys stop there. */
  min?: number | undefined;
  max?: number | undefined;
  /** Of one press of an arrow key. */
  step?: number;
  /** Decimals shown at most. */
  places?: number;
}

/** A number read by the one rule of core/units/number.ts; its unit may be typed behind it. Arrow keys step it. */
export function NumberField({ whole = false, min, max, step = 1, places = 3, ...rest }: Props) {
  const decimals = useDecimals();
  const { unit } = rest;
  const read = whole ? readWhole : readNumber;
  const figure = (text: string): string => {
    const tidy = text.trim();
    return unit && tidy.endsWith(unit) ? tidy.slice(0, -unit.length) : tidy;
  };
  const stepped = (value: number, steps: 1 | -1): number => {
    const next = Number.isNaN(value) ? Math.max(min ?? 0, 0) : value + steps * step;
    return Math.min(Math.max(next, min ?? next), max ?? next);
  };
  return (
    <ParsedField
      {...rest}
      inputMode={whole ? 'numeric' : 'decimal'}
      format={(value) => writeNumber(value, decimals, whole ? 0 : places)}
      parse={(text) => read(figure(text), { decimals }, '', { min, max })}
      stepped={stepped}
    />
  );
}
