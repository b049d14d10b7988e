import { Trash2 } from 'lucide-react';
import { useState } from 'react';
import type { Shop } from '../../../core/shop/state.ts';
import { Button } from '../../ui/button.tsx';
import { Confirm } from '../../ui/confirm.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { SentenceError } from '../../ui/states.tsx';
import { toast } from '../../ui/toast.tsx';
import { Conflicts } from '../../form/conflicts.tsx';
import type { FieldErrors } from '../../form/field-errors.ts';
import { useForm, type Form } from '../../form/use-form.ts';
import { usePresent } from '../../queries/hooks.ts';
import { rushAfterSave } from '../what-if/rush-facts.ts';
import { askRush } from '../what-if/what-if-view.ts';
import { NEW_ORDER, orderDraft } from './order-draft.ts';
import {
  freshOrder,
  entriesOf,
  orderEntries,
  orderField,
  rebased,
  removeCommand,
  rowHeld,
  saveCommand,
  withTerms,
  type OrderEntries,
} from './order-entries.ts';
import { OrderFields } from './order-fields.tsx';
import { OrderLines } from './order-lines.tsx';
import { notAsked, pastDues } from './past-due.ts';
import { tooLongLines } from './too-long-lines.ts';
import styles from './orders.module.css';

interface Props {
  shop: Shop;
  /** null: a new one. */
  orderId: string | null;
  onClose: () => void;
}

/** A work order with its lines. Closing keeps what was typed until it is saved or discarded. */
export function OrderDialog({ shop, orderId, onClose }: Props) {
  const [fresh] = useState(() => freshOrder(shop));
  const current = orderId === null ? fresh : entriesOf(shop, orderId);
  const close = (changed: boolean) => {
    if (changed)
      toast({
        text: 'Not saved. What you typed is kept on this screen, also when the window is closed, until you save or discard it.',
      });
    onClose();
  };
  if (current === null)
    return (
      <Dialog title={`Work order ${orderId}`} isOpen onClose={onClose}>
        <p>{`There is no work order ${orderId}. It may have been removed; Undo brings it back.`}</p>
      </Dialog>
    );
  return <OrderForm shop={shop} isNew={orderId === null} current={current} onClose={close} />;
}

interface FormProps {
  shop: Shop;
  isNew: boolean;
  current: OrderEntries;
  onClose: (changed: boolean) => void;
}

function OrderForm({ shop, isNew, current, onClose }: FormProps) {
  const { id } = current.order;
  const present = usePresent();
  const [asked, setAsked] = useState<FieldErrors>({});
  const form = useForm<OrderEntries>({
    name: orderDraft.nameOf(isNew ? NEW_ORDER : id),
    shop,
    current,
    schema: orderEntries,
    command: (entries) => saveCommand(entries, present()),
    fieldOf: orderField,
    rebase: rebased,
    complete: withTerms,
    held: rowHeld,
    refuses: (entries): FieldErrors => ({
      ...tooLongLines(shop, current, entries),
      ...notAsked(pastDues(shop, current, entries, present()), asked),
      ...(isNew && shop.order.some(({ id: other }) => other === entries.order.id)
        ? { 'order.id': `Work order ${entries.order.id} already exists. Choose another number.` }
        : {}),
    }),
  });
  const save = async () => {
    setAsked(pastDues(shop, current, form.entries, present()));
    const saved = await form.save();
    if (!saved) return;
    onClose(false);
    const rush = rushAfterSave(isNew ? null : current, saved);
    if (rush.length > 0) askRush(rush);
  };
  return (
    <Dialog
      title={isNew ? 'New work order' : `Work order ${id}`}
      isOpen
      wide
      onClose={() => onClose(form.changed)}
      actions={
        <Actions
          form={form}
          orderId={isNew ? null : id}
          onSave={() => void save()}
          onGone={() => onClose(false)}
        />
      }
    >
      <div className={styles.orderForm}>
        {form.errors[''] && <SentenceError message={form.errors['']} />}
        <Conflicts form={form} />
        <OrderFields form={form} isNew={isNew} timeZone={shop.settings.timeZone} />
        <OrderLines shop={shop} form={form} />
      </div>
    </Dialog>
  );
}

interface ActionProps {
  form: Form<OrderEntries>;
  orderId: string | null;
  onSave: () => void;
  onGone: () => void;
}

function Actions({ form, orderId, onSave, onGone }: ActionProps) {
  const [asking, setAsking] = useState(false);
  const remove = async () => {
    if (await form.remove(removeCommand(form.entries))) onGone();
  };
  const misfits = Object.keys(form.errors).length;
  return (
    <>
      {orderId !== null && (
        <>
          <Button look="danger" icon={Trash2} onPress={() => setAsking(true)}>
            Remove
          </Button>
          <Confirm
            title={`Remove work order ${orderId}?`}
            message={`Work order ${orderId} is removed with all its lines, from the plan too. Undo brings it back.`}
            act="Remove work order"
            isOpen={asking}
            onConfirm={() => void remove()}
            onClose={() => setAsking(false)}
          />
        </>
      )}
      <span className={styles.footNote} role="status">
        {misfits > 0 && `Not saved: ${misfits === 1 ? 'one entry needs' : `${misfits} entries need`} a look.`}
      </span>
      <Button onPress={form.discard} isDisabled={!form.changed}>
        Discard changes
      </Button>
      <Button look="primary" onPress={onSave} isDisabled={!form.changed}>
        Save
      </Button>
    </>
  );
}
