import { useState } from 'react';
import { sentence, type Result } from '../../core/result.ts';
import { formatDuration, parseDuration } from '../../core/units/duration.ts';
import { formatLength, parseLength, type LengthUnits } from '../../core/units/length.ts';
import { formatAmount, parseMoney, type Currency } from '../../core/units/money.ts';
import type { FieldWords } from '../ui/field-parts.tsx';
import { TextField } from '../ui/text-field.tsx';

interface Props extends FieldWords {
  /** NaN: empty, or a text that does not read. */
  value: number;
  format: (value: number) => string;
  parse: (text: string) => Result<number>;
  /** `empty` tells a cleared field from a text that does not read; both come as NaN. */
  onChange: (value: number, empty: boolean) => void;
  placeholder?: string | undefined;
  unit?: string | undefined;
}

/**
 * A figure typed as people write it. What does not read is kept as typed, told at once, and reported as NaN, so that
 * a form can never save an older value behind it.
 */
function ParsedField({ value, format, parse, onChange, error, ...rest }: Props) {
  const [typed, setTyped] = useState<string | null>(null);
  const shown = Number.isNaN(value) ? '' : format(value);
  const read = typed === null || typed.trim() === '' ? null : parse(typed);
  const wrong = read && !read.ok ? sentence(read.issues) : undefined;
  const type = (text: string) => {
    setTyped(text);
    const empty = text.trim() === '';
    const parsed = empty ? null : parse(text);
    onChange(parsed?.ok ? parsed.value : NaN, empty);
  };
  return (
    <TextField
      {...rest}
      value={typed ?? shown}
      onChange={type}
      onBlur={() => {
        if (!wrong) setTyped(null);
      }}
      error={wrong ?? error}
    />
  );
}

type Figure = Omit<Props, 'format' | 'parse'>;

/** Millimetres, typed and shown in the shop's units; a unit in the text wins. */
export const Length = ({ units, ...rest }: Figure & { units: LengthUnits }) => (
  <ParsedField
    {...rest}
    format={(mm) => formatLength(mm, units)}
    parse={(text) => parseLength(text, units)}
  />
);

/** Seconds, typed as minutes or "1 h 20 min". */
export const Duration = (props: Figure) => (
  <ParsedField {...props} format={formatDuration} parse={parseDuration} />
);

/** Whole cents, typed as an amount; the shop's currency stands beside it. */
export const Money = ({ currency, ...rest }: Figure & { currency: Currency }) => (
  <ParsedField {...rest} unit={currency ?? undefined} format={formatAmount} parse={parseMoney} />
);
