import { useState } from 'react';
import type { StockKnows } from '../../../core/material/lot.ts';
import type { WorkOrder } from '../../../core/shop/order.ts';
import { formatDayAndClock } from '../../../core/time/wall.ts';
import { DateTimeField } from '../../ui/date-time-field.tsx';
import { CheckBox } from '../../ui/check-box.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { LotFields } from '../../form/lot-fields.tsx';
import { orNull } from '../../form/span-fields.tsx';
import { OWN_TERMS, ownTerms, type LineEntry } from './order-entries.ts';
import styles from './orders.module.css';

interface Props {
  line: LineEntry;
  order: Pick<WorkOrder, 'due' | 'release' | 'importance'>;
  timeZone: string;
  /** By what the shop tells sheets apart. */
  knows: StockKnows | null;
  error: (field: keyof LineEntry) => string | undefined;
  set: (patch: Partial<LineEntry>) => void;
}

/** What a line has of its own beside its order: folded away until something is said, and what is said stands on the fold. */
export function LineMore(props: Props) {
  const own = ownTerms(props.line, props.timeZone, props.knows);
  const [opened, setOpened] = useState(own !== '');
  const open = opened || OWN_TERMS.some((field) => props.error(field) !== undefined);
  return (
    <details className={styles.more} open={open} onToggle={(event) => setOpened(event.currentTarget.open)}>
      <summary>{own === '' ? 'More for this line' : `For this line: ${own}`}</summary>
      {open && <OwnFields {...props} />}
    </details>
  );
}

function OwnFields({ line, order, timeZone, knows, error, set }: Props) {
  const asOrder = (at: number | null): string =>
    at === null || Number.isNaN(at)
      ? 'as the work order'
      : `as the work order, ${formatDayAndClock(at, timeZone)}`;
  return (
    <div className={styles.moreFields}>
      <DateTimeField
        label="Line due"
        timeZone={timeZone}
        usualClock="17:00"
        value={orNull(line.due ?? NaN)}
        onChange={(due) => set({ due })}
        help={`empty: ${asOrder(order.due)}`}
        error={error('due')}
      />
      <DateTimeField
        label="Line not before"
        timeZone={timeZone}
        usualClock="07:00"
        value={orNull(line.release ?? NaN)}
        onChange={(release) => set({ release })}
        help={`empty: ${order.release === null ? 'at once' : asOrder(order.release)}`}
        error={error('release')}
      />
      <NumberField
        label="Line importance"
        step={0.1}
        value={line.importance ?? NaN}
        onChange={(importance, empty) => set({ importance: empty ? null : importance })}
        help={`empty: as the work order, ${order.importance}`}
        error={error('importance')}
      />
      <LotFields {...{ knows, error }} lot={line} empty="any" onChange={set} />
      {knows && (
        <CheckBox
          label="May be cut from several lots"
          isSelected={line.mixLots}
          onChange={(mixLots) => set({ mixLots })}
        />
      )}
      <TextField
        label="Line note"
        long
        value={line.note}
        onChange={(note) => set({ note })}
        help="printed under the work order’s note"
        error={error('note')}
      />
    </div>
  );
}
