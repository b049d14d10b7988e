import { formatDayAndClock } from '../../../core/time/wall.ts';
import { useMemo, type ReactNode } from 'react';
import type { AskState } from '../../../core/contract/ask.ts';
import { latenessOf, type LineLateness } from '../../../core/planning/lateness.ts';
import { viewPlan, viewQueues, type PlanView } from '../../../core/planning/plan-view.ts';
import { repairPlans, repairWords, type RepairWords } from '../../../core/report/repair-words.ts';
import type { Queues } from '../../../core/schedule/problem.ts';
import type { Absence, Downtime } from '../../../core/shop/machine.ts';
import { outageRow, withoutOutage, type Outage } from '../../../core/shop/outage.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { Instant } from '../../../core/units/brand.ts';
import { MiniLegend } from '../../gantt/mini-plan.tsx';
import { stopAsking, useAskState, useRepair } from '../../queries/ask.ts';
import { usePlan } from '../../queries/plan.ts';
import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { SentenceError, Waiting } from '../../ui/states.tsx';
import { Picture, PlanCard } from './plan-card.tsx';
import { useChoiceKeys } from './use-choice-keys.ts';
import type { UsePlan } from './what-if-view.ts';
import styles from './what-if.module.css';
import { DAY } from '../../../core/units/duration.ts';
import { counted } from '../../../core/units/count.ts';

interface Props {
  title: string;
  outage: Outage;
  take: UsePlan;
  onClose: () => void;
}

/** The order as it was with its times shifted, beside the most stable repair. */
export function RepairDialog({ title, outage, take, onClose }: Props) {
  const query = usePlan();
  const row = query.is === 'ready' ? outageRow(query.shop, outage) : null;
  if (query.is === 'ready' && row) return <Weighed {...{ ...query, row, outage, title, take, onClose }} />;
  return (
    <Dialog title={title} isOpen onClose={onClose}>
      {query.is === 'waiting' && <Waiting doing="Working out the plan" />}
      {query.is === 'failed' && <SentenceError message={query.message} />}
      {query.is === 'ready' && <p>These hours were removed. The plan is as it was before.</p>}
    </Dialog>
  );
}

interface WeighedProps extends Props {
  shop: Shop;
  plan: PlanView;
  now: Instant;
  row: Downtime | Absence;
}

function Weighed({ shop, plan, now, row, outage, title, take, onClose }: WeighedProps) {
  const { data, error } = useRepair(outage, shop);
  const state = useAskState(data?.jobId);
  const { name, what } = wordsOf(shop, row);
  const stop = () => stopAsking(data?.jobId);
  const close = () => {
    stop();
    onClose();
  };
  const repair = state?.repair ?? null;
  const takeRepair = (queues: Queues) => {
    stop();
    take(shop, queues, `Repair the plan: ${name}, ${title.toLowerCase()}`);
  };
  useChoiceKeys(repair ? [close, () => takeRepair(repair.queues)] : [close]);
  return (
    <Dialog
      title={`${title}: ${name}`}
      isOpen
      wide
      onClose={close}
      actions={<span className={styles.footNote}>The hours are saved. Escape keeps the order.</span>}
    >
      <p>{what}</p>
      {error && <SentenceError message={error.message} />}
      {state?.phase === 'failed' && state.message && <SentenceError message={state.message} />}
      <Cards {...{ shop, plan, now, outage, until: row.to, state, onKeep: close, onTake: takeRepair }} />
    </Dialog>
  );
}

/** Who or what is missing, and what that means. */
function wordsOf(shop: Shop, row: Downtime | Absence): { readonly name: string; readonly what: string } {
  const { timeZone, crewLimit } = shop.settings;
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

interface CardsProps {
  shop: Shop;
  plan: PlanView;
  now: Instant;
  outage: Outage;
  /** Until when it lasts. */
  until: number;
  state: AskState | null;
  onKeep: () => void;
  onTake: (queues: Queues) => void;
}

function Cards({ shop, plan, now, outage, until, state, onKeep, onTake }: CardsProps) {
  const before = useMemo(() => latenessBefore(shop, outage, now), [shop, outage, now]);
  const kept = useMemo(() => latenessOf(shop, plan.schedule), [shop, plan]);
  const repair = state?.repair ?? null;
  const queues = repair?.queues ?? null;
  const after = useMemo(() => queues && latenessIn(shop, plan, queues), [shop, plan, queues]);
  const running = state === null || state.phase === 'running';
  const same = repair !== null && repair.movedOperations === 0;
  return (
    <>
      <div className={styles.two}>
        <Card
          {...{ shop, plan, until, about: repairPlans.published, keys: '1', queues: plan.queues }}
          words={repairWords(before, kept, kept, 0)}
          note={null}
          better={same && !running}
          action={<Button onPress={onKeep}>Keep the order</Button>}
        />
        <Card
          {...{ shop, plan, until, about: repairPlans.repair, keys: '2', queues }}
          words={repair && after && repairWords(before, kept, after, repair.movedOperations)}
          note={repairNote(state, same)}
          better={repair !== null && !same}
          action={
            <Button
              look={same ? 'usual' : 'primary'}
              isDisabled={!queues || same}
              onPress={() => queues && onTake(queues)}
            >
              Use this repair
            </Button>
          }
        />
      </div>
      <MiniLegend wanted={null} />
    </>
  );
}

function repairNote(state: AskState | null, same: boolean): string | null {
  if (state === null || state.phase === 'running')
    return `Searching, ${(state?.seconds ?? 0).toFixed(0)} of ${state?.budgetSeconds ?? 3} s: this card still improves.`;
  return same ? 'No move gains more than the stability it costs: keep the order.' : null;
}

interface CardProps {
  shop: Shop;
  plan: PlanView;
  until: number;
  about: { readonly title: string; readonly how: string };
  keys: string;
  queues: Queues | null;
  words: RepairWords | null;
  note: string | null;
  better: boolean;
  action: ReactNode;
}

function Card({ shop, plan, until, about, keys, queues, words, note, better, action }: CardProps) {
  const start = plan.problem.input.now;
  const window = { start, end: Math.max(until, start) + 2 * DAY };
  return (
    <PlanCard
      {...about}
      keys={keys}
      least={better}
      picture={
        <Picture
          shop={shop}
          plan={plan}
          queues={queues}
          window={window}
          lineIds={[]}
          label={`Queues with ${about.title.toLowerCase()}. ${words?.late ?? ''}`}
        />
      }
      note={note}
      action={action}
    >
      {words && (
        <>
          <p>
            <b>{words.late}</b>
          </p>
          <p>{words.others}</p>
          {words.saved && <p>{words.saved}</p>}
          <p>{words.moved}</p>
        </>
      )}
    </PlanCard>
  );
}

/** Lateness as it was without these hours. */
function latenessBefore(shop: Shop, outage: Outage, now: Instant): LineLateness[] {
  const without = withoutOutage(shop, outage);
  const view = viewPlan(without, now);
  return view.ok ? latenessOf(without, view.value.schedule) : [];
}

function latenessIn(shop: Shop, plan: PlanView, queues: Queues): LineLateness[] | null {
  const view = viewQueues(shop, plan, queues);
  return view.ok ? latenessOf(shop, view.value.schedule) : null;
}
