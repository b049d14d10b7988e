import { useState } from 'react';
import type { TextFieldProps } from 'react-aria-components';
import { sentence, type Result } from '../../core/result.ts';
import type { FieldWords } from './field-parts.tsx';
import { TextField } from './text-field.tsx';
import { useUnreadText } from './unread-texts.ts';

/** What a field of one figure takes, whatever the figure is. */
export interface FigureProps extends FieldWords {
  /** NaN: empty, or a text that does not read. */
  value: number;
  /** With each key. `empty` tells a cleared field from a text that does not read; both come as NaN. */
  onChange: (value: number, empty: boolean) => void;
  placeholder?: string | undefined;
  unit?: string | undefined;
  isDisabled?: boolean | undefined;
  autoFocus?: boolean | undefined;
  'aria-label'?: string | undefined;
}

interface Props extends FigureProps {
  format: (value: number) => string;
  parse: (text: string) => Result<number>;
  inputMode?: 'decimal' | 'numeric';
  /** The value an arrow key leads to; missing: arrows do nothing. @param steps 1 up, −1 down */
  stepped?: (value: number, steps: 1 | -1) => number;
}

/**
 * A figure typed as people write it. What does not read is kept as typed, told at once, and reported as NaN, so that
 * a form can never save an older value behind it.
 */
export function ParsedField({ value, format, parse, stepped, onChange, error, ...rest }: Props) {
  const [typed, setTyped] = useState<string | null>(null);
  const read = typed === null || typed.trim() === '' ? null : parse(typed);
  const wrong = read && !read.ok ? sentence(read.issues) : undefined;
  // A form that was discarded has its value back: what did not read stood for none.
  const stale = wrong !== undefined && !Number.isNaN(value);
  useUnreadText(wrong !== undefined && !stale ? typed : null);
  const shown = Number.isNaN(value) ? '' : format(value);
  const type = (text: string) => {
    setTyped(text);
    const empty = text.trim() === '';
    const parsed = empty ? null : parse(text);
    onChange(parsed?.ok ? parsed.value : NaN, empty);
  };
  const step: TextFieldProps['onKeyDown'] = (event) => {
    const steps = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : null;
    // A key that the field has no use for is the form's and the page's: Ctrl+Enter, Esc.
    if (!stepped || !steps || event.altKey || event.ctrlKey || event.metaKey || event.shiftKey)
      return event.continuePropagation();
    event.preventDefault();
    if (wrong === undefined || stale) type(format(stepped(value, steps)));
  };
  return (
    <TextField
      {...rest}
      value={stale ? shown : (typed ?? shown)}
      onChange={type}
      onKeyDown={step}
      onBlur={() => {
        if (!wrong || stale) setTyped(null);
      }}
      error={(stale ? undefined : wrong) ?? error}
    />
  );
}
