import type { FloorView, FloorWork } from '../../../core/report/floor.ts';
import type { SetupStep } from '../../../core/report/dispatch.ts';
import { metalWords } from '../../../core/shop/metal-name.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatWall } from '../../../core/time/wall.ts';
import { formatDuration } from '../../../core/units/duration.ts';
import { Button } from '../../ui/button.tsx';
import { Swatch } from '../../ui/choice.tsx';
import styles from './floor.module.css';
import { Standing } from './standing.tsx';
import { counted } from '../../../core/units/count.ts';

const SHOWN = 3;

interface Props {
  shop: Shop;
  view: FloorView;
  /** The operation on the card. */
  shown: string | null;
  /** Puts another operation on the card; null while one is under way. */
  onPick: ((operation: string) => void) | null;
}

/** What comes after the operation on the card, and what the day still holds. */
export function NextList({ shop, view: { queue, today }, shown, onPick }: Props) {
  const next = queue.filter(({ operation }) => operation.id !== shown).slice(0, SHOWN);
  const { timeZone } = shop.settings;
  return (
    <section className={styles.next} aria-label="What comes next">
      <h2>Next</h2>
      {next.length === 0 && <p className={styles.soft}>Nothing more is waiting.</p>}
      <ol className={styles.nextRows}>
        {next.map((work) => (
          <NextRow key={work.operation.id} shop={shop} work={work} onPick={onPick} />
        ))}
      </ol>
      <p className={styles.today}>
        {today
          ? `Today: ${counted(today.operations, 'operation')}, ${today.pieces} pieces, until ${formatWall(today.until, timeZone)}`
          : 'Nothing more is planned for today.'}
      </p>
    </section>
  );
}

function NextRow({ shop, work, onPick }: { shop: Shop; work: FloorWork; onPick: Props['onPick'] }) {
  const { row, operation, changeover, notYet } = work;
  const colour = shop.colour.find(({ id }) => id === row.line.colourId);
  return (
    <li className={styles.nextRow}>
      {changeover && (
        <div className={styles.change}>
          <b>
            Change over, {formatDuration(changeover.seconds)}
            {changeover.firstPiece && ', first piece included'}
          </b>
          <Steps steps={changeover.steps} brief />
        </div>
      )}
      <div className={styles.nextLine}>
        <strong>{row.line.id}</strong>
        <span className={styles.when}>{formatWall(row.start, shop.settings.timeZone)}</span>
      </div>
      <div className={styles.nextLine}>
        <span>{`${row.quantity} × ${row.part.name}`}</span>
        {onPick && (
          <Button small aria-label={`Do ${row.line.id} instead`} onPress={() => onPick(operation.id)}>
            Do this
          </Button>
        )}
      </div>
      <div className={styles.nextFacts}>
        {colour && <Swatch hex={colour.hex} />}{' '}
        {metalWords({ gauge: row.line.gauge, colour: row.colourName })}
        {row.lot !== '' && `, ${row.lot}`}
        <Standing work={work} timeZone={shop.settings.timeZone} brief />
      </div>
      {notYet && <p className={styles.soft}>◆ {notYet}</p>}
    </li>
  );
}

/** What changes, from what to what; `brief` leaves out the from, which stands in the row above. */
export const Steps = ({ steps, brief = false }: { steps: readonly SetupStep[]; brief?: boolean }) => (
  <ul className={styles.steps}>
    {steps.map(({ attribute, from, to }) => (
      <li key={attribute}>
        <span>{attribute}</span> {!brief && (from ?? 'not known')} <span aria-label="to">→</span> <b>{to}</b>
      </li>
    ))}
  </ul>
);
