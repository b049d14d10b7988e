import { Check, Minus } from 'lucide-react';
import { Checkbox, type CheckboxProps } from 'react-aria-components';
import styles from './field.module.css';

export function CheckBox({
  label,
  ...rest
}: Omit<CheckboxProps, 'className' | 'children'> & { label: string }) {
  return (
    <Checkbox {...rest} className={styles.check ?? ''}>
      {({ isSelected, isIndeterminate }) => (
        <>
          <span className={styles.box}>
            {isIndeterminate && <Minus size={14} strokeWidth={3} aria-hidden />}
            {isSelected && !isIndeterminate && <Check size={14} strokeWidth={3} aria-hidden />}
          </span>
          {label && <span>{label}</span>}
        </>
      )}
    </Checkbox>
  );
}
