import { useState, type ReactNode } from 'react';
import { cautionsFor, cautionsWhenDown } from '../../../core/report/cautions.ts';
import type { Outage } from '../../../core/shop/outage.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { Instant } from '../../../core/units/brand.ts';
import { useNow, useShop } from '../../queries/hooks.ts';
import { Button } from '../../ui/button.tsx';
import { Select } from '../../ui/choice.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { SentenceError, Waiting } from '../../ui/states.tsx';
import type { FieldErrors } from '../../form/field-errors.ts';
import { OutageFields } from '../../form/span-fields.tsx';
import { useForm } from '../../form/use-form.ts';
import { RepairDialog } from './repair-dialog.tsx';
import {
  absenceOf,
  downtimeOf,
  freshPeople,
  freshStopped,
  peopleEntries,
  savePeople,
  saveStopped,
  stoppedEntries,
  troubleWords,
  type HoursEntries,
  type PeopleEntries,
  type StoppedEntries,
} from './trouble-entries.ts';
import type { UsePlan } from './what-if-view.ts';
import type { Trouble } from './what-if-view.ts';
import styles from './what-if.module.css';

interface Props {
  trouble: Trouble;
  /** The hours that were saved for it; null: they are entered first. */
  outage: Outage | null;
  onOutage: (outage: Outage) => void;
  take: UsePlan;
  onClose: () => void;
}

/** A machine is down or an operator out: the hours are saved first, then two plans stand side by side. */
export function TroubleDialog({ trouble, outage, onOutage, take, onClose }: Props) {
  const { data: shop, error } = useShop();
  const { title } = troubleWords[trouble.kind];
  const now = useNow();
  if (!shop)
    return (
      <Dialog title={title} isOpen onClose={onClose}>
        {error ? <SentenceError message={error.message} /> : <Waiting doing="Reading the shop" />}
      </Dialog>
    );
  if (outage !== null) return <RepairDialog {...{ title, outage, take, onClose }} />;
  const counted = trouble.kind === 'operator' && shop.settings.crewLimit !== null;
  const form = { shop, trouble, now, onSaved: onOutage, onClose };
  return counted ? <PeopleForm {...form} /> : <StoppedForm {...form} />;
}

interface FormProps {
  shop: Shop;
  trouble: Trouble;
  now: Instant;
  onSaved: (outage: Outage) => void;
  onClose: () => void;
}

/** A machine stands still, for itself or for its operator. */
function StoppedForm({ shop, trouble, now, onSaved, onClose }: FormProps) {
  const { title, who } = troubleWords[trouble.kind];
  const [current] = useState(() => freshStopped(shop, trouble, now));
  const form = useForm<StoppedEntries>({
    name: `trouble ${trouble.kind} ${trouble.machineId ?? ''}`,
    shop,
    current,
    schema: stoppedEntries,
    command: saveStopped(shop),
    fieldOf: () => '',
  });
  const { entries, errors, set } = form;
  const save = async () => {
    const { id } = downtimeOf(shop, entries);
    if (await form.save()) onSaved({ kind: 'downtime', id });
  };
  return (
    <Frame title={title} refused={errors['']} onClose={onClose} onSave={save}>
      <Cautions shop={shop} machineId={entries.machineId} kind={trouble.kind} />
      <Select
        label={who}
        options={shop.machine}
        value={entries.machineId}
        onChange={(machineId) => set({ machineId })}
        error={errors.machineId && 'Choose a machine.'}
        help={trouble.kind === 'operator' ? 'It is stopped while nobody else can run it.' : undefined}
      />
      <HoursFields shop={shop} entries={entries} errors={errors} set={set} />
    </Frame>
  );
}

/** Where people are counted: so many fewer are at work. */
function PeopleForm({ shop, trouble, now, onSaved, onClose }: FormProps) {
  const [current] = useState(() => freshPeople(now));
  const form = useForm<PeopleEntries>({
    name: 'trouble people',
    shop,
    current,
    schema: peopleEntries,
    command: savePeople(shop),
    fieldOf: ({ field }) => (field === 'people' ? 'people' : ''),
  });
  const { entries, errors, set } = form;
  const save = async () => {
    const { id } = absenceOf(shop, entries);
    if (await form.save()) onSaved({ kind: 'absence', id });
  };
  return (
    <Frame title={troubleWords[trouble.kind].title} refused={errors['']} onClose={onClose} onSave={save}>
      <NumberField
        label="How many people"
        whole
        value={entries.people}
        onChange={(people) => set({ people })}
        error={errors.people}
        help={`of ${shop.settings.crewLimit} who work at once, on all machines together`}
      />
      <HoursFields shop={shop} entries={entries} errors={errors} set={set} />
    </Frame>
  );
}

interface FrameProps {
  title: string;
  refused: string | undefined;
  onSave: () => Promise<void>;
  onClose: () => void;
  children: ReactNode;
}

const Frame = ({ title, refused, onSave, onClose, children }: FrameProps) => (
  <Dialog
    title={title}
    isOpen
    onClose={onClose}
    actions={
      <>
        <Button onPress={onClose}>Close</Button>
        <Button look="primary" onPress={() => void onSave()}>
          Save and look for a repair
        </Button>
      </>
    }
  >
    {refused && <SentenceError message={refused} />}
    {children}
  </Dialog>
);

interface HoursProps {
  shop: Shop;
  entries: HoursEntries;
  errors: FieldErrors;
  set: (patch: Partial<HoursEntries>) => void;
}

const HoursFields = ({ shop, entries, errors, set }: HoursProps) => (
  <OutageFields
    timeZone={shop.settings.timeZone}
    entries={entries}
    errors={errors.from ? { ...errors, from: 'Needs a date and a time.' } : errors}
    set={set}
  >
    <NumberField
      label="For how long"
      unit="h"
      value={entries.hours}
      onChange={(hours) => set({ hours })}
      error={errors.hours}
      help="by the clock on the wall; closed hours count"
    />
  </OutageFields>
);

/** Someone may now go and work on the machine: lock-out first, in plain sight. Or another person may run it. */
function Cautions({ shop, machineId, kind }: { shop: Shop; machineId: string; kind: Trouble['kind'] }) {
  const machine = shop.machine.find(({ id }) => id === machineId);
  if (!machine) return null;
  const { governs, points } = (kind === 'machine' ? cautionsWhenDown : cautionsFor)(machine.stage);
  return (
    <div className={styles.cautions} role="note" aria-label="Cautions">
      <strong>{governs}</strong>
      <details>
        <summary>All cautions of this machine</summary>
        <ul>
          {points.map((point) => (
            <li key={point}>{point}</li>
          ))}
        </ul>
      </details>
    </div>
  );
}
