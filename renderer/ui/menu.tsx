import type { LucideIcon } from 'lucide-react';
import type { ReactNode } from 'react';
import {
  Menu as PrimitiveMenu,
  MenuItem as PrimitiveItem,
  MenuTrigger,
  Popover,
} from 'react-aria-components';
import styles from './popover.module.css';

export interface MenuEntry {
  id: string;
  label: string;
  icon?: LucideIcon;
  /** A word at the end of the row: keys, or why it is out of reach. */
  end?: string | undefined;
  disabled?: boolean;
  act: () => void;
}

/** A button (first child) that opens a list of actions. */
export function Menu({
  label,
  entries,
  children,
}: {
  label: string;
  entries: readonly MenuEntry[];
  children: ReactNode;
}) {
  return (
    <MenuTrigger>
      {children}
      <Popover className={styles.popover}>
        <PrimitiveMenu aria-label={label} className={styles.list}>
          {entries.map(({ id, label: text, icon: Icon, end, disabled, act }) => (
            <PrimitiveItem
              key={id}
              id={id}
              textValue={text}
              isDisabled={disabled ?? false}
              onAction={act}
              className={styles.item ?? ''}
            >
              {Icon && <Icon size={16} aria-hidden />}
              <span>{text}</span>
              {end && <span className={styles.end}>{end}</span>}
            </PrimitiveItem>
          ))}
        </PrimitiveMenu>
      </Popover>
    </MenuTrigger>
  );
}
