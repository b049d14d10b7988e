import type { WorkOrder } from '../../../core/shop/order.ts';
import { CheckBox } from '../../ui/check-box.tsx';
import { Select } from '../../ui/choice.tsx';
import { DateTimeField } from '../../ui/date-time-field.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { Fields } from '../../form/form-frame.tsx';
import type { Form } from '../../form/use-form.ts';
import type { OrderEntries } from './order-entries.ts';
import { CustomerField } from './customer-field.tsx';
import styles from './orders.module.css';
import { orNull } from '../../form/span-fields.tsx';

const statuses = [
  { id: 'open', name: 'open' },
  { id: 'held', name: 'held' },
  { id: 'done', name: 'done' },
  { id: 'cancelled', name: 'cancelled' },
];

interface Props {
  form: Form<OrderEntries>;
  isNew: boolean;
  timeZone: string;
}

/** Who wants it, by when, and how much it matters. */
export function OrderFields(props: Props) {
  const { order } = props.form.entries;
  const { set, error } = orderForm(props.form);
  return (
    <>
      <WhoFields {...props} />
      <DateFields {...props} />
      <CheckBox label="Rush" isSelected={order.rush} onChange={(rush) => set({ rush })} />
      <TextField
        label="Note"
        long
        value={order.note}
        onChange={(note) => set({ note })}
        error={error('note')}
      />
    </>
  );
}

const orderForm = (form: Form<OrderEntries>) => ({
  set: (patch: Partial<WorkOrder>) => form.set({ order: { ...form.entries.order, ...patch } }),
  error: (field: keyof WorkOrder) => form.errors[`order.${field}`],
});

function WhoFields({ form, isNew }: Props) {
  const { order } = form.entries;
  const { set, error } = orderForm(form);
  return (
    <Fields>
      <TextField
        label="Number"
        value={order.id}
        onChange={(id) => set({ id: id.trim() })}
        isDisabled={!isNew}
        error={error('id')}
      />
      <CustomerField
        value={order.customer}
        onChange={(customer) => set({ customer })}
        error={error('customer')}
      />
      <NumberField
        label="Importance"
        step={0.1}
        value={order.importance}
        onChange={(importance) => set({ importance })}
        help="1 is usual; 3 makes an hour late count three times"
        error={error('importance')}
      />
      <Select
        label="Status"
        options={statuses}
        value={order.status}
        onChange={(status) => set({ status: status as WorkOrder['status'] })}
        error={error('status')}
      />
    </Fields>
  );
}

function DateFields({ form, timeZone }: Props) {
  const { order } = form.entries;
  const { set, error } = orderForm(form);
  return (
    <div className={styles.dates}>
      <DateTimeField
        label="Due"
        timeZone={timeZone}
        usualClock="17:00"
        value={orNull(order.due)}
        onChange={(due) => set({ due: due ?? NaN })}
        error={error('due') && (Number.isNaN(order.due) ? 'Needs a due date.' : error('due'))}
      />
      <DateTimeField
        label="Not before"
        timeZone={timeZone}
        usualClock="07:00"
        value={orNull(order.release ?? NaN)}
        onChange={(release) => set({ release })}
        help="empty: at once"
        error={error('release')}
      />
    </div>
  );
}
