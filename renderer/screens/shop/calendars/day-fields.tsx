import { Plus, X } from 'lucide-react';
import type { ReactNode } from 'react';
import { OVERTIME_CAUTION } from '../../../../core/report/cautions.ts';
import type { Calendar } from '../../../../core/time/calendar.ts';
import { Button } from '../../../ui/button.tsx';
import { IconButton } from '../../../ui/icon-button.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import styles from '../../../form/form.module.css';
import { Group } from '../../../form/form-frame.tsx';
import type { Form } from '../../../form/use-form.ts';
import { without, withEntry } from '../../../form/list.ts';
import { Clock } from './shift-fields.tsx';

/** Whole days closed: holidays, stocktaking. */
export function ClosureFields({ form }: { form: Form<Calendar> }) {
  const { closures } = form.entries;
  const set = (next: Calendar['closures']) => form.set({ closures: next });
  const error = (i: number, field: string) => form.errors[`closures.${i}.${field}`];
  return (
    <Group
      title="Closed days"
      end={<Add label="Add closed days" onPress={() => set([...closures, { name: '', from: '', to: '' }])} />}
    >
      {closures.map((closure, i) => (
        <Entry
          key={i}
          label={`Closed days ${closure.name || i + 1}`}
          onRemove={() => set(without(closures, i))}
        >
          <TextField
            label="Name"
            value={closure.name}
            onChange={(name) => set(withEntry(closures, i, { name }))}
            error={error(i, 'name')}
          />
          <TextField
            label="First day"
            type="date"
            value={closure.from}
            onChange={(from) => set(withEntry(closures, i, { from }))}
            error={error(i, 'from')}
          />
          <TextField
            label="Last day"
            type="date"
            value={closure.to}
            onChange={(to) => set(withEntry(closures, i, { to }))}
            error={error(i, 'to')}
          />
        </Entry>
      ))}
    </Group>
  );
}

/** Extra open hours on one date. */
export function OvertimeFields({ form }: { form: Form<Calendar> }) {
  const { overtime } = form.entries;
  const set = (next: Calendar['overtime']) => form.set({ overtime: next });
  const error = (i: number, field: string) => form.errors[`overtime.${i}.${field}`];
  const fresh = { name: 'Overtime', date: '', start: '07:00', end: '12:00' };
  return (
    <Group
      title="Overtime"
      note={`Extra hours on one date; they hold even on a closed day. ${OVERTIME_CAUTION}`}
      end={<Add label="Add overtime" onPress={() => set([...overtime, fresh])} />}
    >
      {overtime.map((extra, i) => (
        <Entry key={i} label={`Overtime ${extra.name || i + 1}`} onRemove={() => set(without(overtime, i))}>
          <TextField
            label="Name"
            value={extra.name}
            onChange={(name) => set(withEntry(overtime, i, { name }))}
            error={error(i, 'name')}
          />
          <TextField
            label="Date"
            type="date"
            value={extra.date}
            onChange={(date) => set(withEntry(overtime, i, { date }))}
            error={error(i, 'date')}
          />
          <Clock
            label="Opens"
            value={extra.start}
            onChange={(start) => set(withEntry(overtime, i, { start }))}
            error={error(i, 'start')}
          />
          <Clock
            label="Closes"
            value={extra.end}
            onChange={(end) => set(withEntry(overtime, i, { end }))}
            error={error(i, 'end')}
          />
        </Entry>
      ))}
    </Group>
  );
}

const Add = ({ label, onPress }: { label: string; onPress: () => void }) => (
  <Button small icon={Plus} onPress={onPress}>
    {label}
  </Button>
);

const Entry = ({
  label,
  onRemove,
  children,
}: {
  label: string;
  onRemove: () => void;
  children: ReactNode;
}) => (
  <div className={styles.line} role="group" aria-label={label}>
    {children}
    <div className={styles.end}>
      <IconButton label={`Remove ${label}`} icon={X} small onPress={onRemove} />
    </div>
  </div>
);
