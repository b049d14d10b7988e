import type { Instant } from '../../../../core/units/brand.ts';
import { hasHours, type Calendar } from '../../../../core/time/calendar.ts';
import { USUAL_SHIFT } from '../../../../core/time/usual-week.ts';
import type { Shop } from '../../../../core/shop/state.ts';
import { TextField } from '../../../ui/text-field.tsx';
import styles from '../../../form/form.module.css';
import { Fields } from '../../../form/form-frame.tsx';
import { CodeField, RowFrame } from '../../../form/row-frame.tsx';
import { Section } from '../../../form/section.tsx';
import { useRowForm, type RowFormProps } from '../../../form/use-row-form.ts';
import { ClosureFields, OvertimeFields } from './day-fields.tsx';
import { NO_HOURS } from './no-hours.ts';
import { PeopleOut } from './people-out.tsx';
import { ShiftFields } from './shift-fields.tsx';
import { WeekPicture } from './week-picture.tsx';

const freshCalendar = (): Calendar => ({
  id: '',
  name: '',
  shifts: [USUAL_SHIFT],
  closures: [],
  overtime: [],
  revision: 0,
});

const usedBy = (shop: Shop, id: string): string => {
  const machines = shop.machine.filter((m) => m.calendarId === id).map((m) => m.id);
  return machines.length === 0 ? 'no machine keeps it' : machines.join(', ');
};

export const Calendars = ({ shop, now }: { shop: Shop; now: Instant }) => (
  <Section
    kind="calendar"
    path="calendars"
    noun="calendar"
    rows={shop.calendar}
    entry={({ id, name }) => ({ title: name, detail: usedBy(shop, id) })}
    fresh={freshCalendar}
    purpose="When machines are open: weekly shifts with breaks, closed days, overtime. Each machine keeps one."
    form={(row, isNew, onSaved) => (
      <CalendarForm shop={shop} row={row} isNew={isNew} onSaved={onSaved} now={now} />
    )}
  />
);

function CalendarForm({ now, ...props }: RowFormProps<'calendar'> & { now: Instant }) {
  const form = useRowForm('calendar', props);
  const { entries, errors, set } = form;
  return (
    <RowFrame kind="calendar" noun="calendar" form={form} {...props}>
      <Fields>
        <CodeField form={form} isNew={props.isNew} />
        <TextField label="Name" value={entries.name} onChange={(name) => set({ name })} error={errors.name} />
      </Fields>
      {!hasHours(entries) && <p className={styles.warning}>{NO_HOURS}</p>}
      <WeekPicture calendar={entries} timeZone={props.shop.settings.timeZone} now={now} />
      <ShiftFields form={form} />
      <ClosureFields form={form} />
      <OvertimeFields form={form} />
      <PeopleOut shop={props.shop} now={now} />
      <p className={styles.note}>
        All times are the shop’s own clock. A night shift is two spans split at midnight; 24:00 closes a day.
      </p>
    </RowFrame>
  );
}
