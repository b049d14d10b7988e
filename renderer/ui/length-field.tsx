import { useState } from 'react';
import { formatLength, parseLength } from '../../core/units/length.ts';
import { mm, type Millimetres } from '../../core/units/brand.ts';
import { sentence } from '../../core/shop/result.ts';
import type { FieldWords } from './field-parts.tsx';
import { TextField } from './text-field.tsx';

interface Props extends FieldWords {
  /** null: empty. */
  value: Millimetres | null;
  units: 'in' | 'mm';
  /** Called with each text that reads as a length, and with null for an empty one. */
  onChange: (value: Millimetres | null) => void;
  isDisabled?: boolean;
}

/** A length as people write it: 9 1/2, 10' 6", 240 mm. A unit in the text wins over the shop's. */
export function LengthField({ value, units, onChange, error, help, ...rest }: Props) {
  const shown = value === null ? '' : formatLength(value, units);
  const [typed, setTyped] = useState<string | null>(null);
  const read = typed === null || typed.trim() === '' ? null : parseLength(typed, units);
  const wrong = read && !read.ok ? sentence(read.problems) : undefined;

  const type = (text: string) => {
    setTyped(text);
    if (text.trim() === '') return onChange(null);
    const parsed = parseLength(text, units);
    if (parsed.ok) onChange(mm(parsed.value));
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
      help={help ?? (units === 'in' ? 'like 9 1/2, 10 ft or 240 mm' : 'like 240, 24 cm or 9 1/2 in')}
    />
  );
}
