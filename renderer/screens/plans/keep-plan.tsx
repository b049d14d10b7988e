import { Bookmark } from 'lucide-react';
import { useState } from 'react';
import { MOST_OF_A_NAME } from '../../../core/edit/command.ts';
import { useKeepPlan } from '../../queries/plans.ts';
import { Button } from '../../ui/button.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { toast, toastError } from '../../ui/toast.tsx';
import styles from './plans.module.css';

/** Keeps the plan on the board under a name. */
export function KeepPlan() {
  const [name, setName] = useState('');
  const [missing, setMissing] = useState(false);
  const { mutate, isPending } = useKeepPlan();
  // The button stays alive: a dead one would lose the focus, and with it the dialog's keys.
  const keep = () => {
    const given = name.trim();
    setMissing(given === '');
    if (given === '' || isPending) return;
    mutate(given, {
      onSuccess: () => {
        toast({ text: `The plan on the board is kept as “${given}”.` });
        setName('');
      },
      onError: toastError,
    });
  };
  return (
    <form
      className={styles.keep}
      onSubmit={(event) => {
        event.preventDefault();
        keep();
      }}
    >
      <TextField
        label="Name"
        value={name}
        onChange={setName}
        maxLength={MOST_OF_A_NAME}
        help="queues and pins as they are on the board"
        error={missing ? 'Give the plan a name first.' : undefined}
      />
      <Button type="submit" icon={Bookmark}>
        Keep this plan
      </Button>
    </form>
  );
}
