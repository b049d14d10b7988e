import { FileUp, TrendingUp } from 'lucide-react';
import { useMemo } from 'react';
import { lateChange } from '../../../core/learn/evidence.ts';
import { isElsewhere } from '../../../core/part/stage.ts';
import type { Machine } from '../../../core/shop/machine.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { sentence } from '../../../core/result.ts';
import { useHappened, type FinishedWork } from '../../queries/happened.ts';
import { useShop } from '../../queries/hooks.ts';
import { navigate, usePlace } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { Page, Panel } from '../../ui/page.tsx';
import { EmptyState, SentenceError, Waiting } from '../../ui/states.tsx';
import { Tabs } from '../../ui/tabs.tsx';
import { EvidenceChart } from './evidence-chart.tsx';
import { openImport } from '../import/kinds.ts';
import { LateSentence } from './late-sentence.tsx';
import { LearnedHistory } from './learned-history.tsx';
import styles from './learning.module.css';
import { NewestWork } from './newest-work.tsx';
import { ProposalPanel } from './proposal-panel.tsx';
import { proposalsFor } from './proposals.ts';

/** What finished work says of the times in use, and the choice to take it over. */
export function LearningScreen() {
  const { data: shop, error } = useShop();
  const { data: happened, error: failed } = useHappened();
  return (
    <Page
      title="Learning"
      lead="What finished work says of your time standards. Nothing changes until you accept it."
      actions={
        <Button icon={FileUp} onPress={() => openImport('finished')}>
          Import finished operations
        </Button>
      }
    >
      {(error ?? failed) && <SentenceError message={(error ?? failed)?.message ?? ''} />}
      {!error && !failed && (!shop || !happened) && <Waiting doing="Working out what finished work shows" />}
      {shop && happened && <Machines shop={shop} happened={happened} />}
    </Page>
  );
}

function Machines({ shop, happened }: { shop: Shop; happened: FinishedWork }) {
  const asked = usePlace().path[1];
  if (shop.machine.length === 0)
    return (
      <EmptyState icon={TrendingUp} title="No machines yet">
        <p>Each machine learns from its own work. Add one in Shop, Machines.</p>
      </EmptyState>
    );
  // How long others take is no matter of our standards.
  const machines = shop.machine.filter(({ stage }) => !isElsewhere(stage));
  const chosen = machines.find(({ id }) => id === asked) ?? machines[0];
  return (
    <>
      {happened.left > 0 && (
        <p className={styles.lead}>
          {`${happened.left} finished operations are left out: their part, stock or machine is gone or was changed.`}
        </p>
      )}
      <Tabs
        label="Machines"
        selected={chosen?.id ?? ''}
        onSelect={(id) => navigate('learning', id)}
        tabs={machines.map((machine) => ({
          id: machine.id,
          label: `${machine.id} ${machine.name}`,
          count: happened.observations.filter((o) => o.machineId === machine.id).length,
          content: <MachineLearning shop={shop} machine={machine} happened={happened} />,
        }))}
      />
    </>
  );
}

interface Props {
  shop: Shop;
  machine: Machine;
  happened: FinishedWork;
}

function MachineLearning({ shop, machine, happened }: Props) {
  const { standards, changeover } = useMemo(() => proposalsFor(machine, happened), [machine, happened]);
  const late = useMemo(() => lateChange(machine, happened.observations), [machine, happened]);
  return (
    <div className={styles.machine}>
      <ProposalPanel
        title="Time standards"
        machine={machine}
        units={shop.settings}
        proposals={standards.ok ? standards.value : []}
        refusal={standards.ok ? null : sentence(standards.issues)}
      />
      {standards.ok && (
        <Panel title="Estimated and actual times">
          <LateSentence late={late} style={shop.settings} />
          <EvidenceChart machine={machine} observations={happened.observations} proposals={standards.value} />
        </Panel>
      )}
      <ProposalPanel
        title="Changeovers"
        machine={machine}
        units={shop.settings}
        proposals={changeover.ok ? changeover.value : []}
        refusal={changeover.ok ? null : sentence(changeover.issues)}
      />
      <NewestWork shop={shop} machine={machine} happened={happened} />
      <LearnedHistory shop={shop} machine={machine} />
    </div>
  );
}
