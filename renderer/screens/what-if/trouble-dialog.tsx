import { useState } from 'react';
import { cautionsFor } from '../../../core/report/cautions.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { instant, type Instant } from '../../../core/units/brand.ts';
import { useNow, useShop } from '../../queries/hooks.ts';
import { Button } from '../../ui/button.tsx';
import { Select } from '../../ui/choice.tsx';
import { DateTimeField } from '../../ui/date-time-field.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { SentenceError, Waiting } from '../../ui/states.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { useForm, type Form } from '../shop/form/use-form.ts';
import { RepairDialog } from './repair-dialog.tsx';
import {
  downtimeOf,
  freshTrouble,
  saveTrouble,
  troubleEntries,
  troubleWords,
  type TroubleEntries,
} from './trouble-entries.ts';
import type { TakePlan } from './what-if-dialogs.tsx';
import type { Trouble } from './what-if-view.ts';
import styles from './what-if.module.css';

interface Props {
  trouble: Trouble;
  take: TakePlan;
  onClose: () => void;
}

/** A machine is down or an operator out: the hours are saved first, then two plans stand side by side. */
export function TroubleDialog({ trouble, take, onClose }: Props) {
  const { data: shop, error } = useShop();
  const [downtimeId, saved] = useState<string | null>(null);
  const { title } = troubleWords[trouble.kind];
  const now = useNow();
  if (!shop)
    return (
      <Dialog title={title} isOpen onClose={onClose}>
        {error ? <SentenceError message={error.message} /> : <Waiting what="the shop" />}
      </Dialog>
    );
  if (downtimeId !== null)
    return <RepairDialog title={title} downtimeId={downtimeId} take={take} onClose={onClose} />;
  return <TroubleForm {...{ shop, trouble, now, onClose }} onSaved={saved} />;
}

interface FormProps {
  shop: Shop;
  trouble: Trouble;
  now: Instant;
  onSaved: (downtimeId: string) => void;
  onClose: () => void;
}

function TroubleForm({ shop, trouble, now, onSaved, onClose }: FormProps) {
  const [stands] = useState(() => freshTrouble(shop, trouble, now));
  const form = useForm<TroubleEntries>({
    name: `trouble ${trouble.kind} ${trouble.machineId ?? ''}`,
    shop,
    stands,
    schema: troubleEntries,
    command: saveTrouble(shop),
    fieldOf: () => '',
  });
  const save = async () => {
    const { id } = downtimeOf(shop, form.entries);
    if (await form.save()) onSaved(id);
  };
  return (
    <Dialog
      title={troubleWords[trouble.kind].title}
      isOpen
      onClose={onClose}
      actions={
        <>
          <Button onPress={onClose}>Close</Button>
          <Button look="primary" onPress={() => void save()}>
            Save and weigh a repair
          </Button>
        </>
      }
    >
      {form.errors[''] && <SentenceError message={form.errors['']} />}
      <TroubleFields shop={shop} kind={trouble.kind} form={form} />
      <Cautions shop={shop} machineId={form.entries.machineId} />
    </Dialog>
  );
}

function TroubleFields({
  shop,
  kind,
  form: { entries, errors, set },
}: {
  shop: Shop;
  kind: Trouble['kind'];
  form: Form<TroubleEntries>;
}) {
  return (
    <>
      <Select
        label={troubleWords[kind].who}
        options={shop.machine}
        value={entries.machineId}
        onChange={(machineId) => set({ machineId })}
        error={errors.machineId && 'Choose a machine.'}
        help={kind === 'operator' ? 'It stands still while nobody else can run it.' : undefined}
      />
      <DateTimeField
        label="From"
        timeZone={shop.settings.timeZone}
        usualClock="07:00"
        value={Number.isNaN(entries.from) ? null : instant(entries.from)}
        onChange={(from) => set({ from: from ?? NaN })}
        error={errors.from && 'Needs a date and a time.'}
      />
      <NumberField
        label="For how long"
        unit="h"
        value={entries.hours}
        onChange={(hours) => set({ hours })}
        error={errors.hours}
        help="by the clock on the wall; closed hours count"
      />
      <TextField
        label="Reason"
        value={entries.reason}
        onChange={(reason) => set({ reason })}
        error={errors.reason}
      />
    </>
  );
}

/** Someone may now go and look at the machine. */
function Cautions({ shop, machineId }: { shop: Shop; machineId: string }) {
  const machine = shop.machine.find(({ id }) => id === machineId);
  if (!machine) return null;
  const { governs, points } = cautionsFor(machine.stage);
  return (
    <details className={styles.cautions}>
      <summary>Before anyone works on it</summary>
      <strong>{governs}</strong>
      <ul>
        {points.map((point) => (
          <li key={point}>{point}</li>
        ))}
      </ul>
    </details>
  );
}
