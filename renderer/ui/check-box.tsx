import { Check } from 'lucide-react';
import { Checkbox, type CheckboxProps } from 'react-aria-components';
import styles from './field.module.css';

export function CheckBox({
  label,
  ...rest
}: Omit<CheckboxProps, 'className' | 'children'> & { label: string }) {
  return (
    <Checkbox {...rest} className={styles.check ?? ''}>
      {({ isSelected }) => (
        <>
          <span className={styles.box}>{isSelected && <Check size={14} strokeWidth={3} aria-hidden />}</span>
          <span>{label}</span>
        </>
      )}
    </Checkbox>
  );
}
