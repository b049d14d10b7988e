import { ChevronDown } from 'lucide-react';
import { useRef, useState } from 'react';
import { Button, ComboBox, Input, Label, ListBox, ListBoxItem, Popover } from 'react-aria-components';
import { useNamesUsed } from '../../queries/names.ts';
import field from '../../ui/field.module.css';
import popover from '../../ui/popover.module.css';
import styles from './floor.module.css';
import { useFloorKeys } from './use-floor-keys.ts';

const storedAs = (machineId: string): string => `foldweek.floor.name.${machineId}`;

/** Who is at a machine, remembered on this screen only; empty while nobody said, or while the shop does not ask. */
export function useNameAt(machineId: string, asked: boolean): readonly [string, (name: string) => void] {
  const [name, setName] = useState(() => localStorage.getItem(storedAs(machineId)) ?? '');
  const write = (next: string) => {
    setName(next);
    if (next.trim() === '') localStorage.removeItem(storedAs(machineId));
    else localStorage.setItem(storedAs(machineId), next.trim());
  };
  return [asked ? name.trim() : '', write];
}

interface Props {
  name: string;
  onChange: (name: string) => void;
}

/** A name, typed or one used before; it goes with what is started and done, and is never needed. */
export function NameField({ name, onChange }: Props) {
  const [typed, type] = useState(name);
  const input = useRef<HTMLInputElement>(null);
  const names = useNamesUsed();
  useFloorKeys({ N: () => input.current?.focus() });
  const change = (next: string) => {
    // A semicolon parts names in files.
    const clean = next.replaceAll(';', '');
    type(clean);
    onChange(clean);
  };
  return (
    <ComboBox
      allowsCustomValue
      inputValue={typed}
      onInputChange={change}
      defaultItems={names.map((id) => ({ id }))}
      className={styles.name ?? ''}
    >
      <Label className={field.label ?? ''}>Who is at the machine</Label>
      <div className={field.boxed}>
        <Input ref={input} className={field.input ?? ''} placeholder="may stay empty (N)" maxLength={60} />
        <Button className={field.opener ?? ''} aria-label="Names used before">
          <ChevronDown size={16} aria-hidden />
        </Button>
      </div>
      <Popover className={popover.popover ?? ''}>
        <ListBox className={popover.list ?? ''}>
          {({ id }: { id: string }) => (
            <ListBoxItem id={id} textValue={id} className={popover.item ?? ''}>
              {id}
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </ComboBox>
  );
}
