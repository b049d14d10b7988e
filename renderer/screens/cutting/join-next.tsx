import { useMemo } from 'react';
import { seenQueues } from '../../../core/edit/stale.ts';
import { joinOf } from '../../../core/planning/join-runs.ts';
import type { RunCut } from '../../../core/planning/cut-run.ts';
import { joinSentence } from '../../../core/report/join-words.ts';
import { planHere } from '../../queries/plan-runs.ts';
import { Button } from '../../ui/button.tsx';
import { Panel } from '../../ui/page.tsx';
import { toastError } from '../../ui/toast.tsx';
import { useAct } from '../../form/use-act.ts';
import type { ReadyCuts } from '../../queries/cuts.ts';
import styles from './cutting.module.css';

/** The next run of the same metal brought forward to this one: what it saves, and what it costs in time. */
export function JoinNext({ query: { shop, plan, cuts }, cut }: { query: ReadyCuts; cut: RunCut }) {
  const act = useAct();
  const join = useMemo(() => joinOf(shop, plan, cuts, cut, planHere), [shop, plan, cuts, cut]);
  if (!join) return null;
  const { other, queues } = join;
  const bring = () =>
    void act({
      do: 'plan.replace',
      queues,
      label: `Join run ${other.run.id} to run ${cut.run.id}`,
      seen: seenQueues(shop),
    }).catch(toastError);
  return (
    <Panel title={`Run ${other.run.id} is of the same metal`}>
      <div className={styles.walkIn}>
        <p>{joinSentence(join, shop.settings)}</p>
        <Button onPress={bring}>Join the runs</Button>
      </div>
    </Panel>
  );
}
