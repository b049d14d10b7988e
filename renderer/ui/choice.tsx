import { Check, ChevronDown } from 'lucide-react';
import { useContext, type KeyboardEvent, type ReactNode } from 'react';
import {
  Button,
  ListBox,
  ListBoxItem,
  Popover,
  Select as Primitive,
  SelectValue,
  ComboBox,
  ComboBoxStateContext,
  Input,
} from 'react-aria-components';
import { classes } from './classes.ts';
import { FieldFoot, FieldLabel, type FieldWords } from './field-parts.tsx';
import styles from './field.module.css';
import popover from './popover.module.css';

export interface Option {
  id: string;
  name: string;
  /** A sheet colour to show before the name, "#2f5d3a". */
  swatch?: string | undefined;
}

interface Props extends FieldWords {
  options: readonly Option[];
  value: string | null;
  onChange: (id: string) => void;
  placeholder?: string;
  isDisabled?: boolean;
}

interface SelectProps extends Props {
  /** The label is only told, where a table's headings say it already. */
  labelHidden?: boolean;
}

const item = (option: Option) => (
  <ListBoxItem key={option.id} id={option.id} textValue={option.name} className={popover.item ?? ''}>
    {({ isSelected }) => (
      <>
        {option.swatch && <Swatch hex={option.swatch} />}
        <span>{option.name}</span>
        {isSelected && <Check size={14} className={popover.end} aria-hidden />}
      </>
    )}
  </ListBoxItem>
);

/** A square of sheet colour; always beside its name. */
export const Swatch = ({ hex }: { hex: string }) => (
  <svg width="14" height="14" aria-hidden>
    <rect x="0.5" y="0.5" width="13" height="13" fill={hex} stroke="var(--rule-strong)" />
  </svg>
);

/** One of a few. */
export function Select({
  label,
  labelHidden = false,
  help,
  error,
  options,
  value,
  onChange,
  placeholder,
  isDisabled = false,
}: SelectProps) {
  return (
    <Primitive
      {...(labelHidden ? { 'aria-label': label } : {})}
      value={value}
      onChange={(key) => key !== null && onChange(String(key))}
      isInvalid={error !== undefined}
      isDisabled={isDisabled}
      placeholder={placeholder ?? 'Choose…'}
      className={styles.field ?? ''}
    >
      {!labelHidden && <FieldLabel label={label} />}
      <Button className={classes(styles.input, styles.select)}>
        <SelectValue className={styles.value ?? ''}>
          {({ selectedText, defaultChildren }) => selectedText || defaultChildren}
        </SelectValue>
        <ChevronDown size={16} aria-hidden />
      </Button>
      <FieldFoot help={help} error={error} />
      <Popover className={popover.popover ?? ''}>
        <ListBox className={popover.list ?? ''}>{options.map(item)}</ListBox>
      </Popover>
    </Primitive>
  );
}

/** Enter chooses what is left when the typed words leave one. */
function EnterTakesTheOne({ children }: { children: ReactNode }) {
  const state = useContext(ComboBoxStateContext);
  const press = ({ key }: KeyboardEvent) => {
    if (key !== 'Enter' || !state?.isOpen || state.selectionManager.focusedKey !== null) return;
    if (state.collection.size === 1) state.selectionManager.setFocusedKey(state.collection.getFirstKey());
  };
  return (
    <div className={styles.boxed} onKeyDownCapture={press}>
      {children}
    </div>
  );
}

/** One of many, found by typing. */
export function Combo({
  label,
  help,
  error,
  options,
  value,
  onChange,
  placeholder,
  isDisabled = false,
}: Props) {
  return (
    <ComboBox
      value={value}
      onChange={(key) => key !== null && onChange(String(key))}
      isInvalid={error !== undefined}
      isDisabled={isDisabled}
      menuTrigger="focus"
      className={styles.field ?? ''}
    >
      <FieldLabel label={label} />
      <EnterTakesTheOne>
        <Input className={styles.input ?? ''} placeholder={placeholder ?? 'Type to find…'} />
        <Button className={styles.opener ?? ''}>
          <ChevronDown size={16} aria-hidden />
        </Button>
      </EnterTakesTheOne>
      <FieldFoot help={help} error={error} />
      <Popover className={popover.popover ?? ''}>
        <ListBox
          className={popover.list ?? ''}
          renderEmptyState={() => <p className={popover.nothing}>Nothing by that name.</p>}
        >
          {options.map(item)}
        </ListBox>
      </Popover>
    </ComboBox>
  );
}
