import type { FloorWork } from '../../../core/report/floor.ts';
import type { Machine } from '../../../core/shop/machine.ts';
import type { OperationRecord } from '../../../core/shop/plan.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { Instant } from '../../../core/units/brand.ts';
import { Notes } from '../../ui/notes.tsx';
import styles from './floor.module.css';
import { BrakeSteps } from './brake-steps.tsx';
import { Running } from './running.tsx';
import { Settled } from './settled.tsx';
import { ShearSteps } from './shear-steps.tsx';
import { Standing } from './standing.tsx';
import { Starting } from './starting.tsx';
import { WorkFacts, WorkPicture } from './work-facts.tsx';

interface Props {
  shop: Shop;
  work: FloorWork;
  machine: Machine;
  now: Instant;
  /** Why nothing can go on at the machine now; null: it stands ready. */
  stopped: string | null;
  /** What comes after it; null: nothing. */
  next: string | null;
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
export function WorkCard({ shop, work, machine, now, stopped, next, who }: Props) {
  const { row, operation } = work;
  const record = shop.record.find(({ id }) => id === operation.id);
  const isBent = operation.stage === 'brake';
  const isCut = operation.stage === 'shear';
  return (
    <article className={styles.card} aria-label={`${row.line.id} now`}>
      <Title {...{ shop, work, next }} />
      <div className={styles.what}>
        {isCut && <ShearSteps shop={shop} work={work} machine={machine} />}
        {isBent && <BrakeSteps shop={shop} work={work} />}
        <div className={styles.more}>
          <WorkFacts shop={shop} work={work} />
          <div className={styles.beside}>
            {row.notes.length > 0 && (
              <section className={styles.note} aria-label="Note" tabIndex={0}>
                <Notes notes={row.notes} />
              </section>
            )}
            {!isBent && <WorkPicture shop={shop} work={work} />}
          </div>
        </div>
      </div>
      <Settled state={stateOf({ shop, machine, record })}>
        {record && !operation.suspended ? (
          <Running record={record} work={work} shop={shop} stopped={stopped} who={who} />
        ) : (
          <Starting {...{ work, machine, shop, now, stopped, who }} />
        )}
      </Settled>
    </article>
  );
}

/** Line and pieces, and what comes next: read from across the shop. */
function Title({ shop, work, next }: Pick<Props, 'shop' | 'work' | 'next'>) {
  const { row } = work;
  return (
    <header className={styles.title}>
      <h2 data-far>{row.line.id}</h2>{' '}
      <p className={styles.quantity}>
        <span data-far>{row.quantity}</span> {row.quantity === 1 ? 'piece' : 'pieces'}
      </p>
      <div className={styles.whose}>
        <p className={styles.customer}>{row.customer}</p>
        <div className={styles.tags}>
          <Standing work={work} timeZone={shop.settings.timeZone} />
        </div>
      </div>
      {next !== null && (
        <p className={styles.farNext}>
          next <span data-far>{next}</span>
        </p>
      )}
    </header>
  );
}
