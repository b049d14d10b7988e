import { formatDayAndClock } from '../../../core/time/wall.ts';
import { useState } from 'react';
import type { PlanView } from '../../../core/planning/plan-view.ts';
import { repairPlans } from '../../../core/report/repair-words.ts';
import type { Queues } from '../../../core/schedule/problem.ts';
import { stockName } from '../../../core/edit/stock-commands.ts';
import { outageEnd, outageRow, type Outage, type OutageRow } from '../../../core/shop/outage.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { Instant } from '../../../core/units/brand.ts';
import { stopAsking, useAskState, useRepair } from '../../queries/ask.ts';
import { usePlan } from '../../queries/plan.ts';
import { Dialog } from '../../ui/dialog.tsx';
import { SentenceError, Waiting } from '../../ui/states.tsx';
import { RepairCards, repairKinds, USUAL_MOVES, type RepairKind } from './repair-cards.tsx';
import { useChoiceKeys } from './use-choice-keys.ts';
import type { UsePlan } from './what-if-view.ts';
import styles from './what-if.module.css';
import { counted } from '../../../core/units/count.ts';

interface Props {
  title: string;
  outage: Outage;
  take: UsePlan;
  onClose: () => void;
}

/** The order as it was with its times shifted, beside a repair of few moves and the best plan. */
export function RepairDialog({ title, outage, take, onClose }: Props) {
  const query = usePlan();
  const row = query.is === 'ready' ? outageRow(query.shop, outage) : null;
  if (query.is === 'ready' && row) return <Weighed {...{ ...query, row, outage, title, take, onClose }} />;
  return (
    <Dialog title={title} isOpen onClose={onClose}>
      {query.is === 'waiting' && <Waiting doing="Working out the plan" />}
      {query.is === 'failed' && <SentenceError message={query.message} />}
      {query.is === 'ready' && <p>It was removed, or has come. The plan is as it was before.</p>}
    </Dialog>
  );
}

interface WeighedProps extends Props {
  shop: Shop;
  plan: PlanView;
  now: Instant;
  row: OutageRow;
}

function Weighed({ shop, plan, now, row, outage, title, take, onClose }: WeighedProps) {
  const [most, setMost] = useState(USUAL_MOVES);
  const { data, error } = useRepair(outage, most, shop);
  const state = useAskState(data?.jobId);
  const { name, what } = wordsOf(shop, row, outage);
  const stop = () => stopAsking(data?.jobId);
  const close = () => {
    stop();
    onClose();
  };
  const repairs = state?.repair ?? null;
  const takeRepair = (kind: RepairKind, queues: Queues) => {
    stop();
    take(
      shop,
      queues,
      `Repair the plan, ${repairPlans[kind].title.toLowerCase()}: ${name}, ${title.toLowerCase()}`,
    );
  };
  useChoiceKeys([
    close,
    ...(repairs ? repairKinds.map((kind) => () => takeRepair(kind, repairs[kind].queues)) : []),
  ]);
  return (
    <Dialog
      title={`${title}: ${name}`}
      isOpen
      wide
      onClose={close}
      actions={<span className={styles.footNote}>It is saved. Escape keeps the order.</span>}
    >
      <p>{what}</p>
      {error && <SentenceError message={error.message} />}
      {state?.phase === 'failed' && state.message && <SentenceError message={state.message} />}
      <RepairCards
        {...{ shop, plan, now, outage, state, most }}
        until={outageEnd(row)}
        onMost={setMost}
        onKeep={close}
        onTake={takeRepair}
      />
    </Dialog>
  );
}

/** Who or what is missing, and what that means. */
function wordsOf(
  shop: Shop,
  row: OutageRow,
  outage: Outage,
): { readonly name: string; readonly what: string } {
  const { timeZone, crewLimit } = shop.settings;
  if ('sheetId' in row) {
    const sheet = shop.sheet.find(({ id }) => id === row.sheetId);
    const was = outage.kind === 'delivery' ? outage.was : row.due;
    const what = `${row.pieces} of ${sheet ? stockName(shop, sheet) : row.sheetId} come ${formatDayAndClock(row.due, timeZone)}, not ${formatDayAndClock(was, timeZone)}.`;
    return { name: `delivery ${row.id}`, what };
  }
  const hours = `from ${formatDayAndClock(row.from, timeZone)} to ${formatDayAndClock(row.to, timeZone)}`;
  if ('machineId' in row) {
    const name = shop.machine.find(({ id }) => id === row.machineId)?.name ?? row.machineId;
    return { name, what: `Stopped ${hours}.` };
  }
  const left = Math.max(0, (crewLimit ?? 0) - row.people);
  const name = counted(row.people, 'person', 'people');
  return {
    name,
    what: `Out ${hours}; of ${crewLimit ?? 0} who work at once, ${left} ${left === 1 ? 'is' : 'are'} left.`,
  };
}
