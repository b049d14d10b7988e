import { ComboBox, Input, ListBox, ListBoxItem, Popover } from 'react-aria-components';
import { FieldFoot, FieldLabel, type FieldWords } from './field-parts.tsx';
import styles from './field.module.css';
import popover from './popover.module.css';

interface Props extends FieldWords {
  value: string;
  onChange: (value: string) => void;
  /** What is offered while typing, as far as it has the text in it; anything else may be typed as well. */
  names: readonly string[];
}

/** A text field that offers what was written before. Arrow keys choose, Escape puts the list away. */
export const Suggest = ({ label, help, error, value, onChange, names }: Props) => (
  <ComboBox
    allowsCustomValue
    inputValue={value}
    onInputChange={onChange}
    // The name that stands there, if it is one of them: what is typed beyond it is then never set back to it.
    value={names.includes(value) ? value : null}
    onChange={(name) => name !== null && onChange(String(name))}
    menuTrigger="input"
    isInvalid={error !== undefined}
    className={styles.field ?? ''}
  >
    <FieldLabel label={label} />
    <Input className={styles.input ?? ''} />
    <FieldFoot help={help} error={error} />
    <Popover className={popover.popover ?? ''}>
      <ListBox className={popover.list ?? ''}>
        {names.map((name) => (
          <ListBoxItem key={name} id={name} textValue={name} className={popover.item ?? ''}>
            {name}
          </ListBoxItem>
        ))}
      </ListBox>
    </Popover>
  </ComboBox>
);
