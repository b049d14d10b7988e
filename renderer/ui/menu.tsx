import type { LucideIcon } from 'lucide-react';
import { useRef, type ReactNode } from 'react';
import {
  Menu as PrimitiveMenu,
  MenuItem as PrimitiveItem,
  MenuTrigger,
  Popover,
  type MenuProps,
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

interface Words {
  label: string;
  entries: readonly MenuEntry[];
}

const Entries = ({ label, entries, ...own }: Words & Pick<MenuProps<object>, 'autoFocus' | 'onClose'>) => (
  <PrimitiveMenu aria-label={label} className={styles.list} {...own}>
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
);

/** A button (first child) that opens a list of actions. */
export const Menu = ({ label, entries, children }: Words & { children: ReactNode }) => (
  <MenuTrigger>
    {children}
    <Popover className={styles.popover}>
      <Entries label={label} entries={entries} />
    </Popover>
  </MenuTrigger>
);

/** An open list of actions at a point of the window, in its pixels. */
export function MenuAt({
  at,
  onClose,
  ...words
}: Words & { at: { x: number; y: number }; onClose: () => void }) {
  const anchor = useRef<HTMLSpanElement>(null);
  return (
    <>
      <span ref={anchor} className={styles.anchor} style={{ left: at.x, top: at.y }} />
      <Popover
        triggerRef={anchor}
        isOpen
        onOpenChange={(open) => !open && onClose()}
        placement="bottom start"
        className={styles.popover}
      >
        <Entries {...words} autoFocus="first" onClose={onClose} />
      </Popover>
    </>
  );
}
