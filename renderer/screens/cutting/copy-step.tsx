import { useState } from 'react';
import type { CutStep } from '../../../core/cutting/step.ts';
import { isTaken, type RunCut } from '../../../core/planning/cut-run.ts';
import { metalName } from '../../../core/shop/metal-name.ts';
import { Button } from '../../ui/button.tsx';
import { Combo, Select } from '../../ui/choice.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import styles from './cutting.module.css';
import type { ReadyCuts } from '../../queries/cuts.ts';
import { stacksIn, type StepEdit } from './use-steps.ts';

interface Props {
  query: ReadyCuts;
  cut: RunCut;
  step: CutStep;
  edit: StepEdit;
  onClose: () => void;
}

/** Put a step at the end of another run's list. */
export function CopyStep({ query: { shop, cuts }, cut, step, edit, onClose }: Props) {
  const others = cuts.filter((one) => one.plan.ok && !isTaken(one) && one.run.id !== cut.run.id);
  const [runId, setRunId] = useState<string | null>(null);
  const [chosen, setStack] = useState<string | null>(null);
  const other = others.find(({ run }) => run.id === runId);
  const stacks = other ? stacksIn(other) : [];
  const stack = stacks.find((id) => id === chosen) ?? stacks[0] ?? null;
  const copy = () => {
    if (runId === null || stack === null) return;
    edit.copyTo(step, runId, stack);
    onClose();
  };
  return (
    <Dialog
      title={`Copy step ${step.number} to another run`}
      isOpen
      onClose={onClose}
      actions={
        <Button look="primary" isDisabled={stack === null} onPress={copy}>
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
          help="It is put last; that list is then checked against what its run asks."
        />
        <Select
          label="Feed from stack"
          options={stacks.map((id) => ({ id, name: id }))}
          value={stack}
          onChange={setStack}
          isDisabled={stack === null}
        />
      </div>
    </Dialog>
  );
}
