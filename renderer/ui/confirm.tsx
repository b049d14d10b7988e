import { Button } from './button.tsx';
import { Dialog } from './dialog.tsx';

interface Props {
  title: string;
  /** What will happen and what is kept, in a sentence or two. */
  message: string;
  /** The verb on the button, e.g. "Remove order". */
  act: string;
  isOpen: boolean;
  onConfirm: () => void;
  onClose: () => void;
}

/** Asks before something that is hard to take back. */
export function Confirm({ title, message, act, isOpen, onConfirm, onClose }: Props) {
  const confirm = () => {
    onClose();
    onConfirm();
  };
  return (
    <Dialog
      title={title}
      isOpen={isOpen}
      onClose={onClose}
      actions={
        <>
          <Button onPress={onClose} autoFocus>
            Keep
          </Button>
          <Button look="danger" onPress={confirm}>
            {act}
          </Button>
        </>
      }
    >
      <p>{message}</p>
    </Dialog>
  );
}
