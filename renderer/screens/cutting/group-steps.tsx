import { useState } from 'react';
import { groupSteps } from '../../../core/edit/cutting-steps.ts';
import type { RunCut } from '../../../core/planning/cut-run.ts';
import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './cutting.module.css';
import { stepsOf, type StepEdit } from './use-steps.ts';

/** Steps that follow one another put under a heading, which stands above them on the screen and on paper. */
export function GroupSteps({ cut, edit, onClose }: { cut: RunCut; edit: StepEdit; onClose: () => void }) {
  const last = stepsOf(cut).length;
  const [from, setFrom] = useState(1);
  const [to, setTo] = useState(last);
  const [heading, setHeading] = useState('');
  const isStep = (number: number): boolean => Number.isInteger(number) && number >= 1 && number <= last;
  const wrong = (number: number) => (isStep(number) ? undefined : `a step from 1 to ${last}`);
  const save = () => {
    const label =
      heading.trim() === ''
        ? `Take steps ${from} to ${to} of run ${cut.run.id} out of their group`
        : `Group steps ${from} to ${to} of run ${cut.run.id}`;
    edit.put(groupSteps(stepsOf(cut), from, to, heading), label);
    onClose();
  };
  return (
    <Dialog
      title="Group steps"
      isOpen
      onClose={onClose}
      actions={
        <Button look="primary" isDisabled={!isStep(from) || !isStep(to) || from > to} onPress={save}>
          Save
        </Button>
      }
    >
      <div className={styles.form}>
        <NumberField label="From step" whole value={from} onChange={setFrom} error={wrong(from)} />
        <NumberField
          label="To step"
          whole
          value={to}
          onChange={setTo}
          error={wrong(to) ?? (from > to ? 'not before the first' : undefined)}
        />
        <TextField
          label="Name of the group"
          value={heading}
          onChange={setHeading}
          maxLength={60}
          help="left empty, the steps are in no group any more"
        />
      </div>
    </Dialog>
  );
}
