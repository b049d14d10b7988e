import { useState } from 'react';
import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './floor.module.css';

/** What usually stops work at a machine (common practice, no source). */
const REASONS = [
  'Waiting for sheets or blanks',
  'Waiting for a second person',
  'Machine or tooling trouble',
  'Question about the drawing',
  'Rush work elsewhere',
  'End of shift',
] as const;

interface Props {
  isOpen: boolean;
  onPause: (reason: string) => void;
  onClose: () => void;
}

/** Why work stops: a press on a usual reason, or words of one's own. */
export function PauseDialog({ isOpen, onPause, onClose }: Props) {
  const [own, setOwn] = useState('');
  const pause = (reason: string) => {
    setOwn('');
    onClose();
    onPause(reason);
  };
  return (
    <Dialog
      title="Why does work stop?"
      isOpen={isOpen}
      onClose={onClose}
      actions={
        <>
          <Button onPress={onClose}>Keep working</Button>
          <Button look="primary" isDisabled={own.trim() === ''} onPress={() => pause(own)}>
            Pause
          </Button>
        </>
      }
    >
      <div className={styles.reasons}>
        {REASONS.map((reason) => (
          <Button key={reason} onPress={() => pause(reason)}>
            {reason}
          </Button>
        ))}
      </div>
      <TextField label="Another reason" value={own} onChange={setOwn} maxLength={200} />
    </Dialog>
  );
}
