import type { ListedPlan, WhichPlan } from '../../../core/contract/plans.ts';
import { planTitle } from '../../../core/report/plan-words.ts';
import { useCompared } from '../../queries/plans.ts';
import { Select } from '../../ui/choice.tsx';
import { SentenceError, Waiting } from '../../ui/states.tsx';
import { Comparison } from './comparison.tsx';
import styles from './plans.module.css';

interface Props {
  plans: readonly ListedPlan[];
  a: WhichPlan;
  b: WhichPlan;
  timeZone: string;
  byHand: boolean;
  onChoose: (next: { a?: WhichPlan; b?: WhichPlan }) => void;
}

const planOf = (id: string): WhichPlan => (id === 'draft' || id === 'published' ? id : Number(id));

/** Two plans side by side, both as they would be worked from now on. */
export function PlanComparing({ plans, a, b, timeZone, byHand, onChoose }: Props) {
  const { data, error } = useCompared(a, b);
  const options = [
    { id: 'draft', name: 'The plan on the board' },
    ...(byHand ? [{ id: 'published', name: 'What floor and paper follow' }] : []),
    ...plans.map((plan) => ({ id: String(plan.id), name: planTitle(plan, timeZone) })),
  ];
  return (
    <div className={styles.comparing}>
      <div className={styles.pair}>
        <Select
          label="From"
          options={options}
          value={String(a)}
          onChange={(id) => onChoose({ a: planOf(id) })}
        />
        <Select
          label="To"
          options={options}
          value={String(b)}
          onChange={(id) => onChoose({ b: planOf(id) })}
        />
      </div>
      {error && <SentenceError message={error.message} />}
      {!data && !error && <Waiting doing="Working out both plans" />}
      {data && !error && <Comparison comparison={data} timeZone={timeZone} />}
    </div>
  );
}
