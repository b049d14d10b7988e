import { useMemo } from 'react';
import { joinOf } from '../../../core/planning/join-runs.ts';
import type { RunCut } from '../../../core/planning/cut-run.ts';
import { formatDuration } from '../../../core/units/duration.ts';
import { formatMoney } from '../../../core/units/money.ts';
import { planHere } from '../../queries/cuts.ts';
import { Button } from '../../ui/button.tsx';
import { Panel } from '../../ui/page.tsx';
import { toastError } from '../../ui/toast.tsx';
import { useAct } from '../../form/use-act.ts';
import type { Ready } from './cutting-screen.tsx';
import styles from './cutting.module.css';

/** The next run of the same metal brought forward to this one: what it saves, and what it costs in time. */
export function JoinNext({ query: { shop, plan, cuts }, cut }: { query: Ready; cut: RunCut }) {
  const act = useAct();
  const join = useMemo(() => joinOf(shop, plan, cuts, cut, planHere), [shop, plan, cuts, cut]);
  if (!join) return null;
  const { other, savedCents, changeoverSeconds, latenessSeconds, lateLines, queues, gain } = join;
  const bring = () =>
    void act({ do: 'plan.replace', queues, label: `Join run ${other.run.id} to run ${cut.run.id}` }).catch(
      toastError,
    );
  return (
    <Panel title={`Run ${other.run.id} is of the same metal`}>
      <div className={styles.walkIn}>
        <p>
          {`Joined to this run: stock costs ${change(savedCents, formatMoney)}, changeover ${change(-changeoverSeconds, formatDuration)}, lateness ${change(-latenessSeconds, formatDuration)}, late lines ${lateLines > 0 ? `${lateLines} more` : lateLines < 0 ? `${-lateLines} fewer` : 'as many'}. By the shop's weights that is ${gain > 0 ? 'worth it' : 'not worth it'}.`}
        </p>
        <Button onPress={bring}>Join the runs</Button>
      </div>
    </Panel>
  );
}

const change = (saved: number, words: (n: number) => string): string =>
  saved === 0 ? 'the same' : saved > 0 ? `${words(saved)} less` : `${words(-saved)} more`;
