import type { ExtraBlanks } from '../../core/part/extra-blanks.ts';
import { NumberField } from '../ui/number-field.tsx';
import { Fields } from './form-frame.tsx';

interface Props {
  value: ExtraBlanks;
  onChange: (value: ExtraBlanks) => void;
  errors: Readonly<Record<string, string | undefined>>;
}

/** A share as it is typed, to a hundredth of a percent. */
export const percentOf = (share: number): number => Number((share * 100).toFixed(2));

/** Blanks to set up with and the share that is usually spoiled. */
export const ExtraBlankFields = ({ value, onChange, errors }: Props) => (
  <Fields>
    <NumberField
      label="To set up with"
      whole
      min={0}
      max={20}
      value={value.setUp}
      onChange={(setUp) => onChange({ ...value, setUp })}
      help="blanks a line, where it is bent"
      error={errors['extraBlanks.setUp']}
    />
    <NumberField
      label="Usually spoiled"
      unit="%"
      min={0}
      max={50}
      places={2}
      value={percentOf(value.scrapShare)}
      onChange={(typed) => onChange({ ...value, scrapShare: typed / 100 })}
      help="of the pieces, to the nearest whole blank"
      error={errors['extraBlanks.scrapShare']}
    />
  </Fields>
);
