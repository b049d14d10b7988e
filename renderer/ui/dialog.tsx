import { X } from 'lucide-react';
import type { ReactNode } from 'react';
import { Dialog as Primitive, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { classes } from './classes.ts';
import styles from './dialog.module.css';
import { IconButton } from './icon-button.tsx';

interface Props {
  title: string;
  isOpen: boolean;
  onClose: () => void;
  /** Room for a form with a table beside it. */
  wide?: boolean;
  /** Buttons at the foot, the main one last. */
  actions?: ReactNode;
  children: ReactNode;
}

/** A window over the page; Escape and the cross close it, focus goes back where it was. */
export function Dialog({ title, isOpen, onClose, wide = false, actions, children }: Props) {
  return (
    <ModalOverlay
      isOpen={isOpen}
      onOpenChange={(open) => !open && onClose()}
      isDismissable
      className={styles.veil ?? ''}
    >
      <Modal className={classes(styles.modal, wide && styles.wide)}>
        <Primitive className={styles.dialog ?? ''}>
          <header className={styles.head}>
            <Heading slot="title" className={styles.title ?? ''}>
              {title}
            </Heading>
            <IconButton label="Close" icon={X} small onPress={onClose} />
          </header>
          <div className={styles.body}>{children}</div>
          {actions && <footer className={styles.foot}>{actions}</footer>}
        </Primitive>
      </Modal>
    </ModalOverlay>
  );
}
