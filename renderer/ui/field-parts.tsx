import { FieldError, Label, Text } from 'react-aria-components';
import styles from './field.module.css';

export interface FieldWords {
  label: string;
  /** A line of help under the field, e.g. the limits. */
  help?: string | undefined;
  /** What is wrong with the value and what to do; shown and announced. */
  error?: string | undefined;
}

export const FieldLabel = ({ label }: { label: string }) => (
  <Label className={styles.label ?? ''}>{label}</Label>
);

/** Help, or the error in its place. Goes inside a react-aria field. */
export const FieldFoot = ({ help, error }: Omit<FieldWords, 'label'>) =>
  error ? (
    <FieldError className={styles.error ?? ''}>
      <span>{error}</span>
    </FieldError>
  ) : (
    help && (
      <Text slot="description" className={styles.help ?? ''}>
        {help}
      </Text>
    )
  );
