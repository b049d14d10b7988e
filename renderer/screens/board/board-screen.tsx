import { ClipboardList } from 'lucide-react';
import { useMemo } from 'react';
import { boundSentence } from '../../../core/report/bound-words.ts';
import { overdueSentence } from '../../../core/report/late-words.ts';
import { confidentLines } from '../../../core/learn/plan-chances.ts';
import type { MetalMissing } from '../../../core/planning/metal-missing.ts';
import type { PlanView } from '../../../core/planning/plan-view.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { Instant } from '../../../core/units/brand.ts';
import { Gantt } from '../../gantt/gantt.tsx';
import { lanesOf, type Lane } from '../../gantt/lanes.ts';
import { useBoardView } from '../../gantt/view.ts';
import { useChances } from '../../queries/chances.ts';
import { useMissing } from '../../queries/missing.ts';
import { boundOf, usePlan, yardstickOf } from '../../queries/plan.ts';
import { navigate } from '../../router.ts';
import { planProtect, protectShare } from '../../shell/use-plan-job.ts';
import { Button } from '../../ui/button.tsx';
import { EmptyState, SentenceError, Waiting } from '../../ui/states.tsx';
import { Tabs } from '../../ui/tabs.tsx';
import styles from './board.module.css';
import { FiguresStrip, type LinesOnTime } from './figures-strip.tsx';
import { LateList, lateLinesOf } from './late-list.tsx';
import { BoardTools } from './board-tools.tsx';
import { chosenOf, type Chosen } from './chosen.ts';
import { OperationPanel } from './operation-panel.tsx';
import { chosenBars, SeveralPanel, severalWords } from './several-panel.tsx';
import { MissingList } from '../set-up/missing-list.tsx';
import { troubleMenu } from '../what-if/trouble-menu.ts';
import { stoppedHours } from '../what-if/trouble-entries.ts';
import { askOutage } from '../what-if/what-if-view.ts';
import { useDrawn, useLooks } from './use-looks.ts';
import { useMoves } from './use-moves.ts';
import { useFit, useMetalMissing, useReading, useSought } from './use-reading.tsx';
import { waitingTabs } from './waiting-lists.tsx';
import { WhyPanel } from './why-panel.tsx';
import type { BoardDoing } from '../../gantt/doing.ts';

export function BoardScreen() {
  const query = usePlan();
  if (query.is === 'waiting') return <Waiting doing="Working out the plan" />;
  if (query.is === 'failed') return <SentenceError message={query.message} />;
  const { shop, plan, now } = query;
  if (shop.machine.length === 0)
    return (
      <EmptyState icon={ClipboardList} title="No machines yet">
        <p>The board has a lane for each machine. The set-up adds a shear and a brake with usual figures.</p>
        <Button look="primary" onPress={() => navigate('shop', 'set-up')}>
          Go on with the set-up
        </Button>
      </EmptyState>
    );
  if (shop.line.length === 0)
    return (
      <EmptyState icon={ClipboardList} title="No work orders yet">
        <p>Take work orders from a file, or type one in. Their operations appear here at once.</p>
        <Button look="primary" onPress={() => navigate('orders')}>
          Go to Orders
        </Button>
      </EmptyState>
    );
  return <Board shop={shop} plan={plan} now={now} />;
}

/** How many lines are on time as surely as the header's menu aims for; nine of ten while it leaves no slack. */
function useLinesOnTime(): LinesOnTime | null {
  const chances = useChances();
  const confidence = protectShare(planProtect.use()) ?? 0.9;
  return chances && { confidence, ...confidentLines(chances, confidence) };
}

