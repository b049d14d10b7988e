import { X } from 'lucide-react';
import { useState, type ReactNode } from 'react';
import { Dialog as Primitive, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { Button } from './button.tsx';
import { classes } from './classes.ts';
import styles from './dialog.module.css';
import { IconButton } from './icon-button.tsx';
import { UnreadTexts } from './unread-texts.ts';

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

/**
 * A window over the page; Escape and the cross close it, focus goes back where it was. Where a text in it does not read it
 * asks first, since no draft holds such a text.
 */
export function Dialog({ title, isOpen, onClose, wide = false, actions, children }: Props) {
  const [unread] = useState(() => new Map<string, string>());
  const [losing, setLosing] = useState<string | null>(null);
  const leave = () => {
    const [text] = unread.values();
    if (text === undefined) onClose();
    else setLosing(text);
  };
  const lose = () => {
    setLosing(null);
    onClose();
  };
  return (
    <ModalOverlay
      isOpen={isOpen}
      onOpenChange={(open) => !open && leave()}
      isDismissable
      className={styles.veil ?? ''}
    >
      <Modal className={classes(styles.modal, wide && styles.wide)}>
        <Primitive className={styles.dialog ?? ''}>
          <header className={styles.head}>
            <Heading slot="title" className={styles.title ?? ''}>
              {title}
            </Heading>
            <IconButton label="Close" icon={X} small onPress={leave} />
          </header>
          <UnreadTexts value={unread}>
            <div className={styles.body}>{children}</div>
          </UnreadTexts>
          {losing === null ? (
            actions && <footer className={styles.foot}>{actions}</footer>
          ) : (
            <Losing text={losing} onStay={() => setLosing(null)} onLose={lose} />
          )}
        </Primitive>
      </Modal>
    </ModalOverlay>
  );
}

const Losing = ({ text, onStay, onLose }: { text: string; onStay: () => void; onLose: () => void }) => (
  <footer className={styles.foot} role="alert">
    <p>{`“${text.trim()}” could not be read and is kept nowhere: closed, it is lost. Correct it, or close without it.`}</p>
    <Button onPress={onStay} autoFocus>
      Go on typing
    </Button>
    <Button look="danger" onPress={onLose}>
      Close without it
    </Button>
  </footer>
);
