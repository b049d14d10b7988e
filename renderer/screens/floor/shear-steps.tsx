import { PackageMinus } from 'lucide-react';
import { issuedListOf } from '../../../core/planning/cut-lists.ts';
import { shearOf, stockUsed, type RunCut } from '../../../core/planning/cut-run.ts';
import type { FloorWork } from '../../../core/report/floor.ts';
import { cutsMade, openStep, shearSteps, type ShearStep } from '../../../core/report/shear-steps.ts';
import type { Machine } from '../../../core/shop/machine.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { CutList } from '../../../core/shop/stock.ts';
import { counted } from '../../../core/units/count.ts';
import { useAct } from '../../form/use-act.ts';
import { useFollowedCutsSoFar } from '../../queries/cuts.ts';
import { useCommand, usePresent } from '../../queries/hooks.ts';
import { toastError } from '../../ui/toast.tsx';
import { listOf } from '../cutting/use-steps.ts';
import { BigButton } from './big-button.tsx';
import { CutCount } from './cut-count.tsx';
import { CutPicture } from './cut-picture.tsx';
import styles from './floor.module.css';
import { StepCard } from './step-card.tsx';
import { useStepTurn } from './step-turn.ts';

interface Props {
  shop: Shop;
  work: FloorWork;
  machine: Machine;
}

/** The shear's list one step at a time: of issued sheets with its cuts counted, else as it is proposed, to issue them by. */
export function ShearSteps({ shop, work, machine }: Props) {
  const list = issuedListOf(shop, work.row.line.id);
  return list ? (
    <IssuedSteps shop={shop} machine={machine} list={list} />
  ) : (
    <ProposedSteps shop={shop} work={work} machine={machine} />
  );
}

const atWork = (shop: Shop, machine: Machine) => ({ shear: shearOf(machine), units: shop.settings });

function IssuedSteps({ shop, machine, list }: Omit<Props, 'work'> & { list: CutList }) {
  const { mutateAsync } = useCommand();
  const steps = shearSteps(list, atWork(shop, machine), cutsMade(shop, list.id));
  const { shown, turn } = useStepTurn(list.id, steps.length, openStep(steps));
  const step = steps[shown];
  if (!step) return null;
  const count = (by: number) =>
    void mutateAsync({
      do: 'floor.cut',
      listId: list.id,
      step: step.number,
      machineId: machine.id,
      by,
    }).catch(toastError);
  return (
    <Card id={`${list.id} ${shown}`} {...{ shop, steps, shown, turn }}>
      <CutCount cuts={step.cuts} made={step.made} onCount={count} />
    </Card>
  );
}

/** The list as it is planned now; its cuts are counted once its sheets are issued, since until then it may change. */
function ProposedSteps({ shop, work, machine }: Props) {
  const query = useFollowedCutsSoFar(work.row.line.id);
  if (query.is === 'failed')
    return <p className={styles.soft}>{`The step list could not be planned: ${query.message}`}</p>;
  const cut =
    query.is === 'ready'
      ? query.cuts.find(({ run }) => run.operations.some(({ id }) => id === work.operation.id))
      : undefined;
  if (!cut) return <p className={styles.soft}>Planning the step list…</p>;
  if (!cut.plan.ok)
    return (
      <p
        className={styles.soft}
      >{`No step list: ${cut.plan.issues[0]?.message ?? 'the run cannot be cut.'}`}</p>
    );
  return (
    <Proposed
      cut={cut}
      steps={shearSteps(cut.plan.value, atWork(shop, machine), new Map())}
      {...{ shop, machine }}
    />
  );
}

function Proposed({
  shop,
  machine,
  cut,
  steps,
}: Omit<Props, 'work'> & { cut: RunCut; steps: readonly ShearStep[] }) {
  const { shown, turn } = useStepTurn(`run ${cut.run.id}`, steps.length, 0);
  if (steps.length === 0) return null;
  return (
    <Card id={`run ${cut.run.id} ${shown}`} {...{ shop, steps, shown, turn }}>
      <TakeSheets shop={shop} machine={machine} cut={cut} />
    </Card>
  );
}

/** Issues the run's sheets by this list; where stock says there are too few, they can be put right by who sees them. */
function TakeSheets({ shop, machine, cut }: Omit<Props, 'work'> & { cut: RunCut }) {
  const act = useAct();
  const present = usePresent();
  if (!cut.plan.ok) return null;
  const { groups, steps } = cut.plan.value;
  const used = stockUsed(shop, groups);
  const short = used.flatMap(({ sheetId, pieces }) => {
    const onHand = shop.sheet.find(({ id }) => id === sheetId)?.onHand ?? 0;
    return pieces > onHand ? [{ sheetId, by: pieces - onHand }] : [];
  });
  const sheets = used.reduce((sum, { pieces }) => sum + pieces, 0);
  const take = async () => {
    const at = present();
    for (const { sheetId, by } of short)
      await act({ do: 'stock.correct', sheetId, by, at, note: 'seen at the shear' });
    await act({ do: 'stock.use', list: listOf(cut, groups, steps), machineId: machine.id, at });
  };
  const missing = short.map(({ sheetId, by }) => `${by} of ${sheetId}`).join(', ');
  return (
    <div className={styles.takeSheets}>
      <BigButton look="primary" icon={PackageMinus} onPress={() => void take().catch(toastError)}>
        {short.length === 0
          ? `Take ${counted(sheets, 'sheet')} and count the cuts`
          : `They lie here: take ${counted(sheets, 'sheet')}`}
      </BigButton>
      {short.length > 0 && (
        <p>{`Stock lacks ${missing}. Where they lie here all the same, the press puts stock right first.`}</p>
      )}
    </div>
  );
}

interface CardProps {
  id: string;
  shop: Shop;
  steps: readonly ShearStep[];
  shown: number;
  turn: (to: number) => void;
  children: React.ReactNode;
}

function Card({ id, shop, steps, shown, turn, children }: CardProps) {
  const step = steps[shown]!;
  const next = steps[shown + 1];
  const isCut = step.cuts > 0;
  return (
    <StepCard
      {...{ id, shown, turn }}
      count={steps.length}
      how={step.how}
      figures={isCut ? step.figures : ''}
      unit={step.unit}
      words={[
        <b key="cut">{`${step.cut === 'rip' ? 'Rip' : 'Crosscut'}: stack ${step.feed}, ${counted(step.cutsEach, 'cut')} each. ${step.stroke}.`}</b>,
        ...step.becomes,
        ...(step.lines === '' ? [] : [`For ${step.lines}`]),
      ]}
      next={next ? `${next.how.toLowerCase()} ${next.cuts > 0 ? `${next.figures} ${next.unit}` : ''}` : null}
      picture={<CutPicture step={step} units={shop.settings} />}
    >
      {children}
    </StepCard>
  );
}
