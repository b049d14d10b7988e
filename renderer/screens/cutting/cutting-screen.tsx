import { Scissors } from 'lucide-react';
import { useCuts, type CutsQuery } from '../../queries/cuts.ts';
import { navigate, usePlace } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { Page, Panel } from '../../ui/page.tsx';
import { EmptyState, SentenceError, Waiting } from '../../ui/states.tsx';
import { Cautioned } from './cautioned.tsx';
import { RunList } from './run-list.tsx';
import { RunView } from './run-view.tsx';
import { WalkIn } from './walk-in.tsx';

/** What the shear cuts from which sheets: every run of its queue, or one of them opened. */
export function CuttingScreen() {
  const runId = usePlace().path[1];
  const query = useCuts();
  if (query.is === 'ready' && runId !== undefined) return <Opened query={query} runId={runId} />;
  return (
    <Page
      title="Cutting"
      lead="Runs on the shear in the order of the plan, and the sheets they take."
      actions={<Button onPress={() => navigate('stock')}>Stock</Button>}
    >
      {query.is === 'waiting' && <Waiting what="the runs and planning their sheets" />}
      {query.is === 'failed' && <SentenceError message={query.message} />}
      {query.is === 'ready' && <Runs query={query} />}
    </Page>
  );
}

export type Ready = Extract<CutsQuery, { is: 'ready' }>;

function Runs({ query }: { query: Ready }) {
  return (
    <>
      <WalkIn shop={query.shop} now={query.now} />
      {query.cuts.length === 0 ? (
        <EmptyState icon={Scissors} title="Nothing is waiting for the shear">
          <p>Open lines that need blanks appear here as runs of one metal.</p>
        </EmptyState>
      ) : (
        <Panel>
          <RunList query={query} />
        </Panel>
      )}
      <Cautioned />
    </>
  );
}

function Opened({ query, runId }: { query: Ready; runId: string }) {
  const cut = query.cuts.find(({ run }) => run.operations.some((o) => o.line.id === runId));
  if (cut) return <RunView key={cut.run.id} query={query} cut={cut} />;
  return (
    <Page title="Cutting" actions={<Button onPress={() => navigate('cutting')}>All runs</Button>}>
      <EmptyState icon={Scissors} title={`Line ${runId} is not waiting for the shear`}>
        <p>It may be cut already, or its order is held.</p>
      </EmptyState>
    </Page>
  );
}
