import type { ArchivedOrder } from '../../../../core/contract/archive.ts';
import { operationName } from '../../../../core/edit/plan-commands.ts';
import { termsOf } from '../../../../core/shop/line-terms.ts';
import { metalName } from '../../../../core/shop/metal-name.ts';
import type { Shop } from '../../../../core/shop/state.ts';
import { formatLength } from '../../../../core/units/length.ts';
import { formatDayYearAndClock } from '../../../../core/time/wall.ts';
import { useArchivedOrder } from '../../../queries/archive.ts';
import { ColumnHeads } from '../../../ui/column-heads.tsx';
import { Dialog } from '../../../ui/dialog.tsx';
import { SentenceError, Waiting } from '../../../ui/states.tsx';
import styles from './archive.module.css';

interface Props {
  shop: Shop;
  orderId: string;
  onClose: () => void;
}

/** An order as it was left: its lines, what was recorded, what the floor reported. */
export function ArchivedOrderDialog({ shop, orderId, onClose }: Props) {
  const { data, error } = useArchivedOrder(orderId);
  return (
    <Dialog title={`Work order ${orderId}`} isOpen wide onClose={onClose}>
      {error && <SentenceError message={error.message} />}
      {!data && !error && <Waiting doing="Reading the order" />}
      {data && (
        <div className={styles.order}>
          <Facts shop={shop} archived={data} />
          <Lines shop={shop} archived={data} />
          <Records shop={shop} archived={data} />
          <Reported shop={shop} archived={data} />
        </div>
      )}
    </Dialog>
  );
}

interface PartProps {
  shop: Shop;
  archived: ArchivedOrder;
}

function Facts({ shop, archived: { order } }: PartProps) {
  const when = (at: number | null) => (at === null ? '' : formatDayYearAndClock(at, shop.settings.timeZone));
  return (
    <dl className={styles.facts}>
      <Fact term="Customer" text={order.customer} />
      <Fact term="Due" text={when(order.due)} />
      <Fact term="Closed" text={`${order.status} ${when(order.closedAt)}`} />
      {order.note && <Fact term="Note" text={order.note} />}
    </dl>
  );
}

const Fact = ({ term, text }: { term: string; text: string }) => (
  <div>
    <dt>{term}</dt>
    <dd>{text}</dd>
  </div>
);

const Lines = ({ shop, archived: { order, lines } }: PartProps) => (
  <table className={styles.table} aria-label="Lines">
    <thead>
      <tr>
        <ColumnHeads heads={['Line', 'Part', 'Metal', 'Length', 'Pieces', 'Due', 'Ended', 'Note']} />
      </tr>
    </thead>
    <tbody>
      {lines.map((line) => (
        <tr key={line.id}>
          <th scope="row">{line.id}</th>
          <td>{shop.part.find(({ id }) => id === line.partId)?.name ?? line.partId}</td>
          <td>{metalName(shop, line)}</td>
          <td>{formatLength(line.lengthMm, shop.settings)}</td>
          <td>{line.quantity}</td>
          <td>{formatDayYearAndClock(termsOf(order, line).due, shop.settings.timeZone)}</td>
          <td>{line.makeUpFor ? `${line.status}, remake of ${line.makeUpFor}` : line.status}</td>
          <td>{line.note}</td>
        </tr>
      ))}
    </tbody>
  </table>
);

function Records({ shop, archived: { records } }: PartProps) {
  const { timeZone } = shop.settings;
  if (records.length === 0) return <p className={styles.soft}>Nothing was recorded of its operations.</p>;
  return (
    <table className={styles.table} aria-label="Recorded">
      <thead>
        <tr>
          <ColumnHeads heads={['Operation', 'Machine', 'Began', 'Ended', 'Good', 'Scrapped', 'Who ran it']} />
        </tr>
      </thead>
      <tbody>
        {records.map((record) => (
          <tr key={record.id}>
            <th scope="row">{operationName(record.id)}</th>
            <td>{record.machineId}</td>
            <td>{formatDayYearAndClock(record.start, timeZone)}</td>
            <td>{record.end === null ? 'not ended' : formatDayYearAndClock(record.end, timeZone)}</td>
            <td>{record.good}</td>
            <td>{record.scrapped}</td>
            <td>{record.who.join(', ')}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Reported({ shop, archived: { reported } }: PartProps) {
  if (reported.length === 0) return null;
  return (
    <details>
      <summary>What the floor reported</summary>
      <ol className={styles.reported}>
        {reported.map(({ id, at, label, by, reason }) => (
          <li key={id}>
            {formatDayYearAndClock(at, shop.settings.timeZone)} {label}
            {by && <span className={styles.soft}> ({by})</span>}
            {reason && `. Because: ${reason}`}
          </li>
        ))}
      </ol>
    </details>
  );
}
