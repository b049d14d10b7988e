import { useState } from 'react';
import { isTaken, type RunCut } from '../../../core/planning/cut-run.ts';
import { metalName } from '../../../core/shop/metal-name.ts';
import { Button } from '../../ui/button.tsx';
import { Combo } from '../../ui/choice.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import type { ReadyCuts } from '../../queries/cuts.ts';
import styles from './cutting.module.css';
import type { StepEdit } from './use-steps.ts';

/** The whole list, sheets and steps, in place of another run's: one step of the history. */
export function CopyList({
  query: { shop, cuts },
  cut,
  edit,
  onClose,
}: {
  query: ReadyCuts;
  cut: RunCut;
  edit: StepEdit;
  onClose: () => void;
}) {
  const others = cuts.filter((one) => one.plan.ok && !isTaken(one) && one.run.id !== cut.run.id);
  const [runId, setRunId] = useState<string | null>(null);
  const copy = () => {
    if (runId === null) return;
    edit.copyListTo(runId);
    onClose();
  };
  return (
    <Dialog
      title={`Copy the list of run ${cut.run.id} to another run`}
      isOpen
      onClose={onClose}
      actions={
        <Button look="primary" isDisabled={runId === null} onPress={copy}>
          Copy
        </Button>
      }
    >
      <div className={styles.form}>
        <Combo
          label="Run"
          options={others.map(({ run }) => ({ id: run.id, name: `${run.id}, ${metalName(shop, run)}` }))}
          value={runId}
          onChange={setRunId}
          help="It takes the place of that run’s list, on sheets of the same size, and is then checked against what that run asks."
        />
      </div>
    </Dialog>
  );
}
