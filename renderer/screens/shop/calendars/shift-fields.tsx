import { Plus, X } from 'lucide-react';
import { Checkbox, CheckboxGroup, Label } from 'react-aria-components';
import type { Calendar, Shift } from '../../../../core/time/calendar.ts';
import { Button } from '../../../ui/button.tsx';
import { IconButton } from '../../../ui/icon-button.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import styles from '../../../form/form.module.css';
import { Group } from '../../../form/form-frame.tsx';
import type { Form } from '../../../form/use-form.ts';
import look from './calendars.module.css';
import { without, withEntry } from '../../../form/list.ts';
import { WEEKDAYS } from '../../../../core/time/wall.ts';

type CalendarForm = { form: Form<Calendar> };

/** The hours that come back every week. */
export function ShiftFields({ form }: CalendarForm) {
  const { shifts } = form.entries;
  const set = (next: Shift[]) => form.set({ shifts: next });
  const fresh: Shift = { name: 'Day', days: [1, 2, 3, 4, 5], start: '07:00', end: '15:30', breaks: [] };
  return (
    <Group
      title="Shifts"
      note="Breaks come off their own shift. Shifts that overlap count once."
      end={
        <Button small icon={Plus} onPress={() => set([...shifts, fresh])}>
          Add shift
        </Button>
      }
    >
      {shifts.map((shift, i) => (
        <div key={i} className={look.entry} role="group" aria-label={`Shift ${shift.name || i + 1}`}>
          <ShiftLine
            shift={shift}
            at={i}
            form={form}
            onChange={(patch) => set(withEntry(shifts, i, patch))}
            onRemove={() => set(without(shifts, i))}
          />
          <Breaks
            shift={shift}
            at={i}
            form={form}
            onChange={(breaks) => set(withEntry(shifts, i, { breaks }))}
          />
        </div>
      ))}
    </Group>
  );
}

interface ShiftProps extends CalendarForm {
  shift: Shift;
  at: number;
}

function ShiftLine({
  shift,
  at,
  form,
  onChange,
  onRemove,
}: ShiftProps & { onChange: (patch: Partial<Shift>) => void; onRemove: () => void }) {
  const error = (field: string) => form.errors[`shifts.${at}.${field}`];
  return (
    <div className={styles.line}>
      <TextField
        label="Name"
        value={shift.name}
        onChange={(name) => onChange({ name })}
        error={error('name')}
      />
      <Clock
        label="Opens"
        value={shift.start}
        onChange={(start) => onChange({ start })}
        error={error('start')}
      />
      <Clock label="Closes" value={shift.end} onChange={(end) => onChange({ end })} error={error('end')} />
      <CheckboxGroup
        className={`${styles.tight} ${look.days}`}
        value={shift.days.map(String)}
        onChange={(days) => onChange({ days: days.map(Number).toSorted((a, b) => a - b) })}
      >
        <Label className={look.label ?? ''}>Days</Label>
        <div className={look.dayBoxes}>
          {WEEKDAYS.map((name, i) => (
            <Checkbox key={name} value={String(i + 1)} className={look.dayBox ?? ''}>
              {name}
            </Checkbox>
          ))}
        </div>
        {error('days') && <p className={styles.warning}>{error('days')}</p>}
      </CheckboxGroup>
      <div className={styles.end}>
        <IconButton label={`Remove shift ${shift.name}`} icon={X} small onPress={onRemove} />
      </div>
    </div>
  );
}

function Breaks({ shift, at, form, onChange }: ShiftProps & { onChange: (breaks: Shift['breaks']) => void }) {
  const { breaks } = shift;
  const error = (i: number, field: string) => form.errors[`shifts.${at}.breaks.${i}.${field}`];
  return (
    <div className={look.breaks}>
      {breaks.map((pause, i) => (
        <div key={i} className={styles.line} role="group" aria-label={`Break ${i + 1}`}>
          <Clock
            label="Break from"
            value={pause.start}
            onChange={(start) => onChange(withEntry(breaks, i, { start }))}
            error={error(i, 'start')}
          />
          <Clock
            label="to"
            value={pause.end}
            onChange={(end) => onChange(withEntry(breaks, i, { end }))}
            error={error(i, 'end')}
          />
          <div className={styles.end}>
            <IconButton
              label={`Remove break ${i + 1}`}
              icon={X}
              small
              onPress={() => onChange(without(breaks, i))}
            />
          </div>
        </div>
      ))}
      <div>
        <Button
          small
          look="quiet"
          icon={Plus}
          onPress={() => onChange([...breaks, { start: '12:00', end: '12:30' }])}
        >
          Add break
        </Button>
      </div>
    </div>
  );
}

interface ClockProps {
  label: string;
  value: string;
  onChange: (value: string) => void;
  error: string | undefined;
}

/** A time of day typed as 07:30; a native time field could not say 24:00. */
export const Clock = ({ label, value, onChange, error }: ClockProps) => (
  <TextField
    label={label}
    value={value}
    onChange={(text) => onChange(text.trim())}
    error={error}
    placeholder="07:30"
  />
);
