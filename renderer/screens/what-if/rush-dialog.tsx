import { useState } from 'react';
import type { RushWay } from '../../../core/planning/answers.ts';
import type { AskState } from '../../../core/contract/ask.ts';
import type { PlanView } from '../../../core/planning/plan-view.ts';
import { adviceSentence, rushLabel, rushName, rushWays, wayWords } from '../../../core/report/rush-words.ts';
import { advisedWay, cheapestWay } from '../../../core/schedule/rush/advise.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { MiniLegend } from '../../gantt/mini-plan.tsx';
import { stopAsking, useAskState, useRushWays } from '../../queries/ask.ts';
import { usePlan } from '../../queries/plan.ts';
import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { SentenceError, Waiting } from '../../ui/states.tsx';
import { RushCard } from './rush-card.tsx';
import { rushFacts, rushOrders, windowOf } from './rush-facts.ts';
import { ChooseOrders, FrozenWindow } from './rush-choices.tsx';
import { useChoiceKeys } from './use-choice-keys.ts';
import type { UsePlan } from './what-if-view.ts';
import styles from './what-if.module.css';

/** The contract's limit; when so much is urgent, the week wants planning, not a rush. */
const MOST = 500;

interface Props {
  lineIds: readonly string[];
  take: UsePlan;
  onClose: () => void;
}

/** A rush came in: three ways to take it into the plan, side by side, each with what it costs. One press takes one. */
export function RushDialog({ lineIds, take, onClose }: Props) {
  const query = usePlan();
  const known = query.is === 'ready' ? lineIds.filter((id) => query.plan.problem.jobAt.has(id)) : lineIds;
  if (query.is === 'ready' && known.length > 0 && known.length <= MOST)
    return <Ways shop={query.shop} plan={query.plan} lineIds={known} take={take} onClose={onClose} />;
  return (
    <Dialog title={rushName(lineIds)} isOpen onClose={onClose}>
      {query.is === 'waiting' && <Waiting doing="Working out the plan" />}
      {query.is === 'failed' && <SentenceError message={query.message} />}
      {query.is === 'ready' && (
        <p>
          {known.length > MOST
            ? `${known.length} lines are a rush at once; up to ${MOST} can be compared together. They are at the end of the queues: plan the week instead.`
            : 'None of these lines can be planned now. The board names each under Cannot be planned, with the reason; what was entered is kept.'}
        </p>
      )}
    </Dialog>
  );
}

interface WaysProps extends Props {
  shop: Shop;
  plan: PlanView;
}

function Ways({ shop, plan, lineIds, take, onClose }: WaysProps) {
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const [intoFrozen, setIntoFrozen] = useState(false);
  const orders = rushOrders(shop, lineIds);
  const chosen = orders.filter(({ id }) => !left.has(id)).flatMap((order) => order.lineIds);
  const { data, error } = useRushWays(chosen, intoFrozen, shop);
  const state = useAskState(data?.jobId);
  const ways = data ? [...data.ways, ...(state?.way ? [state.way] : [])] : [];
  const close = () => {
    stopAsking(data?.jobId);
    onClose();
  };
  const takeWay = ({ way, queues }: RushWay) => {
    stopAsking(data?.jobId);
    take(shop, queues, rushLabel(chosen, way));
  };
  useChoiceKeys(ways.map((way) => () => takeWay(way)));
  return (
    <Dialog
      title={`${rushName(lineIds)}: how to fit it in`}
      isOpen
      wide
      onClose={close}
      actions={
        <>
          <span className={styles.footNote}>Escape leaves the plan as it is.</span>
          <Button onPress={close}>Leave it where it is</Button>
        </>
      }
    >
      <p>{rushFacts(shop, lineIds)}</p>
      {orders.length > 1 && <ChooseOrders {...{ orders, left }} onLeave={setLeft} />}
      {data?.frozen && (
        <FrozenWindow {...{ shop, intoFrozen }} frozen={data.frozen} onChange={setIntoFrozen} />
      )}
      {error && <SentenceError message={error.message} />}
      {chosen.length > 0 && !data && !error && <Waiting doing="Working out the ways to fit it in" />}
      {data && <Cards {...{ shop, plan, ways, state }} lineIds={chosen} take={takeWay} />}
    </Dialog>
  );
}

interface CardsProps {
  shop: Shop;
  plan: PlanView;
  lineIds: readonly string[];
  /** The quick ones, and the third as soon as there is one. */
  ways: readonly RushWay[];
  state: AskState | null;
  take: (way: RushWay) => void;
}

function Cards({ shop, plan, lineIds, ways, state, take }: CardsProps) {
  const window = windowOf(plan, ways);
  const [advised, cheapest] = [advisedWay(ways), cheapestWay(ways)];
  const gained = ways.length < 3 || advised.way === 'replan';
  const advice = adviceSentence(advised, cheapest);
  return (
    <>
      <div className={styles.three}>
        {(['front', 'run', 'replan'] as const).map((kind, i) => (
          <RushCard
            key={kind}
            keys={String(i + 1)}
            about={rushWays[kind]}
            way={ways.find((way) => way.way === kind) ?? null}
            words={(way) => wayWords(way, shop)}
            advised={advised.way === kind}
            least={cheapest.way === kind}
            note={kind === 'replan' ? replanNote(state, gained) : null}
            {...{ shop, plan, lineIds, window, take }}
          />
        ))}
      </div>
      {advice && <p>{advice}</p>}
      <MiniLegend wanted="the rush" />
    </>
  );
}

/** Where the third way stands; null: nothing to add. */
function replanNote(state: AskState | null, gained: boolean): string | null {
  if (state === null || state.phase === 'running')
    return `Searching, ${(state?.seconds ?? 0).toFixed(0)} of ${state?.budgetSeconds ?? 2} s: this card still improves.`;
  if (state.phase === 'failed') return state.message;
  return gained ? null : 'The search found nothing better than the one that is advised.';
}