function Board({ shop, plan, now }: { shop: Shop; plan: PlanView; now: Instant }) {
  const { timeZone } = shop.settings;
  const lanes = useMemo(() => lanesOf(shop, plan), [shop, plan]);
  const selected = useBoardView((view) => view.selected);
  const show = useBoardView((view) => view.show);
  const several = severalWords(
    lanes,
    chosenBars(
      lanes,
      useBoardView((view) => view.chosen),
    ),
  );
  const { doing, wouldBe, said } = useMoves(shop, plan, lanes);
  const looks = useLooks(shop, plan, lanes);
  const fit = useFit({ shop, lanes, now });
  const missing = useMetalMissing({ shop, plan, now });
  const reading = useReading({ shop, plan, lanes, doing, now }, looks, fit, missing);
  useSought(lanes);
  const drawn = useDrawn({ plan, lanes, wouldBe, now }, looks.fold);
  const stopped = stoppedHours(shop, now);
  const out = shop.settings.crewLimit === null ? [] : shop.absence.filter(({ to }) => to > now);
  return (
    <div className={styles.screen}>
      <h1 className={styles.hidden}>Board</h1>
      <FiguresStrip
        figures={plan.figures}
        yardstick={yardstickOf(shop, plan)}
        timeZone={timeZone}
        linesOnTime={useLinesOnTime()}
        onLeftOut={() => show('unplanned', selected)}
      />
      <p className={styles.bound}>
        {`${boundSentence(plan.schedule.objective, boundOf(plan))} ${overdueSentence(plan.figures)}`}
      </p>
      <BoardTools lanes={lanes} fit={fit} looks={looks} />
      <div className={styles.columns}>
        <div className={styles.board}>
          <Gantt
            {...drawn}
            {...{ timeZone, out, doing, reading }}
            stopped={{ rows: stopped, onAsk: askOutage }}
            menuOf={(machine) => troubleMenu(machine, stopped)}
          />
        </div>
        <Side {...{ shop, plan, lanes, doing, now, missing }} />
      </div>
      <p aria-live="polite" className={styles.hidden}>
        {several}
      </p>
      <p role="status" className={styles.status} data-message-line>
        {said || 'Drag a bar, or select one and use Alt with the arrow keys. ? lists all keys.'}
      </p>
    </div>
  );
}

const NothingSelected = () => (
  <EmptyState title="Nothing is selected">
    <p>Click a bar on the board, or go to it with the arrow keys. Draw a frame around several.</p>
  </EmptyState>
);

/** Open lines that stand in no queue, by what is missing for them. */
function Unplanned({ shop, leftOut }: { shop: Shop; leftOut: number }) {
  const missing = useMissing(shop).filter(({ lines }) => lines.length > 0);
  if (leftOut === 0) return <EmptyState title="Every open line is on the board" />;
  return <MissingList missing={missing} />;
}

interface SelectedProps extends Pick<SideProps, 'lanes' | 'doing'> {
  chosen: Chosen | null;
  select: (operation: string | null) => void;
}

/** Of several what can be done with them together, of one all about it. */
function Selected({ chosen, lanes, doing, select }: SelectedProps) {
  const bars = chosenBars(
    lanes,
    useBoardView((view) => view.chosen),
  );
  if (bars.length > 1) return <SeveralPanel {...{ lanes, bars, doing, select }} />;
  return chosen ? <OperationPanel {...{ chosen, doing, select }} /> : <NothingSelected />;
}

interface SideProps {
  shop: Shop;
  plan: PlanView;
  lanes: readonly Lane[];
  doing: BoardDoing;
  now: Instant;
  missing: readonly MetalMissing[];
}

/** The operation a line ends with. */
const lastStep = (plan: PlanView, lineId: string): string =>
  plan.schedule.operations
    .filter((o) => o.job === lineId)
    .reduce((last, o) => (o.index > last.index ? o : last)).operation;

/** Beside the board: the selected operation, the late lines, the lines that could not be planned. */
function Side({ shop, plan, lanes, doing, now, missing }: SideProps) {
  const selected = useBoardView((view) => view.selected);
  const select = useBoardView((view) => view.select);
  const side = useBoardView((view) => view.side);
  const show = useBoardView((view) => view.show);
  const late = useMemo(() => lateLinesOf(shop, plan), [shop, plan]);
  const chosen = chosenOf(shop, plan, lanes, selected);
  const shown = side.of === selected ? side.tab : chosen ? 'operation' : 'late';

  return (
    <aside className={styles.side} aria-label="Details">
      <Tabs
        label="Beside the board"
        selected={shown}
        onSelect={(id) => show(id, selected)}
        tabs={[
          {
            id: 'operation',
            label: 'Selected',
            content: <Selected {...{ chosen, lanes, doing, select }} />,
          },
          {
            id: 'why',
            label: 'Why',
            content: chosen ? (
              <WhyPanel shop={shop} plan={plan} lineId={chosen.bar.lineId} />
            ) : (
              <NothingSelected />
            ),
          },
          {
            id: 'late',
            label: 'Late',
            count: late.length,
            content: (
              <LateList
                rows={late}
                timeZone={shop.settings.timeZone}
                leftOut={plan.figures.leftOut}
                onOpen={(lineId) => select(lastStep(plan, lineId))}
                onWhy={(lineId) => show('why', lastStep(plan, lineId))}
              />
            ),
          },
          ...waitingTabs({ shop, now, missing, onOpen: select }),
          {
            id: 'unplanned',
            label: 'Cannot be planned',
            count: plan.figures.leftOut,
            content: <Unplanned shop={shop} leftOut={plan.figures.leftOut} />,
          },
        ]}
      />
    </aside>
  );
}
