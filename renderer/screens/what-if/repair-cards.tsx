import { useMemo, type ReactNode } from 'react';
import { MOST_MOVES, type AskState } from '../../../core/contract/ask.ts';
import type { RepairPlans } from '../../../core/planning/answers.ts';
import { latenessOf, type LineLateness } from '../../../core/planning/lateness.ts';
import { viewPlan, viewQueues, type PlanView } from '../../../core/planning/plan-view.ts';
import { repairPlans, repairWords, type RepairWords } from '../../../core/report/repair-words.ts';
import type { Queues } from '../../../core/schedule/problem.ts';
import { withoutOutage, type Outage } from '../../../core/shop/outage.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { Instant } from '../../../core/units/brand.ts';
import { DAY } from '../../../core/units/duration.ts';
import { MiniLegend } from '../../gantt/mini-plan.tsx';
import { Button } from '../../ui/button.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { Picture, PlanCard } from './plan-card.tsx';
import styles from './what-if.module.css';

/** So many operations a repair may move unless it is told otherwise: as many as can be told to the floor. */
export const USUAL_MOVES = 25;

export type RepairKind = keyof RepairPlans;
export const repairKinds = ['few', 'best'] as const satisfies readonly RepairKind[];

interface Props {
  shop: Shop;
  plan: PlanView;
  now: Instant;
  outage: Outage;
  /** Until when it lasts. */
  until: number;
  state: AskState | null;
  /** How many operations the repair of few moves may move. */
  most: number;
  onMost: (most: number) => void;
  onKeep: () => void;
  onTake: (kind: RepairKind, queues: Queues) => void;
}

/** Three plans after a trouble: the order kept, few moves, the best. */
export function RepairCards(props: Props) {
  const { shop, plan, now, outage, until, state, most, onMost, onKeep, onTake } = props;
  const before = useMemo(() => latenessBefore(shop, outage, now), [shop, outage, now]);
  const kept = useMemo(() => latenessOf(shop, plan.schedule), [shop, plan]);
  const repairs = state?.repair ?? null;
  const running = state === null || state.phase === 'running';
  const noMoveGains = repairs !== null && repairs.few.movedOperations === 0;
  const about = { shop, plan, until, before, kept };
  return (
    <>
      <div className={styles.three}>
        <Card
          {...{ ...about, about: repairPlans.kept, keys: '1', queues: plan.queues, moved: 0 }}
          note={null}
          advised={noMoveGains && !running}
          action={<Button onPress={onKeep}>Keep the order</Button>}
        />
        {repairKinds.map((kind, i) => (
          <Card
            key={kind}
            {...{ ...about, about: repairPlans[kind], keys: String(i + 2) }}
            queues={repairs?.[kind].queues ?? null}
            moved={repairs?.[kind].movedOperations ?? 0}
            note={noteOf(kind, state)}
            advised={kind === 'few' && repairs !== null && !noMoveGains}
            action={
              <Button
                look={kind === 'few' && !noMoveGains ? 'primary' : 'usual'}
                isDisabled={!repairs || repairs[kind].movedOperations === 0}
                onPress={() => repairs && onTake(kind, repairs[kind].queues)}
              >
                {kind === 'few' ? 'Use few moves' : 'Use the best plan'}
              </Button>
            }
          >
            {kind === 'few' && <MostField most={most} onMost={onMost} />}
          </Card>
        ))}
      </div>
      <MiniLegend wanted={null} />
    </>
  );
}

const MostField = ({ most, onMost }: Pick<Props, 'most' | 'onMost'>) => (
  <NumberField
    label="Moves at most"
    whole
    min={1}
    max={MOST_MOVES}
    value={most}
    onChange={(next) => !Number.isNaN(next) && onMost(next)}
  />
);

/** What is still to be said of a repair; null: nothing. */
function noteOf(kind: RepairKind, state: AskState | null): string | null {
  if (state === null || state.phase === 'running')
    return `Searching, ${(state?.seconds ?? 0).toFixed(0)} of ${state?.budgetSeconds ?? 5} s: this card still improves.`;
  if (!state.repair) return null;
  const { few, best } = state.repair;
  if (kind === 'few')
    return few.movedOperations === 0
      ? 'No move gains more than the stability it costs: keep the order.'
      : null;
  return best.objective < few.objective ? null : 'The search found nothing better than the few moves.';
}

interface CardProps {
  shop: Shop;
  plan: PlanView;
  until: number;
  before: readonly LineLateness[];
  kept: readonly LineLateness[];
  about: { readonly title: string; readonly how: string };
  keys: string;
  /** null: not found yet. */
  queues: Queues | null;
  moved: number;
  note: string | null;
  advised: boolean;
  action: ReactNode;
  children?: ReactNode;
}

function Card(props: CardProps) {
  const { shop, plan, until, before, kept, about, keys, queues, moved, note, advised, action, children } =
    props;
  const start = plan.problem.input.now;
  const window = { start, end: Math.max(until, start) + 2 * DAY };
  const after = useMemo(() => queues && latenessIn(shop, plan, queues), [shop, plan, queues]);
  const words = after && repairWords(before, kept, after, moved);
  return (
    <PlanCard
      {...about}
      keys={keys}
      least={advised}
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
      {children}
      {words && <Words {...words} />}
    </PlanCard>
  );
}

const Words = ({ late, others, saved, moved, shifted }: RepairWords) => (
  <>
    <p>
      <b>{late}</b>
    </p>
    <p>{others}</p>
    {saved && <p>{saved}</p>}
    <p>{moved}</p>
    <p className={styles.soft}>{shifted}</p>
  </>
);

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
