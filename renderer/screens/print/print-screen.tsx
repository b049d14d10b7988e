import { ArrowLeft } from 'lucide-react';
import { Fragment } from 'react';
import type { OutputOf } from '../../../core/contract/call.ts';
import type { plansPublished } from '../../../core/contract/plans.ts';
import { changesSince } from '../../../core/planning/changed-queues.ts';
import { dispatchLists, type DispatchList } from '../../../core/report/dispatch.ts';
import { changedRows, planTitle } from '../../../core/report/plan-words.ts';
import { inWorkOrder } from '../../../core/shop/machine.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { addDays, startOfDay } from '../../../core/time/wall.ts';
import { instant, type Instant } from '../../../core/units/brand.ts';
import { useStatus } from '../../queries/hooks.ts';
import { useFollowedPlan, type PlanQuery } from '../../queries/plan.ts';
import { usePublished } from '../../queries/plans.ts';
import { navigate, usePlace } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { CheckBox } from '../../ui/check-box.tsx';
import { Select } from '../../ui/choice.tsx';
import { EmptyState, SentenceError, Waiting } from '../../ui/states.tsx';
import { ToastCorner } from '../../ui/toast.tsx';
import { DraftNote } from './draft-note.tsx';
import { Paper, type PublishedList } from './paper.tsx';
import { PrintButton, usePrintReady } from './paper-tools.tsx';
import { partOnPaper } from './part-choice.ts';
import { PartPaper } from './part-paper.tsx';
import { printAddress, readPrintChoice, type PrintChoice } from './print-choice.ts';
import styles from './print.module.css';

/** Dispatch lists as they come out on paper; the tools above them are not printed. */
export function PrintScreen() {
  const choice = readPrintChoice(usePlace());
  const query = useFollowedPlan();
  const published = usePublished();
  const inBrowser = useStatus().data?.host === 'browser';
  return (
    <div className={`${styles.desk} ${inBrowser ? styles.numbered : ''}`}>
      {query.is === 'waiting' && <Waiting doing="Working out the plan" />}
      {query.is === 'failed' && (
        <>
          <header className={styles.tools}>
            <BackToBoard />
          </header>
          <SentenceError message={query.message} />
        </>
      )}
      {query.is === 'ready' && (
        <>
          <Tools query={query} choice={choice} />
          <DraftNote />
          {published.data && <Sheets query={query} choice={choice} published={published.data} />}
          {published.error && <SentenceError message={published.error.message} />}
        </>
      )}
      <ToastCorner />
    </div>
  );
}

interface Props {
  query: Extract<PlanQuery, { is: 'ready' }>;
  choice: PrintChoice;
}

type Published = OutputOf<typeof plansPublished>;

function Sheets({
  query,
  choice: { machineId, days, drawings },
  published,
}: Props & { published: Published }) {
  const { shop, plan, now } = query;
  usePrintReady();
  const { timeZone } = shop.settings;
  const lists = dispatchLists(shop, plan, now, addDays(startOfDay(now, timeZone), days, timeZone));
  const chosen = lists.filter(({ machine }) => machineId === null || machine.id === machineId);
  if (lists.length === 0)
    return <EmptyState title="No machine, so no dispatch list. Add a shear or a brake in Shop, Machines." />;
  if (chosen.length === 0) return <EmptyState title="There is no such machine. Choose another above." />;
  return chosen.map((list) => (
    <Fragment key={list.machine.id}>
      <Paper
        list={list}
        settings={shop.settings}
        now={now}
        days={days}
        published={publishedList(query, published, list.machine.id)}
      />
      {drawings && list.machine.stage === 'brake' && <Drawings shop={shop} list={list} now={now} />}
    </Fragment>
  ));
}

/** What a machine's list says of the plan it follows; null where every change is published at once. */
function publishedList(
  { shop, plan }: Props['query'],
  { last, before }: Published,
  machineId: string,
): PublishedList | null {
  if (!last) return null;
  const changes = before ? changesSince(shop, before.queues).get(machineId) : undefined;
  return {
    title: planTitle(last, shop.settings.timeZone),
    changes: changedRows(changes ?? [], plan.queues[machineId] ?? []),
    since: before && instant(before.at),
  };
}

/** A page for each part that the list bends, once for each metal. */
function Drawings({ shop, list, now }: { shop: Shop; list: DispatchList; now: Instant }) {
  const lines = new Map(
    list.runs.flatMap(({ rows }) =>
      rows.map(({ line }) => [`${line.partId} ${line.materialId} ${line.gauge} ${line.lengthMm}`, line.id]),
    ),
  );
  return [...lines.values()].map((id) => {
    const drawn = partOnPaper(shop, { what: 'traveller', id });
    return drawn && <PartPaper key={id} shop={shop} now={now} {...drawn} line={null} />;
  });
}

const BackToBoard = () => (
  <Button icon={ArrowLeft} onPress={() => navigate('board')}>
    Back to the board
  </Button>
);

const ALL = 'all machines';
const dayChoices = [1, 2, 3, 5, 7, 14, 21, 28].map((n) => ({
  id: String(n),
  name: n === 1 ? 'today' : `${n} days`,
}));

function Tools({ query: { shop }, choice }: Props) {
  const { data: status } = useStatus();
  const change = (patch: Partial<PrintChoice>) => {
    window.location.hash = printAddress({ ...choice, ...patch });
  };
  const known = dayChoices.some(({ id }) => id === String(choice.days));
  return (
    <header className={styles.tools}>
      <BackToBoard />
      <Select
        label="Machine"
        options={[
          { id: ALL, name: ALL },
          ...inWorkOrder(shop.machine).map(({ id, name }) => ({ id, name: `${name} (${id})` })),
        ]}
        value={choice.machineId ?? ALL}
        onChange={(id) => change({ machineId: id === ALL ? null : id })}
      />
      <Select
        label="From today"
        options={
          known ? dayChoices : [...dayChoices, { id: String(choice.days), name: `${choice.days} days` }]
        }
        value={String(choice.days)}
        onChange={(days) => change({ days: Number(days) })}
      />
      <CheckBox
        label="Drawings of the parts to bend"
        isSelected={choice.drawings}
        onChange={(drawings) => change({ drawings })}
      />
      <PrintButton what={{ what: 'dispatch', ...choice }} inBrowser={status?.host !== 'desktop'} />
    </header>
  );
}
