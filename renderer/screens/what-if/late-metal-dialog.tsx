import { useMemo, useState } from 'react';
import { stockName } from '../../../core/edit/stock-commands.ts';
import { lateMetalWords } from '../../../core/report/late-metal.ts';
import { sentence } from '../../../core/result.ts';
import type { Outage } from '../../../core/shop/outage.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { delivery as deliverySchema, type Delivery } from '../../../core/shop/stock.ts';
import { formatDayAndClock } from '../../../core/time/wall.ts';
import { instant, type Instant } from '../../../core/units/brand.ts';
import { DAY } from '../../../core/units/duration.ts';
import { Conflicts } from '../../form/conflicts.tsx';
import { orNull } from '../../form/span-fields.tsx';
import { useForm } from '../../form/use-form.ts';
import { useNow, useShop } from '../../queries/hooks.ts';
import { Button } from '../../ui/button.tsx';
import { Select } from '../../ui/choice.tsx';
import { DateTimeField } from '../../ui/date-time-field.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { SentenceError, Waiting } from '../../ui/states.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { RepairDialog } from './repair-dialog.tsx';
import type { UsePlan } from './what-if-view.ts';

const TITLE = 'Metal late';

interface Props {
  /** null: still to be chosen. */
  deliveryId: string | null;
  /** The delivery that was moved; null: its new date is entered first. */
  outage: Outage | null;
  onOutage: (outage: Outage) => void;
  take: UsePlan;
  onClose: () => void;
}

/** A delivery comes later: what that does is said before it is kept, then plans stand side by side as after a breakdown. */
export function LateMetalDialog({ deliveryId, outage, onOutage, take, onClose }: Props) {
  const { data: shop, error } = useShop();
  const now = useNow();
  const [chosen, setChosen] = useState(deliveryId);
  if (outage !== null) return <RepairDialog {...{ title: TITLE, outage, take, onClose }} />;
  const soonest = shop?.delivery.toSorted((a, b) => a.due - b.due) ?? [];
  const row = soonest.find(({ id }) => id === chosen) ?? soonest[0];
  if (shop && row) return <LateForm key={row.id} {...{ shop, row, now, setChosen, onOutage, onClose }} />;
  return (
    <Dialog title={TITLE} isOpen onClose={onClose}>
      {error && <SentenceError message={error.message} />}
      {!shop && !error && <Waiting doing="Reading the shop" />}
      {shop && <p>No delivery is expected. What was ordered is entered in Stock, Expected.</p>}
    </Dialog>
  );
}

interface FormProps {
  shop: Shop;
  row: Delivery;
  now: Instant;
  setChosen: (id: string) => void;
  onOutage: (outage: Outage) => void;
  onClose: () => void;
}

function LateForm({ shop, row, now, setChosen, onOutage, onClose }: FormProps) {
  const { timeZone } = shop.settings;
  const [was] = useState(row.due);
  const [current] = useState(() => ({ ...row, due: instant(Math.max(row.due, now) + DAY) }));
  const form = useForm<Delivery>({
    name: `late delivery ${row.id}`,
    shop,
    current,
    schema: deliverySchema,
    command: (entries) => ({ do: 'row.save', kind: 'delivery', row: entries }),
    fieldOf: () => '',
    rebase: (row, [conflict]) => ({ ...row, revision: (conflict?.theirs as Delivery | null)?.revision ?? 0 }),
  });
  const { entries, errors, set } = form;
  const save = async () => {
    if (await form.save()) onOutage({ kind: 'delivery', id: row.id, was });
  };
  return (
    <Dialog
      title={TITLE}
      isOpen
      onClose={onClose}
      actions={
        <>
          <Button onPress={onClose}>Close</Button>
          <Button look="primary" onPress={() => void save()}>
            Save and look for a repair
          </Button>
        </>
      }
    >
      {errors[''] && <SentenceError message={errors['']} />}
      <Conflicts form={form} />
      <Select
        label="Delivery"
        options={shop.delivery.map((one) => ({ id: one.id, name: nameOf(shop, one) }))}
        value={row.id}
        onChange={setChosen}
        help={`expected ${formatDayAndClock(was, timeZone)}`}
      />
      <DateTimeField
        label="Comes"
        timeZone={timeZone}
        usualClock="07:00"
        value={orNull(entries.due)}
        onChange={(due) => set({ due: due ?? NaN })}
        error={errors.due && 'Needs a date.'}
      />
      <TextField
        label="Supplier’s note"
        value={entries.note}
        onChange={(note) => set({ note })}
        error={errors.note}
      />
      <Effect {...{ shop, now, deliveryId: row.id, due: orNull(entries.due) }} />
    </Dialog>
  );
}

const nameOf = (shop: Shop, { id, pieces, sheetId }: Delivery): string => {
  const sheet = shop.sheet.find((one) => one.id === sheetId);
  return `${id}: ${pieces} of ${sheet ? stockName(shop, sheet) : sheetId}`;
};

interface EffectProps {
  shop: Shop;
  now: Instant;
  deliveryId: string;
  due: Instant | null;
}

/** What the new date does, with the order as it is. */
function Effect({ shop, now, deliveryId, due }: EffectProps) {
  const words = useMemo(
    () => (due === null ? null : lateMetalWords(shop, deliveryId, due, now)),
    [shop, now, deliveryId, due],
  );
  if (words === null) return null;
  if (!words.ok) return <SentenceError message={sentence(words.issues)} />;
  return (
    <div role="status" aria-label="What it does">
      {words.value.map((one) => (
        <p key={one}>{one}</p>
      ))}
    </div>
  );
}
