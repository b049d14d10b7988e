import { Input, TextArea, TextField as Primitive, type TextFieldProps } from 'react-aria-components';
import { classes } from './classes.ts';
import { FieldFoot, FieldLabel, type FieldWords } from './field-parts.tsx';
import styles from './field.module.css';

interface Props extends Omit<TextFieldProps, 'className' | 'children'>, FieldWords {
  /** Several lines. */
  long?: boolean;
  placeholder?: string | undefined;
  /** The unit, shown at the end of the box. */
  unit?: string | undefined;
}

export function TextField({ label, help, error, long = false, placeholder, unit, ...rest }: Props) {
  return (
    <Primitive {...rest} isInvalid={error !== undefined} className={styles.field ?? ''}>
      <FieldLabel label={label} />
      {long ? (
        <TextArea className={classes(styles.input, styles.area)} placeholder={placeholder} />
      ) : (
        <div className={unit ? styles.boxed : undefined}>
          <Input className={styles.input ?? ''} placeholder={placeholder} />
          {unit && <span className={styles.unit}>{unit}</span>}
        </div>
      )}
      <FieldFoot help={help} error={error} />
    </Primitive>
  );
}
