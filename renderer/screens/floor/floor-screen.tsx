import { LogOut, Wrench } from 'lucide-react';
import { useMemo, useState, type CSSProperties } from 'react';
import {
  floorView,
  stoppedAt,
  workOutOfTurn,
  type FloorView,
  type FloorWork,
} from '../../../core/report/floor.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatDayAndClock } from '../../../core/time/wall.ts';
import type { Instant } from '../../../core/units/brand.ts';
import { useFollowedPlan } from '../../queries/plan.ts';
import { navigate, usePlace } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { EmptyState, SentenceError, Waiting } from '../../ui/states.tsx';
import { BigButton } from './big-button.tsx';
import { Cautions } from './cautions.tsx';
import { Changed } from './changed.tsx';
import { farPx, useScreenSize } from './far.ts';
import styles from './floor.module.css';
import { keptMachine } from './kept.ts';
import { MachineChooser } from './machine-chooser.tsx';
import { NameField, useNameAt } from './name-field.tsx';
import { NextList } from './next-list.tsx';
import { ScreenSizeButton } from './screen-size.tsx';
import { Settled } from './settled.tsx';
import { Stopped } from './stopped.tsx';
import { Stray } from './stray.tsx';
import { WalkInButton } from './walk-in-button.tsx';
import { WorkCard } from './work-card.tsx';

/** One machine's work, for the person at it: the operation now, what comes next, and what came of it. */
export function FloorScreen() {
  const query = useFollowedPlan();
  const asked = usePlace().path[1];
  const remembered = keptMachine.use();
  if (query.is === 'waiting') return <Waiting doing="Working out the plan" />;
  if (query.is === 'failed') return <SentenceError message={query.message} />;
  const { shop, plan, now } = query;
  const view = floorView(shop, plan, asked ?? remembered ?? '', now);
  if (view) return <Floor key={view.machine.id} shop={shop} view={view} now={now} />;
  return <NoMachine shop={shop} asked={asked} />;
}

function NoMachine({ shop, asked }: { shop: Shop; asked: string | undefined }) {
  if (shop.machine.length === 0)
    return (
      <EmptyState icon={Wrench} title="No machines yet">
        <p>The floor screen shows one machine’s work. Add a shear and a brake first.</p>
        <Button look="primary" onPress={() => navigate('shop', 'machines')}>
          Set up the shop
        </Button>
      </EmptyState>
    );
  return (
    <EmptyState
      icon={Wrench}
      title={asked ? `There is no machine ${asked}` : 'Which machine is this screen for?'}
    >
      <p>The choice is remembered here, on this screen only.</p>
      <MachineChooser machines={shop.machine} chosen={null} />
    </EmptyState>
  );
}

interface Props {
  shop: Shop;
  view: FloorView;
  now: Instant;
}

function Floor({ shop, view, now }: Props) {
  const [picked, pick] = useState<string | null>(null);
  const screen = useScreenSize();
  const { machine, running, queue } = view;
  const stopped = stoppedAt(shop, machine.id, now);
  const work = useShown(shop, view, running ? null : picked, now);
  const [who, setWho] = useNameAt(machine.id, shop.settings.askWho);
  const stray = running !== null && work?.operation.id !== running.id ? running : null;
  const next = queue.find(({ operation }) => operation.id !== work?.operation.id) ?? null;
  const why = stopped && `Stopped until ${formatDayAndClock(stopped.to, shop.settings.timeZone)}.`;
  return (
    <div className={styles.screen} style={{ '--farthest': `${farPx(screen)}px` } as CSSProperties}>
      <header className={styles.head}>
        <div className={styles.leave}>
          <BigButton brief icon={LogOut} onPress={() => navigate('board')}>
            To the board
          </BigButton>
        </div>
        <h1>{`Floor: ${machine.name}`}</h1>
        {shop.settings.askWho && <NameField name={who} onChange={setWho} />}
        {machine.stage === 'shear' && <WalkInButton shop={shop} now={now} onTaken={running ? null : pick} />}
        <ScreenSizeButton screen={screen} />
        <MachineChooser machines={shop.machine} chosen={machine.id} />
      </header>
      {stopped && <Stopped stopped={stopped} machine={machine} timeZone={shop.settings.timeZone} />}
      <Changed shop={shop} view={view} />
      <div className={styles.columns}>
        <div className={styles.now}>
          {stray && (
            <Settled key={stray.id} state={stray.id}>
              <Stray shop={shop} record={stray} who={who} />
            </Settled>
          )}
          {!stray && work && (
            <WorkCard
              key={work.operation.id}
              {...{ shop, work, machine, now, who }}
              stopped={why}
              next={next?.row.line.id ?? null}
            />
          )}
          {!stray && !work && (
            <EmptyState icon={Wrench} title="Nothing is waiting for this machine">
              <p>Its queue is empty. New work appears here as soon as it is planned.</p>
            </EmptyState>
          )}
        </div>
        <NextList
          shop={shop}
          view={view}
          shown={work?.operation.id ?? null}
          onPick={running ? null : (operation) => pick(operation)}
        />
      </div>
      <Cautions stage={machine.stage} />
    </div>
  );
}

/** What stands on the card: what is under way, what someone picked, with the changeover that it then needs, else the first. */
function useShown(
  shop: Shop,
  { machine, queue }: FloorView,
  picked: string | null,
  now: Instant,
): FloorWork | null {
  const inTurn = queue[0] ?? null;
  const outOf = picked !== inTurn?.operation.id && queue.some(({ operation }) => operation.id === picked);
  return useMemo(
    () => (outOf && picked !== null ? workOutOfTurn(shop, machine.id, picked, now) : null) ?? inTurn,
    [shop, machine.id, picked, outOf, inTurn, now],
  );
}
