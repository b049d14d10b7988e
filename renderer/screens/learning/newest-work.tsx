import { useState } from 'react';
import { secondsOf } from '../../../core/learn/counts.ts';
import type { Machine } from '../../../core/shop/machine.ts';
import type { OperationRecord } from '../../../core/shop/plan.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatDayAndClock } from '../../../core/time/wall.ts';
import { formatDuration } from '../../../core/units/duration.ts';
import type { FinishedWork } from '../../queries/happened.ts';
import { Button } from '../../ui/button.tsx';
import { Panel } from '../../ui/page.tsx';
import { CorrectDialog } from './correct-dialog.tsx';
import styles from './learning.module.css';

const SHOWN = 12;

interface Props {
  shop: Shop;
  machine: Machine;
  happened: FinishedWork;
}

/**
 * What a machine did last, each operation beside its estimate; with names where some were given. What belongs to the
 * living shop can be corrected here; what is in the archive stays as it is.
 */
export function NewestWork({ shop, machine, happened }: Props) {
  const [correcting, setCorrecting] = useState<OperationRecord | null>(null);
  const { timeZone } = shop.settings;
  const living = new Map(shop.record.map((record) => [record.id, record]));
  const newest = happened.records.filter((r) => r.machineId === machine.id).slice(0, SHOWN);
  if (newest.length === 0) return null;
  const seen = new Map(happened.observations.map((o) => [o.id, o]));
  const named = newest.some(({ who }) => who.length > 0);
  return (
    <Panel title="Finished last">
      <div className={styles.scroll}>
        <table className={styles.table} aria-label="Finished last">
          <thead>
            <tr>
              <th scope="col">Operation</th>
              <th scope="col">Started</th>
              <th scope="col">Pieces</th>
              <th scope="col">Estimate</th>
              <th scope="col">Actual</th>
              {named && <th scope="col">Who ran it</th>}
              <th scope="col">If it is wrong</th>
            </tr>
          </thead>
          <tbody>
            {newest.map((record) => {
              const { id } = record;
              // A correction stands at once; what it says of times is worked out after.
              const { start, good, who } = living.get(id) ?? record;
              const work = seen.get(id);
              return (
                <tr key={id}>
                  <th scope="row">{id}</th>
                  <td>{formatDayAndClock(start, timeZone)}</td>
                  <td>{good}</td>
                  <td>{work ? formatDuration(secondsOf(machine, work.counts)) : 'not known any more'}</td>
                  <td>{work ? formatDuration(work.actualSeconds) : ''}</td>
                  {named && <td>{who.join(', ')}</td>}
                  <td>
                    {living.has(id) && (
                      <Button small onPress={() => setCorrecting(living.get(id)!)}>
                        Correct…
                      </Button>
                    )}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      {correcting && <CorrectDialog shop={shop} record={correcting} onClose={() => setCorrecting(null)} />}
    </Panel>
  );
}
