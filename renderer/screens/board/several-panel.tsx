import { ArrowLeftRight, CalendarArrowDown, Pin, PinOff, X } from 'lucide-react';
import { operationName } from '../../../core/edit/plan-commands.ts';
import { counted } from '../../../core/units/count.ts';
import { formatDuration } from '../../../core/units/duration.ts';
import { dropAt, movable, sameStep, shifted } from '../../gantt/block-moves.ts';
import type { BoardDoing } from '../../gantt/doing.ts';
import { findBar } from '../../gantt/drop.ts';
import type { Bar, Lane } from '../../gantt/lanes.ts';
import { Button } from '../../ui/button.tsx';
import { Menu } from '../../ui/menu.tsx';
import { Tag } from '../../ui/tag.tsx';
import styles from './board.module.css';

/** More than anyone reads beside the board. */
const MOST = 40;

interface Props {
  readonly lanes: readonly Lane[];
  readonly bars: readonly Bar[];
  readonly doing: BoardDoing;
  readonly select: (operation: string | null) => void;
}

/** The bars of the chosen operations that are on the board, lane by lane. */
export function chosenBars(lanes: readonly Lane[], chosen: readonly string[]): readonly Bar[] {
  const named = new Set(chosen);
  return lanes.flatMap(({ bars }) => bars.filter((bar) => named.has(bar.operation)));
}

const workOf = (bars: readonly Bar[]): number =>
  bars.flatMap(({ pieces }) => pieces).reduce((sum, { start, end }) => sum + end - start, 0);

/** "5 operations selected on Shear and Long brake, 3 h 10 min", also for who listens; empty for fewer than two. */
export function severalWords(lanes: readonly Lane[], bars: readonly Bar[]): string {
  if (bars.length < 2) return '';
  const operations = new Set(bars);
  const names = lanes
    .filter((lane) => lane.bars.some((bar) => operations.has(bar)))
    .map((l) => l.machine.name);
  return `${counted(bars.length, 'operation')} selected on ${names.join(', ')}: ${formatDuration(workOf(bars))} of work.`;
}

/** Other machines for those of the first one's step; the rest stays where it is. */
function MachineMenu({ lanes, bars, doing }: Props) {
  const operations = bars.map((bar) => bar.operation);
  const first = movable(lanes, operations)[0];
  const home = findBar(lanes, first?.operation ?? null)?.lane;
  const held = first ? sameStep(lanes, operations, first.operation).map((bar) => bar.operation) : [];
  const others = lanes.filter(
    (lane, i) => i !== home && lane.machine.stage === lanes[home ?? 0]?.machine.stage,
  );
  if (!first || others.length === 0) return null;
  const able = doing.able(held);
  return (
    <Menu
      label="Move to another machine"
      entries={others.map((lane) => ({
        id: lane.machine.id,
        label: able.has(lane.machine.id) ? lane.machine.name : doing.whyNot(held, lane.machine.id),
        disabled: !able.has(lane.machine.id),
        act: () => doing.move([dropAt(lane, held, first.start)]),
      }))}
    >
      <Button small icon={ArrowLeftRight}>
        Machine
      </Button>
    </Menu>
  );
}

function Actions(props: Props) {
  const { lanes, bars, doing, select } = props;
  const operations = bars.map((bar) => bar.operation);
  const pinned = bars.every((bar) => bar.pinned);
  return (
    <div className={styles.actions}>
      <Button small icon={pinned ? PinOff : Pin} onPress={() => doing.togglePin(operations)}>
        {pinned ? 'Unpin' : 'Pin'}
      </Button>
      <Button small onPress={() => doing.move(shifted(lanes, operations, -1))}>
        Earlier
      </Button>
      <Button small onPress={() => doing.move(shifted(lanes, operations, 1))}>
        Later
      </Button>
      <Button small icon={CalendarArrowDown} onPress={() => doing.postpone(operations)}>
        Postpone
      </Button>
      <MachineMenu {...props} />
      <Button small look="quiet" icon={X} onPress={() => select(null)}>
        Clear
      </Button>
    </div>
  );
}

/** Several operations selected: how many, what can be done with them together, and which they are. */
export function SeveralPanel(props: Props) {
  const { lanes, bars, select } = props;
  const started =
    bars.length -
    movable(
      lanes,
      bars.map((bar) => bar.operation),
    ).length;
  return (
    <div className={styles.operation}>
      <header>
        <h2 className={styles.lineTitle}>{counted(bars.length, 'operation')}</h2>
        <p>{severalWords(lanes, bars)}</p>
        {started > 0 && (
          <p>{`${started} of them ${started === 1 ? 'has' : 'have'} started and cannot be moved.`}</p>
        )}
      </header>
      <Actions {...props} />
      <ul className={styles.chosenList} aria-label="Selected operations">
        {bars.slice(0, MOST).map((bar) => (
          <li key={bar.operation}>
            <Button small look="quiet" onPress={() => select(bar.operation)}>
              {operationName(bar.operation)}
            </Button>
            {bar.tardiness > 0 && <Tag look="late">late</Tag>}
            {bar.pinned && <Tag look="accent">pinned</Tag>}
          </li>
        ))}
        {bars.length > MOST && <li>{`and ${bars.length - MOST} more`}</li>}
      </ul>
    </div>
  );
}
