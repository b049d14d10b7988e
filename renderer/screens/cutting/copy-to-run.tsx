import { useState } from 'react';
import type { CutStep } from '../../../core/cutting/step.ts';
import { isTaken, type RunCut } from '../../../core/planning/cut-run.ts';
import { metalName } from '../../../core/shop/metal-name.ts';
import type { ReadyCuts } from '../../queries/cuts.ts';
import { Button } from '../../ui/button.tsx';
import { Combo, Select } from '../../ui/choice.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import styles from './cutting.module.css';
import { stacksIn, type StepEdit } from './use-steps.ts';

interface Props {
  query: ReadyCuts;
  cut: RunCut;
  /** Put at the end of the other run's list; null: the whole list, sheets and steps, takes that list's place. */
  step: CutStep | null;
  edit: StepEdit;
  onClose: () => void;
}

/** Copy a step, or the whole list, to another run: one step of the history. */
export function CopyToRun({ query: { shop, cuts }, cut, step, edit, onClose }: Props) {
  const others = cuts.filter((one) => one.plan.ok && !isTaken(one) && one.run.id !== cut.run.id);
  const [runId, setRunId] = useState<string | null>(null);
  const [chosen, setStack] = useState<string | null>(null);
  const other = others.find(({ run }) => run.id === runId);
  const stacks = other && step ? stacksIn(other) : [];
  const stack = stacks.find((id) => id === chosen) ?? stacks[0] ?? null;
  const isReady = runId !== null && (step === null || stack !== null);
  const copy = () => {
    if (runId === null) return;
    if (step === null) edit.copyListTo(runId);
    else if (stack !== null) edit.copyTo(step, runId, stack);
    onClose();
  };
  return (
    <Dialog
      title={
        step ? `Copy step ${step.number} to another run` : `Copy the list of run ${cut.run.id} to another run`
      }
      isOpen
      onClose={onClose}
      actions={
        <Button look="primary" isDisabled={!isReady} onPress={copy}>
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
          help={
            step
              ? 'It is put last; that list is then checked against what its run asks.'
              : 'It takes the place of that run’s list, on sheets of the same size, and is then checked against what that run asks.'
          }
        />
        {step && (
          <Select
            label="Feed from stack"
            options={stacks.map((id) => ({ id, name: id }))}
            value={stack}
            onChange={setStack}
            isDisabled={stack === null}
          />
        )}
      </div>
    </Dialog>
  );
}
