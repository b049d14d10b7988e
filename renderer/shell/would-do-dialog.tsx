import { useState, type ReactNode } from 'react';
import type { Command } from '../../core/edit/command.ts';
import { useAct } from '../form/use-act.ts';
import { useWouldDo } from '../queries/would-do.ts';
import { Button } from '../ui/button.tsx';
import { Dialog } from '../ui/dialog.tsx';
import { toastError } from '../ui/toast.tsx';
import { usePlanJob } from './use-plan-job.ts';

interface Props {
  title: string;
  command: Command;
  /** The verb on the button, "Accept". */
  act: string;
  onClose: () => void;
  /** Room for a table. */
  wide?: boolean;
  /** What changes, figure by figure. */
  children: ReactNode;
}

/** New times before they are taken: what they change, what they do to the plan as it stands, and planning again with them. */
export function WouldDoDialog({ title, command, act, onClose, wide = false, children }: Props) {
  // What is asked about stays what was opened, whatever changes behind the dialog meanwhile.
  const [asked] = useState(command);
  const would = useWouldDo(asked);
  const carryOut = useAct();
  const plan = usePlanJob();
  const take = async (again: boolean) => {
    onClose();
    await carryOut(asked);
    if (again) plan.start();
  };
  return (
    <Dialog
      title={title}
      isOpen
      wide={wide}
      onClose={onClose}
      actions={
        <>
          <Button onPress={onClose}>Cancel</Button>
          <Button onPress={() => void take(true).catch(toastError)} isDisabled={plan.running}>
            {`${act} and plan again`}
          </Button>
          <Button look="primary" autoFocus onPress={() => void take(false).catch(toastError)}>
            {act}
          </Button>
        </>
      }
    >
      <p role="status">
        <strong>{would?.words}</strong>
      </p>
      {children}
      <p>One step, which undo takes back.</p>
    </Dialog>
  );
}
