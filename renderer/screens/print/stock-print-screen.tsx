import type { RunCut } from '../../../core/planning/cut-run.ts';
import { purchasesOf, stockRows } from '../../../core/planning/stock-use.ts';
import { useCuts, useFollowedCuts, type CutsQuery } from '../../queries/cuts.ts';
import { useStatus } from '../../queries/hooks.ts';
import { navigate, usePlace } from '../../router.ts';
import { CheckBox } from '../../ui/check-box.tsx';
import { EmptyState, SentenceError, Waiting } from '../../ui/states.tsx';
import { ToastCorner } from '../../ui/toast.tsx';
import { asksForDrawings, cutPrintAddress } from '../cutting/print-address.ts';
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
  const cut =
    query.is === 'ready' && runId !== null
      ? query.cuts.find(({ run }) => run.operations.some((o) => o.line.id === runId))
      : undefined;
  const drawings = asksForDrawings(usePlace().query, cut?.plan.ok ? cut.plan.value.groups.length : 0);
  return (
    <div className={`${styles.desk} ${inBrowser ? styles.numbered : ''}`}>
      {runId === null ? (
        <PaperTools
          what={{ what: 'purchases' }}
          inBrowser={inBrowser}
          back="Back to the stock"
          onBack={() => navigate('stock')}
        />
      ) : (
        <PaperTools
          what={{ what: 'cutting', runId, drawings }}
          inBrowser={inBrowser}
          back="Back to the run"
          onBack={() => navigate('cutting', runId)}
        >
          <CheckBox
            label="With the sheets drawn"
            isSelected={drawings}
            onChange={(drawn) => {
              window.location.hash = cutPrintAddress(runId, drawn);
            }}
          />
        </PaperTools>
      )}
      {runId !== null && <DraftNote />}
      {query.is === 'waiting' && <Waiting doing="Working out the runs and their sheets" />}
      {query.is === 'failed' && <SentenceError message={query.message} />}
      {query.is === 'ready' && <Sheet query={query} runId={runId} cut={cut} drawings={drawings} />}
      <ToastCorner />
    </div>
  );
}

interface SheetProps {
  query: Extract<CutsQuery, { is: 'ready' }>;
  runId: string | null;
  /** The run's; absent where there is none of that name. */
  cut: RunCut | undefined;
  drawings: boolean;
}

function Sheet({ query: { shop, cuts, now }, runId, cut, drawings }: SheetProps) {
  usePrintReady();
  if (runId === null)
    return <PurchasePaper shop={shop} purchases={purchasesOf(stockRows(shop, cuts))} now={now} />;
  if (!cut?.plan.ok) return <EmptyState title={`Run ${runId} has no steps to print.`} />;
  return <StepsPaper shop={shop} cut={cut} plan={cut.plan.value} now={now} drawings={drawings} />;
}
