import { Scissors } from 'lucide-react';
import {
  useCutsSoFar,
  useFollowedCutsSoFar,
  type CutsSoFarQuery,
  type ReadyCuts,
} from '../../queries/cuts.ts';
import { navigate, usePlace } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { Page, Panel } from '../../ui/page.tsx';
import { EmptyState, SentenceError, Waiting } from '../../ui/states.tsx';
import { Cautioned } from './cautioned.tsx';
import { ImprovingBar } from './improving-bar.tsx';
import { PlanChoice, usePlanShown, type PlanShown } from './plan-choice.tsx';
import { RunList } from './run-list.tsx';
import { RunView } from './run-view.tsx';
import { TrimOffers } from '../shop/materials/trim-offer.tsx';
import { WalkIn } from './walk-in.tsx';

/** What the shear cuts from which sheets: every run of its queue, or one of them opened. */
export function CuttingScreen() {
  const shown = usePlanShown();
  return shown === 'draft' ? <DraftCuts /> : <FollowedCuts shown={shown} />;
}

// Two components, so that the runs of one plan never stand in for those of the other while these are planned.
function DraftCuts() {
  const runId = usePlace().path[1];
  return <Cuts shown="draft" runId={runId} query={useCutsSoFar(runId)} />;
}

function FollowedCuts({ shown }: { shown: PlanShown }) {
  const runId = usePlace().path[1];
  return <Cuts shown={shown} runId={runId} query={useFollowedCutsSoFar(runId)} />;
}

interface CutsProps {
  shown: PlanShown;
  /** A line of the run that is opened. */
  runId: string | undefined;
  query: CutsSoFarQuery;
}

function Cuts({ shown, runId, query }: CutsProps) {
  if (query.is === 'ready' && runId !== undefined)
    return <Opened query={query} whole={query.whole} runId={runId} shown={shown} />;
  return (
    <Page
      title="Cutting"
      lead="Runs on the shear in the order of the plan, and the sheets they need."
      actions={<Button onPress={() => navigate('stock')}>Stock</Button>}
    >
      <PlanChoice shown={shown} />
      {query.is === 'waiting' && <Waiting doing="Working out the runs and their sheets" />}
      {query.is === 'failed' && <SentenceError message={query.message} />}
      {query.is === 'ready' && <Runs query={query} whole={query.whole} />}
    </Page>
  );
}

interface Props {
  query: ReadyCuts;
  /** Whether the runs are all there. */
  whole: boolean;
}

function Runs({ query, whole }: Props) {
  return (
    <>
      <TrimOffers shop={query.shop} />
      <WalkIn shop={query.shop} now={query.now} />
      {query.cuts.length === 0 && whole ? (
        <EmptyState icon={Scissors} title="Nothing is waiting for the shear">
          <p>Open lines that need blanks appear here as runs of one metal.</p>
        </EmptyState>
      ) : (
        <Panel>
          {whole ? <ImprovingBar /> : <Waiting doing="Working out the sheets of the runs" />}
          <RunList query={query} />
        </Panel>
      )}
      <Cautioned />
    </>
  );
}

function Opened({ query, whole, runId, shown }: Props & { runId: string; shown: PlanShown }) {
  const cut = query.cuts.find(({ run }) => run.operations.some((o) => o.line.id === runId));
  if (cut) return <RunView key={cut.run.id} query={query} cut={cut} shown={shown} />;
  return (
    <Page title="Cutting" actions={<Button onPress={() => navigate('cutting')}>All runs</Button>}>
      <PlanChoice shown={shown} />
      {whole ? (
        <EmptyState icon={Scissors} title={`Line ${runId} is not waiting for the shear`}>
          <p>It may be cut already, or its order is held.</p>
        </EmptyState>
      ) : (
        <Waiting doing="Working out this run and its sheets" />
      )}
    </Page>
  );
}
