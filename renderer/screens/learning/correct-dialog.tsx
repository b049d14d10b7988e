import { useState } from 'react';
import type { Command } from '../../../core/edit/command.ts';
import { operationName } from '../../../core/edit/plan-commands.ts';
import type { OperationRecord } from '../../../core/shop/plan.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatClock } from '../../../core/time/wall.ts';
import { instant, type Instant } from '../../../core/units/brand.ts';
import { useAct } from '../../form/use-act.ts';
import { usePresent } from '../../queries/hooks.ts';
import { Button } from '../../ui/button.tsx';
import { Select } from '../../ui/choice.tsx';
import { DateTimeField } from '../../ui/date-time-field.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './learning.module.css';

type Patch = Extract<Command, { do: 'floor.correct' }>['patch'];

interface Props {
  shop: Shop;
  record: OperationRecord;
  onClose: () => void;
}

/** Puts right what was recorded of an operation, with the reason; what was recorded first stays in the floor's log. */
export function CorrectDialog({ shop, record, onClose }: Props) {
  const act = useAct();
  const present = usePresent();
  const [patch, setPatch] = useState<Patch>({});
  const [reason, setReason] = useState('');
  const [refused, setRefused] = useState<string | undefined>(undefined);
  const { good, scrapped } = { ...record, ...patch };
  const set = (own: Patch) => {
    setRefused(undefined);
    setPatch({ ...patch, ...own });
  };
  const save = () =>
    act({ do: 'floor.correct', operation: record.id, at: present(), patch, reason }).then(
      onClose,
      (error: Error) => setRefused(error.message),
    );
  const ready = reason.trim() !== '' && Object.keys(patch).length > 0 && isCount(good, scrapped);
  return (
    <Dialog
      title={`Correct ${operationName(record.id)}`}
      isOpen
      onClose={onClose}
      actions={
        <>
          <Button onPress={onClose}>Cancel</Button>
          <Button look="primary" isDisabled={!ready} onPress={() => void save()}>
            Correct the record
          </Button>
        </>
      }
    >
      <div className={styles.correct}>
        <p>What was recorded first stays in the log, beside this and the reason.</p>
        <RecordFields shop={shop} record={record} patch={patch} set={set} />
        <TextField
          label="Reason"
          value={reason}
          onChange={setReason}
          error={refused}
          help="why it was wrong; needed"
        />
      </div>
    </Dialog>
  );
}

interface FieldsProps {
  shop: Shop;
  record: OperationRecord;
  patch: Patch;
  set: (own: Patch) => void;
}

function RecordFields({ shop, record, patch, set }: FieldsProps) {
  const { timeZone } = shop.settings;
  const now = { ...record, ...patch };
  const timeField = (label: string, at: number, own: (at: Instant) => Patch) => (
    <DateTimeField
      label={label}
      value={instant(at)}
      timeZone={timeZone}
      usualClock={formatClock(instant(at), timeZone)}
      onChange={(typed) => typed !== null && set(own(typed))}
    />
  );
  return (
    <>
      <Select
        label="Machine"
        options={machinesLike(shop, record)}
        value={now.machineId}
        onChange={(machineId) => set({ machineId })}
      />
      {timeField('Started on', now.start, (start) => ({ start }))}
      {now.end !== null && timeField('Ended on', now.end, (end) => ({ end }))}
      <NumberField label="Good pieces" whole min={0} value={now.good} onChange={(good) => set({ good })} />
      <NumberField
        label="Scrapped"
        value={now.scrapped}
        whole
        min={0}
        onChange={(scrapped) => set({ scrapped })}
      />
    </>
  );
}

const isCount = (...pieces: readonly number[]): boolean => pieces.every((n) => Number.isInteger(n) && n >= 0);

/** The machines of the stage that the record's machine is of. */
function machinesLike({ machine }: Shop, { machineId }: OperationRecord): { id: string; name: string }[] {
  const stage = machine.find(({ id }) => id === machineId)?.stage;
  return machine.filter((one) => one.stage === stage).map(({ id, name }) => ({ id, name }));
}
