import { ArrowLeft, FileDown, PackageMinus, Printer, RotateCcw } from 'lucide-react';
import { piecesIn } from '../../../core/planning/cut-lists.ts';
import { isTaken, type RunCut } from '../../../core/planning/cut-run.ts';
import { runMetal, stepsCsv } from '../../../core/report/cutting-words.ts';
import { formatDayAndClock } from '../../../core/time/wall.ts';
import { instant } from '../../../core/units/brand.ts';
import { usePresent } from '../../queries/hooks.ts';
import { navigate } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { Page, Panel } from '../../ui/page.tsx';
import { toastError } from '../../ui/toast.tsx';
import { saveText } from '../stock/save-text.ts';
import { useAct } from '../../form/use-act.ts';
import { Cautioned } from './cautioned.tsx';
import { CutFacts } from './cut-facts.tsx';
import type { ReadyCuts } from '../../queries/cuts.ts';
import styles from './cutting.module.css';
import { JoinNext } from './join-next.tsx';
import { LotWarning } from './lot-warning.tsx';
import { isCut, isOrdered, PlanChoice, type PlanShown } from './plan-choice.tsx';
import { cutPrintAddress } from './print-address.ts';
import { RunState } from './run-list.tsx';
import { Sheets } from './sheets.tsx';
import { SolveBar } from './solve-bar.tsx';
import { StepList } from './step-list.tsx';
import { listOf, useSteps } from './use-steps.ts';

interface Props {
  query: ReadyCuts;
  cut: RunCut;
  shown: PlanShown;
}

/** One run opened: its figures, its sheets to scale, the list of settings to cut by. */
export function RunView({ query, cut, shown }: Props) {
  const { shop } = query;
  const { run, plan } = cut;
  const { timeZone } = shop.settings;
  const starts = formatDayAndClock(run.start, timeZone);
  return (
    <Page
      title={`Run ${run.id}`}
      lead={`${runMetal(shop, run)} on ${run.machine.name}, starts ${starts}`}
      actions={<Tools query={query} cut={cut} shown={shown} />}
    >
      <PlanChoice shown={shown} />
      {!plan.ok ? (
        <Faults issues={plan.issues} title="This run cannot be cut as it is" />
      ) : (
        <>
          <Taken query={query} cut={cut} />
          {isOrdered(shown) && <LotWarning shop={shop} cut={cut} />}
          <Panel title="The run in figures" actions={<RunState cut={cut} />}>
            <CutFacts shop={shop} cut={cut} />
            {!isTaken(cut) && <SolveBar cut={cut} money={shop.settings} />}
          </Panel>
          {isOrdered(shown) && <JoinNext query={query} cut={cut} />}
          <Panel title="Sheets">
            <Sheets shop={shop} cut={cut} />
          </Panel>
          <Cautioned />
          <Steps query={query} cut={cut} shown={shown} />
        </>
      )}
    </Page>
  );
}

function Steps({ query, cut, shown }: Props) {
  const edit = useSteps(query, cut);
  const canEdit = isCut(shown) && !isTaken(cut);
  return (
    <Panel
      title={
        isTaken(cut) ? 'Steps, as the sheets were issued' : cut.changed ? 'Steps, changed by hand' : 'Steps'
      }
      actions={
        cut.changed &&
        isCut(shown) && (
          <Button small icon={RotateCcw} onPress={edit.planAgain}>
            Plan the steps again
          </Button>
        )
      }
    >
      {cut.faults.length > 0 && (
        <Faults issues={cut.faults} title="Cut as it is, this list does not give what the run asks" />
      )}
      <StepList query={query} cut={cut} edit={canEdit ? edit : null} />
    </Panel>
  );
}

/** What was taken from stock for this run already. */
function Taken({ query: { shop }, cut }: Pick<Props, 'query' | 'cut'>) {
  const { taken } = cut;
  if (taken?.taken == null) return null;
  const at = instant(taken.taken);
  const { timeZone } = shop.settings;
  const lines = taken.lines.filter((id) => piecesIn(taken, id) > 0);
  return (
    <p className={styles.taken} role="status">
      {`Sheets for ${lines.map((id) => `${piecesIn(taken, id)} of ${id}`).join(', ')} were issued from stock on ${formatDayAndClock(at, timeZone)}, remnants with them. `}
      {!isTaken(cut) && 'What is planned here is the rest.'}
    </p>
  );
}

function Faults({ title, issues }: { title: string; issues: RunCut['faults'] }) {
  return (
    <div className={styles.faults} role="alert">
      <strong>{title}</strong>
      <ul>
        {issues.map((p) => (
          <li key={p.message}>{`${p.message} ${p.advice}`}</li>
        ))}
      </ul>
    </div>
  );
}

function Tools({ query, cut, shown }: Props) {
  const act = useAct();
  const present = usePresent();
  const { run, plan } = cut;
  const take = () => {
    if (!plan.ok) return;
    const list = listOf(cut, plan.value.groups, plan.value.steps);
    void act({ do: 'stock.use', list, machineId: run.machine.id, at: present() }).catch(toastError);
  };
  return (
    <>
      <Button icon={ArrowLeft} onPress={() => navigate('cutting')}>
        All runs
      </Button>
      {plan.ok && isCut(shown) && (
        <>
          {!isTaken(cut) && (
            <Button icon={PackageMinus} onPress={take}>
              Issue sheets
            </Button>
          )}
          <Button icon={FileDown} onPress={() => saveText(`steps ${run.id}.csv`, stepsCsv(cut, query.shop))}>
            Save CSV
          </Button>
          <Button
            look="primary"
            icon={Printer}
            onPress={() => {
              window.location.hash = cutPrintAddress(run.id);
            }}
          >
            Print
          </Button>
        </>
      )}
    </>
  );
}
