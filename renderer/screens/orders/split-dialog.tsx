import { useState } from 'react';
import { piecesThatStay, splitRefusal } from '../../../core/edit/line-split.ts';
import { queuedIn } from '../../../core/report/order-standing.ts';
import { nextLineNumber } from '../../../core/shop/line-number.ts';
import { termsOf } from '../../../core/shop/line-terms.ts';
import type { OrderLine, WorkOrder } from '../../../core/shop/order.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatClock } from '../../../core/time/wall.ts';
import { instant, type Instant } from '../../../core/units/brand.ts';
import { useAct } from '../../form/use-act.ts';
import { Button } from '../../ui/button.tsx';
import { DateTimeField } from '../../ui/date-time-field.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { SentenceError } from '../../ui/states.tsx';
import styles from './orders.module.css';

interface Props {
  shop: Shop;
  line: OrderLine;
  order: WorkOrder;
  onClose: () => void;
}

/** A line in two, now and later: how many pieces go into a line of their own, and when that is due. */
export function SplitDialog({ shop, line, order, onClose }: Props) {
  const refusal = splitRefusal(shop, line);
  if (refusal === null) return <SplitForm {...{ shop, line, order, onClose }} />;
  return (
    <Dialog
      title={`Split line ${line.id}`}
      isOpen
      onClose={onClose}
      actions={<Button onPress={onClose}>Close</Button>}
    >
      <p>{`${refusal.message} ${refusal.advice}`}</p>
    </Dialog>
  );
}

function SplitForm({ shop, line, order, onClose }: Props) {
  const act = useAct();
  const { timeZone } = shop.settings;
  const [later, setLater] = useState(NaN);
  const [due, setDue] = useState<Instant | null>(instant(termsOf(order, line).due));
  const [refused, setRefused] = useState<string | null>(null);
  const most = line.quantity - piecesThatStay(shop, line);
  const fits = Number.isInteger(later) && later >= 1 && later <= most;
  const split = () => {
    if (due === null) return;
    const { id: lineId, revision } = line;
    void act({ do: 'line.split', lineId, revision, later, due }).then(onClose, (error: Error) =>
      setRefused(error.message),
    );
  };
  return (
    <Dialog
      title={`Split line ${line.id}`}
      isOpen
      onClose={onClose}
      actions={
        <>
          <Button onPress={onClose}>Cancel</Button>
          <Button look="primary" isDisabled={!fits || due === null} onPress={split}>
            Split the line
          </Button>
        </>
      }
    >
      <div className={styles.split}>
        {refused && <SentenceError message={refused} />}
        <p>{stays(line, line.quantity - most)}</p>
        <NumberField
          label="Pieces for later"
          whole
          value={later}
          onChange={setLater}
          help={`1 to ${most} of ${line.quantity}`}
          error={fits || Number.isNaN(later) ? undefined : `Between 1 and ${most}.`}
        />
        <DateTimeField
          label="Later pieces due"
          value={due}
          timeZone={timeZone}
          usualClock={formatClock(instant(termsOf(order, line).due), timeZone)}
          onChange={setDue}
          error={due === null ? 'Needs a date.' : undefined}
        />
        <p role="status">{fits && becomes(shop, line, later)}</p>
      </div>
    </Dialog>
  );
}

/** What of the line cannot go. @param stay pieces, one at least */
const stays = ({ id, quantity }: OrderLine, stay: number): string =>
  stay > 1
    ? `${stay} of the ${quantity} pieces are cut or on issued sheets: they stay with line ${id}.`
    : `Nothing of the ${quantity} pieces is cut yet.`;

function becomes(shop: Shop, { id, orderId, quantity }: OrderLine, later: number): string {
  const place = queuedIn(shop)(id)
    ? 'right behind it in the queues. Move it from there, or plan the week again.'
    : 'not queued yet, as it is itself.';
  return `Line ${id} keeps ${quantity - later}; ${later} become line ${orderId}/${nextLineNumber(shop, orderId)}, ${place}`;
}
