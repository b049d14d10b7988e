import { Plus } from 'lucide-react';
import { useState } from 'react';
import { downtime as downtimeSchema, type Downtime, type Machine } from '../../../../core/shop/machine.ts';
import type { Shop } from '../../../../core/shop/state.ts';
import { formatDayAndClock } from '../../../../core/time/wall.ts';
import type { Instant } from '../../../../core/units/brand.ts';
import { Button } from '../../../ui/button.tsx';
import styles from '../../../form/form.module.css';
import { Group } from '../../../form/form-frame.tsx';
import { OutageDialog } from '../../../form/outage-dialog.tsx';
import { OutageRow } from '../../../form/outage-row.tsx';
import { SpanFields } from '../../../form/span-fields.tsx';
import { useForm } from '../../../form/use-form.ts';
import { nextDowntimeId } from './machine-edit.ts';
import look from './machines.module.css';

interface Props {
  shop: Shop;
  machine: Machine;
  now: Instant;
}

/** When a machine is out of use, whatever its calendar says. */
export function Downtimes({ shop, machine, now }: Props) {
  const [edited, setEdited] = useState<Downtime | null>(null);
  const { timeZone } = shop.settings;
  const wall = (at: number) => formatDayAndClock(at, timeZone);
  const rows = shop.downtime.filter((d) => d.machineId === machine.id).toSorted((a, b) => a.from - b.from);
  const fresh = (): Downtime => ({
    id: nextDowntimeId(shop, machine.id),
    machineId: machine.id,
    from: NaN,
    to: NaN,
    reason: '',
    revision: 0,
  });
  return (
    <Group
      title="Downtime"
      note="Whatever the calendar says. Saved at once, apart from the form."
      end={
        <Button small icon={Plus} onPress={() => setEdited(fresh())}>
          Add downtime
        </Button>
      }
    >
      <ul className={look.downtimes}>
        {rows.length === 0 && (
          <li className={styles.note}>{machine.name} is in use whenever its calendar is open.</li>
        )}
        {rows.map((row) => (
          <OutageRow
            key={row.id}
            kind="downtime"
            row={row}
            words={`${wall(row.from)} to ${wall(row.to)}`}
            name={`downtime ${row.id}`}
            now={now}
            onChange={() => setEdited(row)}
          />
        ))}
      </ul>
      {edited && (
        <DowntimeDialog key={edited.id} shop={shop} current={edited} onClose={() => setEdited(null)} />
      )}
    </Group>
  );
}

function DowntimeDialog({ shop, current, onClose }: { shop: Shop; current: Downtime; onClose: () => void }) {
  const { timeZone } = shop.settings;
  const form = useForm<Downtime>({
    name: `downtime ${current.id}`,
    shop,
    current,
    schema: downtimeSchema,
    command: (row) => ({ do: 'row.save', kind: 'downtime', row }),
    fieldOf: () => '',
  });
  const { entries, errors, set } = form;
  return (
    <OutageDialog title={`Downtime of ${current.machineId}`} form={form} onClose={onClose}>
      <SpanFields {...{ timeZone, entries, errors, set }} />
    </OutageDialog>
  );
}
