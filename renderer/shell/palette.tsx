import { Search } from 'lucide-react';
import { useState } from 'react';
import {
  Autocomplete,
  Dialog,
  Input,
  Menu,
  MenuItem,
  Modal,
  ModalOverlay,
  TextField,
  useFilter,
} from 'react-aria-components';
import { classes } from '../ui/classes.ts';
import { KeyHint } from '../ui/key-hint.tsx';
import popover from '../ui/popover.module.css';
import type { Action } from './actions.ts';
import { useFound } from './use-found.ts';
import styles from './palette.module.css';

function ActionList({ actions, close }: { actions: readonly Action[]; close: () => void }) {
  return (
    <Menu
      aria-label="What was found"
      className={classes(popover.list, styles.list)}
      disabledKeys={actions.filter((action) => action.disabled).map((action) => action.id)}
      renderEmptyState={() => (
        <p className={popover.nothing}>No order, line, part, customer or action by that name.</p>
      )}
    >
      {actions.map(({ id, label, detail, icon: Icon, keys, act }) => (
        <MenuItem
          key={id}
          id={id}
          textValue={label}
          className={popover.item ?? ''}
          onAction={() => {
            close();
            act();
          }}
        >
          <Icon size={16} aria-hidden />
          <span>
            {label}
            {detail && <span className={styles.detail}>{detail}</span>}
          </span>
          {keys && (
            <span className={popover.end}>
              <KeyHint keys={keys} />
            </span>
          )}
        </MenuItem>
      ))}
    </Menu>
  );
}

/** Work orders, lines, parts, customers and every action of the app, found by typing. */
export function Palette({
  actions,
  isOpen,
  onClose,
}: {
  actions: readonly Action[];
  isOpen: boolean;
  onClose: () => void;
}) {
  const { contains } = useFilter({ sensitivity: 'base' });
  const [typed, setTyped] = useState('');
  const found = useFound(isOpen ? typed : '');
  const close = () => {
    setTyped('');
    onClose();
  };
  return (
    <ModalOverlay
      isOpen={isOpen}
      onOpenChange={(open) => !open && close()}
      isDismissable
      className={styles.veil ?? ''}
    >
      <Modal className={styles.modal ?? ''}>
        <Dialog aria-label="Find" className={styles.dialog ?? ''}>
          <Autocomplete inputValue={typed} onInputChange={setTyped}>
            <TextField aria-label="Find" autoFocus className={styles.field ?? ''}>
              <Search size={16} aria-hidden />
              <Input
                placeholder="Order, line, part, customer, or what to do"
                className={styles.input ?? ''}
              />
            </TextField>
            <ActionList
              actions={[...actions.filter(({ label }) => contains(label, typed)), ...found]}
              close={close}
            />
          </Autocomplete>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
