import { Undo2 } from 'lucide-react';
import { figureName, figureOf, figureWords } from '../../../core/edit/standards-commands.ts';
import type { Learned } from '../../../core/shop/learned.ts';
import type { Machine } from '../../../core/shop/machine.ts';
import type { Settings } from '../../../core/shop/settings.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatDayAndClock } from '../../../core/time/wall.ts';
import { usePresent } from '../../queries/hooks.ts';
import { Button } from '../../ui/button.tsx';
import { Panel } from '../../ui/page.tsx';
import { toastError } from '../../ui/toast.tsx';
import { useAct } from '../../form/use-act.ts';
import styles from './learning.module.css';
import { grouped } from '../../../core/grouped.ts';

/** What was taken over on a machine, newest first, each with a way back while it still stands. */
export function LearnedHistory({ shop, machine }: { shop: Shop; machine: Machine }) {
  const rows = shop.learned
    .filter((row) => row.machineId === machine.id)
    .sort((a, b) => b.at - a.at || (a.id < b.id ? 1 : -1));
  if (rows.length === 0)
    return (
      <Panel title="Accepted so far">
        <p className={styles.lead}>{`Nothing yet on ${machine.name}.`}</p>
      </Panel>
    );
  return (
    <Panel title="Accepted so far">
      <table className={styles.table} aria-label="Accepted so far">
        <thead>
          <tr>
            <th scope="col">Figure</th>
            <th scope="col">When</th>
            <th scope="col">Before</th>
            <th scope="col">After</th>
            <th scope="col">Likely (90&nbsp;%)</th>
            <th scope="col">Operations</th>
            <th scope="col" aria-label="Put back" />
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <Row key={row.id} row={row} machine={machine} settings={shop.settings} />
          ))}
        </tbody>
      </table>
    </Panel>
  );
}

function Row({ row, machine, settings }: { row: Learned; machine: Machine; settings: Settings }) {
  const { timeZone, units } = settings;
  const act = useAct();
  const present = usePresent();
  const name = figureName(machine, row.key, units);
  const figure = (kept: number): string => figureWords(machine, row.key, kept, settings);
  const wall = (at: number) => formatDayAndClock(at, timeZone);
  const current = row.revertedAt === null && figureOf(machine, row.key) === row.after;
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>{wall(row.at)}</td>
      <td>{figure(row.before)}</td>
      <td>{figure(row.after)}</td>
      <td>{`${figure(row.low)} to ${figure(row.high)}`}</td>
      <td>{grouped(row.observations)}</td>
      <td>
        {row.revertedAt !== null && <span className={styles.note}>{`put back ${wall(row.revertedAt)}`}</span>}
        {row.revertedAt === null && !current && <span className={styles.note}>changed again since</span>}
        {current && (
          <Button
            small
            icon={Undo2}
            aria-label={`Put back ${name}`}
            onPress={() =>
              void act({ do: 'standards.revert', learnedId: row.id, at: present() }).catch(toastError)
            }
          >
            Put back
          </Button>
        )}
      </td>
    </tr>
  );
}
