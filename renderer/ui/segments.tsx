import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import styles from './segments.module.css';

interface Props<T extends string> {
  label: string;
  choices: readonly (readonly [T, string])[];
  value: T;
  onChange: (value: T) => void;
}

/** One of a few, all in sight. */
export const Segments = <T extends string>({ label, choices, value, onChange }: Props<T>) => (
  <ToggleButtonGroup
    aria-label={label}
    className={styles.segments ?? ''}
    selectionMode="single"
    disallowEmptySelection
    selectedKeys={[value]}
    onSelectionChange={(keys) => {
      const chosen = choices.find(([id]) => keys.has(id));
      if (chosen) onChange(chosen[0]);
    }}
  >
    {choices.map(([id, text]) => (
      <ToggleButton key={id} id={id} className={styles.segment ?? ''}>
        {text}
      </ToggleButton>
    ))}
  </ToggleButtonGroup>
);
