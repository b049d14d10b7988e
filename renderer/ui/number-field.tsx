import { Input, NumberField as Primitive, type NumberFieldProps } from 'react-aria-components';
import { FieldFoot, FieldLabel, type FieldWords } from './field-parts.tsx';
import styles from './field.module.css';

interface Props extends Omit<NumberFieldProps, 'className' | 'children'>, FieldWords {
  unit?: string | undefined;
}

/** A number with arrow-key steps; `minValue` and `maxValue` are told in `help`, not clamped in silence by the caller. */
export function NumberField({ label, help, error, unit, ...rest }: Props) {
  return (
    <Primitive {...rest} isInvalid={error !== undefined} className={styles.field ?? ''}>
      <FieldLabel label={label} />
      <div className={unit ? styles.boxed : undefined}>
        <Input className={styles.input ?? ''} />
        {unit && <span className={styles.unit}>{unit}</span>}
      </div>
      <FieldFoot help={help} error={error} />
    </Primitive>
  );
}
