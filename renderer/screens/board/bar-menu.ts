import {
  ArrowDownToLine,
  ArrowLeft,
  ArrowRight,
  CalendarArrowDown,
  CircleHelp,
  ClipboardList,
  Pin,
  PinOff,
  Rows3,
  Scissors,
  Split,
  Zap,
} from 'lucide-react';
import { whyQuestion } from '../../../core/report/why-words.ts';
import { movable, runWith, shifted, toEnd } from '../../gantt/block-moves.ts';
import type { BoardDoing } from '../../gantt/doing.ts';
import { findBar } from '../../gantt/drop.ts';
import type { Bar, Lane } from '../../gantt/lanes.ts';
import { useBoardView } from '../../gantt/view.ts';
import { navigate } from '../../router.ts';
import type { MenuEntry } from '../../ui/menu.tsx';
import { askRush } from '../what-if/what-if-view.ts';

/** What can be done with a bar, or with all that is chosen when it is one of them: the same as by keys and panel. */
export function barMenu(lanes: readonly Lane[], doing: BoardDoing, operation: string): MenuEntry[] {
  const found = findBar(lanes, operation);
  const lane = found && lanes[found.lane];
  if (!lane) return [];
  const { chosen } = useBoardView.getState();
  const together = chosen.includes(operation) ? chosen : [operation];
  return [
    ...planning(lanes, doing, together, lane),
    ...ofRun(lane, doing, operation),
    ...ways(found.bar, lane, doing),
  ];
}

function planning(
  lanes: readonly Lane[],
  doing: BoardDoing,
  ids: readonly string[],
  lane: Lane,
): MenuEntry[] {
  const bars = lanes.flatMap((one) => one.bars.filter((bar) => ids.includes(bar.operation)));
  const pinned = bars.every((bar) => bar.pinned);
  const stays = movable(lanes, ids).length === 0;
  const move = (
    id: string,
    label: string,
    icon: MenuEntry['icon'],
    end: string,
    act: () => void,
  ): MenuEntry => ({
    ...{ id, label, end, act },
    ...(icon ? { icon } : {}),
    disabled: stays || lane.bars.length < 2,
  });
  return [
    {
      id: 'pin',
      label: pinned ? 'Unpin' : 'Pin in its position',
      icon: pinned ? PinOff : Pin,
      end: 'Space',
      act: () => doing.togglePin(ids),
    },
    move('earlier', 'Earlier', ArrowLeft, 'Alt+←', () => doing.move(shifted(lanes, ids, -1))),
    move('later', 'Later', ArrowRight, 'Alt+→', () => doing.move(shifted(lanes, ids, 1))),
    move('first', 'To the front of the queue', ArrowDownToLine, 'Alt+Home', () =>
      doing.move(toEnd(lanes, ids, 'first')),
    ),
    move('postpone', 'Postpone behind the day’s work', CalendarArrowDown, 'Alt+PageDown', () =>
      doing.postpone(ids),
    ),
  ];
}

function ofRun(lane: Lane, doing: BoardDoing, operation: string): MenuEntry[] {
  const run = runWith(lane, operation);
  if (!run || run.length < 2) return [];
  return [
    {
      id: 'run',
      label: `Select its run of ${run.length}`,
      icon: Rows3,
      end: 'G',
      act: () => useBoardView.getState().choose(run, operation),
    },
    {
      id: 'split',
      label: 'Split the run here',
      icon: Split,
      end: 'S',
      disabled: run[0] === operation,
      act: () => doing.splitRun(operation),
    },
  ];
}

function ways(bar: Bar, lane: Lane, doing: BoardDoing): MenuEntry[] {
  const rush: MenuEntry = {
    id: 'rush',
    label: 'Fit in this rush…',
    icon: Zap,
    end: 'R',
    disabled: bar.started,
    act: () => askRush([bar.lineId]),
  };
  const cutting: MenuEntry = {
    id: 'cutting',
    label: 'How it is cut',
    icon: Scissors,
    act: () => navigate('cutting', bar.lineId),
  };
  return [
    {
      id: 'why',
      label: whyQuestion(bar.tardiness > 0),
      icon: CircleHelp,
      end: 'W',
      act: () => doing.explain(bar.operation),
    },
    ...(bar.rush ? [rush] : []),
    ...(lane.machine.stage === 'shear' ? [cutting] : []),
    {
      id: 'order',
      label: `Open work order ${bar.orderId}`,
      icon: ClipboardList,
      act: () => navigate('orders', bar.orderId),
    },
  ];
}
