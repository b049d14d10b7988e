import { useState } from 'react';
import type { CutStep } from '../../../core/cutting/step.ts';
import type { RunCut } from '../../../core/report/cutting.ts';
import { metalName } from '../../../core/report/cutting-words.ts';
import { Button } from '../../ui/button.tsx';
import { Combo } from '../../ui/choice.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import type { Ready } from './cutting-screen.tsx';
import type { StepEdit } from './use-steps.ts';

interface Props {
  query: Ready;
  cut: RunCut;
  step: CutStep;
  edit: StepEdit;
  onClose: () => void;
}

/** Put a step at the end of another run's list, fed from its first stack. */
export function CopyStep({ query: { shop, cuts }, cut, step, edit, onClose }: Props) {
  const [runId, setRunId] = useState<string | null>(null);
  const others = cuts.filter((one) => one.plan.ok && one.run.id !== cut.run.id);
  const copy = () => {
    if (runId === null) return;
    edit.copyTo(step, runId);
    onClose();
  };
  return (
    <Dialog
      title={`Copy step ${step.number} to another run`}
      isOpen
      onClose={onClose}
      actions={
        <Button look="primary" isDisabled={runId === null} onPress={copy}>
          Copy
        </Button>
      }
    >
      <Combo
        label="Run"
        options={others.map(({ run }) => ({ id: run.id, name: `${run.id}, ${metalName(shop, run)}` }))}
        value={runId}
        onChange={setRunId}
        help="It is put last; that list is then checked against what its run asks."
      />
    </Dialog>
  );
}
