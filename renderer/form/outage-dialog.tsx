import type { ReactNode } from 'react';
import { Button } from '../ui/button.tsx';
import { Dialog } from '../ui/dialog.tsx';
import { SentenceError } from '../ui/states.tsx';
import type { Form } from './use-form.ts';

interface Props {
  title: string;
  form: Pick<Form<object>, 'errors' | 'changed' | 'save'>;
  onClose: () => void;
  children: ReactNode;
}

/** Hours in which a machine or people are out, saved at once and apart from the form around them. */
export function OutageDialog({ title, form: { errors, changed, save }, onClose, children }: Props) {
  const saveAndClose = async () => {
    if (await save()) onClose();
  };
  return (
    <Dialog
      title={title}
      isOpen
      onClose={onClose}
      actions={
        <>
          <Button onPress={onClose}>Close</Button>
          <Button look="primary" onPress={() => void saveAndClose()} isDisabled={!changed}>
            Save
          </Button>
        </>
      }
    >
      {errors[''] && <SentenceError message={errors['']} />}
      {children}
    </Dialog>
  );
}
