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
  const { mutate, isPending } = useKeepPlan();
  const keep = () =>
    mutate(name.trim(), {
      onSuccess: () => {
        toast({ text: `The plan on the board is kept as “${name.trim()}”.` });
        setName('');
      },
      onError: toastError,
    });
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
      />
      <Button type="submit" icon={Bookmark} isDisabled={isPending || name.trim() === ''}>
        Keep this plan
      </Button>
    </form>
  );
}
