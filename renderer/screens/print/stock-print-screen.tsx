import type { Printable } from '../../../core/contract/print.ts';
import { purchasesOf, stockRows } from '../../../core/planning/stock-use.ts';
import { useCuts, useFollowedCuts, type CutsQuery } from '../../queries/cuts.ts';
import { useStatus } from '../../queries/hooks.ts';
import { navigate, usePlace } from '../../router.ts';
import { EmptyState, SentenceError, Waiting } from '../../ui/states.tsx';
import { ToastCorner } from '../../ui/toast.tsx';
import { DraftNote } from './draft-note.tsx';
import { PaperTools, usePrintReady } from './paper-tools.tsx';
import { PurchasePaper } from './purchase-paper.tsx';
import styles from './print.module.css';
import { StepsPaper } from './steps-paper.tsx';

/** A run's steps, or the purchase list, as they come out on paper. What is bought goes by the draft, what is cut does not. */
export function StockPrintScreen() {
  const { path, query: choice } = usePlace();
  return path[1] === 'cutting' ? <StepsPrint runId={choice.get('run') ?? ''} /> : <PurchasePrint />;
}

const StepsPrint = ({ runId }: { runId: string }) => <Desk query={useFollowedCuts()} runId={runId} />;
const PurchasePrint = () => <Desk query={useCuts()} runId={null} />;

function Desk({ query, runId }: { query: CutsQuery; runId: string | null }) {
  const inBrowser = useStatus().data?.host === 'browser';
  return (
    <div className={`${styles.desk} ${inBrowser ? styles.numbered : ''}`}>
      <Tools runId={runId} inBrowser={inBrowser} />
      {runId !== null && <DraftNote />}
      {query.is === 'waiting' && <Waiting doing="Working out the runs and their sheets" />}
      {query.is === 'failed' && <SentenceError message={query.message} />}
      {query.is === 'ready' && <Sheet query={query} runId={runId} />}
      <ToastCorner />
    </div>
  );
}

type Ready = Extract<CutsQuery, { is: 'ready' }>;

function Sheet({ query: { shop, cuts, now }, runId }: { query: Ready; runId: string | null }) {
  usePrintReady();
  if (runId === null)
    return <PurchasePaper shop={shop} purchases={purchasesOf(stockRows(shop, cuts))} now={now} />;
  const cut = cuts.find(({ run }) => run.operations.some((o) => o.line.id === runId));
  if (!cut?.plan.ok) return <EmptyState title={`Run ${runId} has no steps to print.`} />;
  return <StepsPaper shop={shop} cut={cut} plan={cut.plan.value} now={now} />;
}

function Tools({ runId, inBrowser }: { runId: string | null; inBrowser: boolean }) {
  const what: Printable = runId === null ? { what: 'purchases' } : { what: 'cutting', runId };
  return (
    <PaperTools
      what={what}
      inBrowser={inBrowser}
      back={runId === null ? 'Back to the stock' : 'Back to the run'}
      onBack={() => (runId === null ? navigate('stock') : navigate('cutting', runId))}
    />
  );
}
