import type { FloorWork } from '../../../core/report/floor.ts';
import type { Machine } from '../../../core/shop/machine.ts';
import type { OperationRecord } from '../../../core/shop/plan.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { Instant } from '../../../core/units/brand.ts';
import { Notes } from '../../ui/notes.tsx';
import styles from './floor.module.css';
import { Running } from './running.tsx';
import { Settled } from './settled.tsx';
import { Standing } from './standing.tsx';
import { Starting } from './starting.tsx';
import { WorkFacts, WorkPicture } from './work-facts.tsx';

interface Props {
  shop: Shop;
  work: FloorWork;
  machine: Machine;
  now: Instant;
  /** Who is at the machine; empty: not said. */
  who: string;
}

/** What decides which buttons stand on the card. */
function stateOf({
  shop,
  machine,
  record,
}: Pick<Props, 'shop' | 'machine'> & { record: OperationRecord | undefined }): string {
  if (!record) return shop.changeover.some(({ id }) => id === machine.id) ? 'changing over' : 'to start';
  const paused = record.pauses.at(-1)?.to === null;
  return `${record.end === null ? 'started' : 'ended'} ${paused ? 'paused' : 'going'}`;
}

/** The operation now: what to make of what, by when, and the buttons to report it. */
export function WorkCard({ shop, work, machine, now, who }: Props) {
  const { row, operation } = work;
  const record = shop.record.find(({ id }) => id === operation.id);
  return (
    <article className={styles.card} aria-label={`${row.line.id} now`}>
      <header className={styles.title}>
        <h2>{row.line.id}</h2>
        <div>
          <p className={styles.customer}>{row.customer}</p>
          <div className={styles.tags}>
            <Standing work={work} timeZone={shop.settings.timeZone} />
          </div>
        </div>
        <p className={styles.quantity}>
          {row.quantity} <span>{row.quantity === 1 ? 'piece' : 'pieces'}</span>
        </p>
      </header>
      <div className={styles.what}>
        <WorkFacts shop={shop} work={work} />
        <div className={styles.beside}>
          {row.notes.length > 0 && (
            <section className={styles.note} aria-label="Note" tabIndex={0}>
              <Notes notes={row.notes} />
            </section>
          )}
          <WorkPicture shop={shop} work={work} />
        </div>
      </div>
      <Settled state={stateOf({ shop, machine, record })}>
        {record && !operation.suspended ? (
          <Running record={record} work={work} shop={shop} who={who} />
        ) : (
          <Starting work={work} machine={machine} shop={shop} now={now} who={who} />
        )}
      </Settled>
    </article>
  );
}
