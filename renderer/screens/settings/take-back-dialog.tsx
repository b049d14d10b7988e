import { useState } from 'react';
import { useTakeBack } from '../../queries/hooks.ts';
import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { toast } from '../../ui/toast.tsx';
import styles from './settings.module.css';

interface Props {
  fact: { readonly id: number; readonly label: string };
  onClose: () => void;
}

/** Takes back what was reported, with the reason; it stays in the log beside that. */
export function TakeBackDialog({ fact, onClose }: Props) {
  const { mutate, isPending, error } = useTakeBack();
  const [reason, setReason] = useState('');
  const takeBack = () =>
    mutate(
      { factId: fact.id, reason },
      {
        onSuccess: ({ label }) => {
          onClose();
          toast({ text: `${label}: done.` });
        },
      },
    );
  return (
    <Dialog
      title="Take back a report"
      isOpen
      onClose={onClose}
      actions={
        <>
          <Button onPress={onClose}>Cancel</Button>
          <Button look="primary" isDisabled={reason.trim() === '' || isPending} onPress={takeBack}>
            Take it back
          </Button>
        </>
      }
    >
      <div className={styles.takeBack}>
        <p>
          <b>{fact.label}</b>
        </p>
        <p>
          What it changed becomes as it was before. The report stays in the log, beside this and the reason.
        </p>
        <TextField
          label="Reason"
          value={reason}
          onChange={setReason}
          maxLength={500}
          error={error?.message}
          help="why it did not happen so; needed"
        />
      </div>
    </Dialog>
  );
}
